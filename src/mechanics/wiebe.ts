import { requireWithin } from './domain-error.ts'
import { type Fuel, laminarFlameSpeed } from './fuels.ts'

/** One Wiebe burn: x = 1 − exp(−a ((θ − start)/duration)^n). */
export interface Burn {
  /** Angle at which the burn begins, rad from firing top dead centre (before it: negative). */
  readonly start: number
  /** Angle from first to last of the burn, rad. */
  readonly duration: number
  /** Efficiency factor a; 5 leaves 0.7 % unburnt at the end, 6.908 leaves 0.1 %. */
  readonly completeness: number
  /** Form exponent n (often written m + 1). */
  readonly form: number
}

/** a = 5 and n = 3 fit spark-ignition engines. Heywood 1988, section 9.2 (a 5, m 2), from memory. */
export const WIEBE_COMPLETENESS = 5
/** See {@link WIEBE_COMPLETENESS}. */
export const WIEBE_FORM = 3

/**
 * Share of the charge burnt at a crank angle.
 *
 * @param angle - rad from firing top dead centre
 * @param burn - start, duration (rad, above 0), a, n
 * @returns 0 before the start; 1 − e^−a at and after the end
 * @see Ferguson & Kirkpatrick, Internal Combustion Engines, 3rd ed., finite heat release
 *   (eq. 2.34 form), quoted elsewhere; Ghojel, Int. J. Engine Research 11 (2010), on Wiebe's function
 */
export function burntShare(angle: number, burn: Burn): number {
  const y = (angle - burn.start) / burn.duration
  if (y <= 0) return 0
  return 1 - Math.exp(-burn.completeness * (y < 1 ? y ** burn.form : 1))
}

/** d(burnt share)/dθ, 1/rad; 0 outside the burn. */
export function burnRate(angle: number, burn: Burn): number {
  const y = (angle - burn.start) / burn.duration
  if (y < 0 || y > 1) return 0
  const rest = burn.form === 1 ? 1 : y ** (burn.form - 1)
  const { completeness, form, duration } = burn
  return ((completeness * form * rest) / duration) * Math.exp(-completeness * rest * y)
}

/**
 * Angle from the start of the burn to the point where half of all that will burn is burnt.
 *
 * @returns share of the duration, 0..1
 */
export function halfBurntShare(completeness: number, form: number): number {
  const half = (1 - Math.exp(-completeness)) / 2
  return (-Math.log1p(-half) / completeness) ** (1 / form)
}

/** Burn duration at the reference speed and the fastest gasoline mixture, rad. */
const REFERENCE_DURATION = (46 * Math.PI) / 180
/** 3000 r/min. */
const REFERENCE_SPEED = 100 * Math.PI
/** Flame speed of the fastest gasoline mixture at 298 K, 1 atm, m/s. */
const REFERENCE_FLAME_SPEED = 0.305

/**
 * Burn duration (0 to 99.3 %) by speed and mixture:
 * Δθ = 46° · (speed / 3000 r/min)^(1/3) · (S_ref / S_L)^(2/3).
 *
 * @param speed - crank speed, rad/s, 500 to 12000 r/min
 * @param fuel - fuel record
 * @param lambda - air ratio, 0.75 to 1.2
 * @returns rad
 * @see Hires, Tabaczynski & Novak, SAE 780232 (1978): exponents 1/3 of speed and 2/3 of inverse
 *   flame speed, as given by Heywood 1988, section 9.3, from memory. The 46° at 3000 r/min
 *   (10–90 % in 23°) is common practice, no published source.
 */
export function burnDuration(speed: number, fuel: Fuel, lambda: number): number {
  requireWithin('speed', speed, 50, 1400, 'rad/s')
  const flame = REFERENCE_FLAME_SPEED / laminarFlameSpeed(fuel, lambda)
  return REFERENCE_DURATION * Math.cbrt(speed / REFERENCE_SPEED) * Math.cbrt(flame * flame)
}
