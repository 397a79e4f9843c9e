import { requireWithin } from './domain-error.ts'

/** A pair of half shells pressed into a housing; m, Pa. */
export interface CrushInput {
  /** Housing bore that the shells go into, diameter; 0.02 to 0.3. */
  housingBore: number
  /** Bore of the block in which the overstand was checked; the housing bore when not given. */
  checkingBore?: number
  /** How far one half shell's edge stands above half the checking bore; 0 to 0.0005. */
  overstand: number
  /** Wall of the shell's steel back. */
  wall: number
  /** Width of the shell along the crank. */
  width: number
  /** Elastic modulus of the back; 207 GPa when not given. */
  shellModulus?: number
  /** The housing as a ring: outside diameter, modulus, Poisson's ratio. */
  housing: { outside: number; modulus: number; poisson: number }
  /** Expansion of housing less that of shell, 1/K, and rise above the measuring temperature, K. */
  warmth?: { difference: number; rise: number }
}

export interface Crush {
  /** Overstand left in this housing bore; below 0 the shell is loose. */
  overstand: number
  /** Excess of the shell's radius over the housing's, before either gives. */
  interference: number
  /** Between shell and housing. */
  pressure: number
  /** Squeezing stress along the shell's back. */
  hoopStress: number
  /** Push of the shells on each parting face. */
  jointForce: number
  /** Both joints of the cap: the part of the clamp that is spent on crush. */
  capForce: number
  /** Growth of the housing bore, on the diameter. */
  housingGrowth: number
}

/**
 * Crush: two half shells, each longer than half the bore by the overstand, are
 * squeezed into the housing. The shell is a thin ring, the housing a thick one;
 * friction along the bore is left out, so the joint force is the greatest that
 * it can be.
 *
 * Both shells together are 2a longer than the bore's circumference, so their
 * radius is a/π too large; p = δ / (R²/(E_s t) + (R/E_h)(K + ν)),
 * K = (D_o² + D²)/(D_o² − D²). A negative interference gives no pressure.
 *
 * @throws {DomainError} if a figure is not in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., section 3–16 (press fits, eq. 3–56)
 */
export function crush(input: CrushInput): Crush {
  requireInput(input)
  const { housingBore, wall, width, housing, shellModulus = 207e9 } = input
  const radius = housingBore / 2
  const overstand = overstandInBore(input.overstand, input.checkingBore ?? housingBore, housingBore)
  const lost = (input.warmth?.difference ?? 0) * (input.warmth?.rise ?? 0) * radius
  const interference = overstand / Math.PI - lost
  const ratio =
    (housing.outside ** 2 + housingBore ** 2) / (housing.outside ** 2 - housingBore ** 2)
  const shellGive = radius ** 2 / (shellModulus * wall)
  const housingGive = (radius / housing.modulus) * (ratio + housing.poisson)
  const pressure = Math.max(0, interference) / (shellGive + housingGive)
  const hoopStress = (pressure * radius) / wall
  const jointForce = hoopStress * wall * width
  return {
    overstand,
    interference,
    pressure,
    hoopStress,
    jointForce,
    capForce: 2 * jointForce,
    housingGrowth: 2 * pressure * housingGive,
  }
}

/**
 * Overstand of a half shell in a bore other than the one it was checked in: the
 * shell's arc is what it is, the bore's half circumference differs by π ΔD / 2.
 *
 * @returns m; below 0 when the bore is too large for any crush
 */
export function overstandInBore(overstand: number, checkingBore: number, bore: number): number {
  return overstand + (Math.PI / 2) * (checkingBore - bore)
}

function requireInput(input: CrushInput): void {
  const { housingBore, housing } = input
  requireWithin('housingBore', housingBore, 0.02, 0.3, 'm')
  requireWithin('checkingBore', input.checkingBore ?? housingBore, 0.02, 0.3, 'm')
  requireWithin('overstand', input.overstand, 0, 0.0005, 'm')
  requireWithin('wall', input.wall, 0.0005, 0.02, 'm')
  requireWithin('width', input.width, 0.005, 0.3, 'm')
  requireWithin('shellModulus', input.shellModulus ?? 207e9, 1e9, 1e12, 'Pa')
  requireWithin('housing.outside', housing.outside, 1.01 * housingBore, 10, 'm')
  requireWithin('housing.modulus', housing.modulus, 1e9, 1e12, 'Pa')
  requireWithin('housing.poisson', housing.poisson, 0, 0.5)
  requireWithin('warmth.difference', input.warmth?.difference ?? 0, -1e-4, 1e-4, '1/K')
  requireWithin('warmth.rise', input.warmth?.rise ?? 0, -100, 300, 'K')
}
