/**
 * The floor that the mechanics are held against: what a load sweep cannot do without, written as
 * bare loops over typed arrays. For each of seven speeds one cycle's pressure at 720 angles, the
 * force of one piston, eight of them shifted and summed on four throws, those shared by five
 * mains, and the greatest pull and side push on a cap. No checks, no scales, no samples.
 */

const STEPS = 720
const THROWS = 4
const RATIO = 0.3
const FIRING = [0, 630, 270, 180, 450, 360, 540, 90]
const sine = Float64Array.from({ length: STEPS }, (_, i) => Math.sin((i * Math.PI) / 180))
const cosine = Float64Array.from({ length: STEPS }, (_, i) => Math.cos((i * Math.PI) / 180))
const volume = Float64Array.from({ length: STEPS }, (_, i) => {
  const s = sine[i] as number
  const travel = 1 - (cosine[i] as number) + (1 - Math.sqrt(1 - (RATIO * s) ** 2)) / RATIO
  return 1 / 9 + travel / 2
})
const pressure = new Float64Array(STEPS)
const along = new Float64Array(2 * STEPS)
const across = new Float64Array(2 * STEPS)
const throwX = Array.from({ length: THROWS }, () => new Float64Array(STEPS))
const throwY = Array.from({ length: THROWS }, () => new Float64Array(STEPS))

/** The whole sweep; returns its greatest pull, so that nothing of it can be left out. */
export function kernelSweep(speeds: readonly number[]): number {
  let worst = 0
  for (const speed of speeds) {
    cycle(0.8 + 0.1 / speed)
    piston(speed * speed * 1e-2)
    throwSums()
    worst = Math.max(worst, mains())
  }
  return worst
}

function cycle(charge: number): void {
  let p = charge
  pressure.fill(1)
  for (let i = 540; i < 900; i++) {
    const at = i % STEPS
    const [now, next] = [volume[at] as number, volume[(at + 1) % STEPS] as number]
    const burnt = i < 705 ? 0 : (i - 705) / 50
    const heat = burnt > 0 ? 4 * burnt * burnt * Math.exp(-5 * burnt ** 3) : 0
    p += (-1.33 * p * (next - now) + 0.33 * heat) / now
    pressure[at] = p
  }
}

function piston(inertia: number): void {
  for (let i = 0; i < STEPS; i++) {
    const s = RATIO * (sine[i] as number)
    const lean = s / Math.sqrt(1 - s * s)
    const force =
      1 -
      (pressure[i] as number) +
      inertia * ((cosine[i] as number) + RATIO * (cosine[(2 * i) % STEPS] as number))
    along[i] = along[i + STEPS] = force
    across[i] = across[i + STEPS] = -force * lean
  }
}

function throwSums(): void {
  for (let one = 0; one < THROWS; one++) {
    const [x, y] = [throwX[one] as Float64Array, throwY[one] as Float64Array]
    const [first, second] = [
      STEPS - (FIRING[2 * one] as number),
      STEPS - (FIRING[2 * one + 1] as number),
    ]
    for (let i = 0; i < STEPS; i++) {
      const [u, v] = [along[first + i] as number, across[first + i] as number]
      const [w, z] = [along[second + i] as number, across[second + i] as number]
      x[i] = Math.SQRT1_2 * (u + v - w + z)
      y[i] = Math.SQRT1_2 * (u - v + w + z)
    }
  }
}

function mains(): number {
  let [pull, side] = [0, 0]
  for (let main = 0; main <= THROWS; main++) {
    const before = Math.max(0, main - 1)
    const after = Math.min(THROWS - 1, main)
    const [x, y] = [throwX[before] as Float64Array, throwY[before] as Float64Array]
    const [moreX, moreY] = [throwX[after] as Float64Array, throwY[after] as Float64Array]
    for (let i = 0; i < STEPS; i++) {
      const sideways = 0.5 * Math.abs((x[i] as number) + (moreX[i] as number))
      const up = 0.5 * ((y[i] as number) + (moreY[i] as number))
      const part = Math.atan2(sideways, up) / Math.PI
      const down = sideways / Math.PI - up * part
      if (down > pull) pull = down
      if (sideways * part > side) side = sideways * part
    }
  }
  return pull + side
}
