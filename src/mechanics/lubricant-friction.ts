/** State of threads and head faces when the fastener is tightened. */
export type Lubricant = 'dry' | 'oil' | 'moly' | 'anti-seize' | 'zinc-plated' | 'cadmium-plated'

/** Low, likely and high of one figure. */
export interface FrictionRange {
  readonly low: number
  readonly likely: number
  readonly high: number
}

export interface LubricantFriction {
  /** Nut factor K */
  readonly nutFactor: FrictionRange
  /** Friction in thread and under head, taken as equal */
  readonly friction: FrictionRange
  readonly source: string
}

/** K of a coarse half-inch thread is 0.024 + 1.15 μ within 1 %: Shigley eq 8–26, made straight. */
function fromNutFactor(
  low: number,
  likely: number,
  high: number,
  source: string,
): LubricantFriction {
  const friction = (k: number) => (k - 0.024) / 1.15
  return {
    nutFactor: { low, likely, high },
    friction: { low: friction(low), likely: friction(likely), high: friction(high) },
    source,
  }
}

const SHIGLEY = "Shigley's Mechanical Engineering Design, 9th ed., Table 8–15"

/**
 * Nut factor and friction by lubricant. The likely values of plain, plated and anti-seize
 * fasteners are Shigley's table; the spread about them is ±25 to 30 %, the scatter of torque
 * with estimated friction (VDI 2230). Sources differ: 0.20 is common for steel with the light
 * oil it comes with, 0.30 is Shigley's for black steel without any.
 */
export const LUBRICANTS: Readonly<Record<Lubricant, LubricantFriction>> = {
  dry: fromNutFactor(0.18, 0.22, 0.3, `0.20 common, 0.30 black finish: ${SHIGLEY}`),
  oil: fromNutFactor(0.14, 0.18, 0.22, `Lubricated 0.18: ${SHIGLEY}`),
  moly: fromNutFactor(0.09, 0.12, 0.15, 'Moly paste near anti-seize 0.12; spread from memory'),
  'anti-seize': fromNutFactor(0.09, 0.12, 0.15, `Anti-seize 0.12: ${SHIGLEY}`),
  'zinc-plated': fromNutFactor(0.15, 0.2, 0.25, `Zinc-plated 0.20: ${SHIGLEY}`),
  'cadmium-plated': fromNutFactor(0.12, 0.16, 0.2, `Cadmium-plated 0.16: ${SHIGLEY}`),
}
