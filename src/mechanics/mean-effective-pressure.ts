import { requireWithin } from './domain-error.ts'

/** Crank turns for one working cycle: four-stroke 2, two-stroke 1. */
export type TurnsPerCycle = 1 | 2

/**
 * Mean effective pressure of a torque: mep = 2π n T/V.
 *
 * @param torque - N m
 * @param displacement - of the whole engine, m³, above 0
 * @param turns - crank turns a cycle, default 2 (four-stroke: 4π T/V)
 * @returns Pa
 * @throws {DomainError} if the displacement does not fit
 * @see Heywood, Internal Combustion Engine Fundamentals, 1988, eq. 2.20, from memory
 */
export function mepOfTorque(
  torque: number,
  displacement: number,
  turns: TurnsPerCycle = 2,
): number {
  requireWithin('displacement', displacement, 1e-6, 1, 'm³')
  return (2 * Math.PI * turns * torque) / displacement
}

/** Torque of a mean effective pressure, N m; the inverse of {@link mepOfTorque}. */
export function torqueOfMep(mep: number, displacement: number, turns: TurnsPerCycle = 2): number {
  requireWithin('displacement', displacement, 1e-6, 1, 'm³')
  return (mep * displacement) / (2 * Math.PI * turns)
}

/**
 * Power of a mean effective pressure: P = mep V ω/(2π n).
 *
 * @param mep - Pa
 * @param displacement - m³
 * @param speed - rad/s
 * @param turns - crank turns a cycle, default 2
 * @returns W
 */
export function powerOfMep(
  mep: number,
  displacement: number,
  speed: number,
  turns: TurnsPerCycle = 2,
): number {
  return torqueOfMep(mep, displacement, turns) * speed
}

/** Displacement of a whole engine, m³: π/4 B² S z. Bore and stroke m. */
export function displacementOf(bore: number, stroke: number, cylinders: number): number {
  return (Math.PI / 4) * bore * bore * stroke * cylinders
}
