/** Knobs of a made-up cylinder pressure. */
export interface TraceShape {
  /** Absolute pressure when the inlet closes, Pa. */
  intake: number
  /** Pressure after burning over that without, less one. */
  burn: number
  /** Where half has burnt, degrees after firing dead centre. */
  middle: number
  compressionRatio: number
}

/**
 * A cylinder pressure with the shape of a real one but none of the project's own gas cycle: a
 * polytropic curve lifted by an S-shaped burn, then blow-down and gas exchange. One sample a
 * degree from firing top dead centre, absolute, Pa.
 */
export function pressureTrace(shape: Partial<TraceShape> = {}): Float64Array {
  const { intake, burn, middle, compressionRatio }: TraceShape = {
    intake: 95_000,
    burn: 3,
    middle: 8,
    compressionRatio: 10,
    ...shape,
  }
  return Float64Array.from({ length: 720 }, (_, index) => {
    const degrees = index > 540 ? index - 720 : index
    if (degrees > 180) return degrees < 360 ? 110_000 : intake
    const volume = 1 + ((compressionRatio - 1) / 2) * (1 - Math.cos((degrees * Math.PI) / 180))
    const closed = intake * (compressionRatio / volume) ** 1.3
    const burnt = 1 / (1 + Math.exp(-(degrees - middle) / 6))
    const opened = 1 / (1 + Math.exp(-(degrees - 150) / 6))
    const high = closed * (1 + burn * burnt)
    return high + (110_000 - high) * opened
  })
}
