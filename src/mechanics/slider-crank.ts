import { DomainError, requireWithin } from './domain-error.ts'

/**
 * Slider-crank motion with the bore axis through the crank axis. Angle θ is measured from top dead
 * centre, rad, any value. With R the crank radius, l the rod's length between centres and λ = R/l,
 * the rod leans by φ, sin φ = λ sin θ. Every form is written in λ, so that an infinitely long rod
 * (`rodLength = Infinity`, λ = 0) gives simple harmonic motion exactly.
 *
 * Sources: C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 2, ch. 8;
 * J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, eqs 2.4 to 2.11 (both from memory);
 * the derivatives are checked in the tests against symbolic differentiation.
 */

/** Least rod length as a multiple of the crank radius: below it the rod would fold. */
const LEAST_ROD_RATIO = 1.05

/**
 * Refuse a crank that cannot turn.
 *
 * @param crankRadius - R, half the stroke, m; 0.001 to 2
 * @param rodLength - l, between the rod's centres, m; at least 1.05 R, Infinity allowed
 * @returns λ = R/l, 0 to 0.952
 * @throws {DomainError} outside these ranges
 */
export function rodRatio(crankRadius: number, rodLength: number): number {
  requireWithin('crankRadius', crankRadius, 0.001, 2, 'm')
  if (!(rodLength >= LEAST_ROD_RATIO * crankRadius)) {
    throw new DomainError('rodLength', rodLength, `at least ${LEAST_ROD_RATIO * crankRadius} m`)
  }
  return crankRadius / rodLength
}

/**
 * Lean of the rod from the bore axis, φ = arcsin(λ sin θ), rad; positive while the pin is on the
 * side that it moves to first after top dead centre.
 */
export function rodAngle(crankRadius: number, rodLength: number, angle: number): number {
  return Math.asin(rodRatio(crankRadius, rodLength) * Math.sin(angle))
}

/**
 * Distance of the piston below top dead centre.
 *
 * x = R [1 − cos θ + λ sin²θ / (1 + cos φ)], the same as R(1 − cos θ) + l − √(l² − R² sin²θ)
 * without the loss of digits when the rod is long.
 *
 * @returns x, m; 0 to 2R
 * @throws {DomainError} see {@link rodRatio}
 */
export function pistonTravel(crankRadius: number, rodLength: number, angle: number): number {
  const ratio = rodRatio(crankRadius, rodLength)
  const sine = Math.sin(angle)
  const cosRod = Math.sqrt(1 - (ratio * sine) ** 2)
  return crankRadius * (1 - Math.cos(angle) + (ratio * sine * sine) / (1 + cosRod))
}

/**
 * Piston speed, positive away from top dead centre: v = R ω sin θ (1 + λ cos θ / cos φ).
 *
 * @param speed - ω, crank speed, rad/s
 * @returns v, m/s
 * @throws {DomainError} see {@link rodRatio}
 */
export function pistonSpeed(
  crankRadius: number,
  rodLength: number,
  angle: number,
  speed: number,
): number {
  const ratio = rodRatio(crankRadius, rodLength)
  const sine = Math.sin(angle)
  const cosRod = Math.sqrt(1 - (ratio * sine) ** 2)
  return crankRadius * speed * sine * (1 + (ratio * Math.cos(angle)) / cosRod)
}

/**
 * Exact acceleration of the piston as a multiple of R ω², positive toward the crank:
 * k = cos θ + λ (cos 2θ + λ² sin⁴θ) / cos³φ.
 *
 * @param ratio - λ = R/l, 0 to below 1
 * @returns k, pure number; 1 + λ at top dead centre, −(1 − λ) at bottom dead centre
 */
export function accelerationFactor(ratio: number, angle: number): number {
  const square = Math.sin(angle) ** 2
  const cosRod = Math.sqrt(1 - ratio * ratio * square)
  return (
    Math.cos(angle) + (ratio * (1 - 2 * square + ratio * ratio * square * square)) / cosRod ** 3
  )
}

/**
 * The textbook's short form, k = cos θ + λ cos 2θ: the first two terms of the series in λ. Its
 * error is of the order λ³; 0.9 % of R ω² at λ = 0.3.
 */
export function twoTermAccelerationFactor(ratio: number, angle: number): number {
  return Math.cos(angle) + ratio * Math.cos(2 * angle)
}

/** Which formula gives the piston's acceleration. */
export type PistonMotion = 'exact' | 'two-term'

/**
 * Piston acceleration, positive toward the crank: a = R ω² k.
 *
 * @param speed - ω, crank speed, rad/s
 * @param motion - exact (default) or the two-term form of textbooks
 * @returns a, m/s²
 * @throws {DomainError} see {@link rodRatio}
 */
export function pistonAcceleration(
  crankRadius: number,
  rodLength: number,
  angle: number,
  speed: number,
  motion: PistonMotion = 'exact',
): number {
  const factor = motion === 'exact' ? accelerationFactor : twoTermAccelerationFactor
  return crankRadius * speed * speed * factor(rodRatio(crankRadius, rodLength), angle)
}

/** Mean piston speed, m/s: stroke (m) twice in each turn, S ω / π. */
export function meanPistonSpeed(stroke: number, speed: number): number {
  return (stroke * speed) / Math.PI
}

/** Bore, stroke, rod (m) and compression ratio (pure number above 1) of a cylinder. */
export interface CylinderGeometry {
  bore: number
  stroke: number
  rodLength: number
  compressionRatio: number
}

/** Area of the bore, m², from its diameter, m. */
export function boreArea(bore: number): number {
  return (Math.PI / 4) * bore * bore
}

/** Volume swept by one piston, m³. */
export function sweptVolume(bore: number, stroke: number): number {
  return boreArea(bore) * stroke
}

/** Volume left at top dead centre, m³: swept volume / (compression ratio − 1). */
export function clearanceVolume(geometry: CylinderGeometry): number {
  requireWithin('bore', geometry.bore, 0.01, 1, 'm')
  requireWithin('compressionRatio', geometry.compressionRatio, 1.5, 30)
  return sweptVolume(geometry.bore, geometry.stroke) / (geometry.compressionRatio - 1)
}

/**
 * Volume above the piston at crank angle θ.
 *
 * @returns V, m³, from the clearance volume at top to clearance plus swept volume at bottom
 * @throws {DomainError} if bore, compression ratio, stroke or rod is out of range
 */
export function cylinderVolume(geometry: CylinderGeometry, angle: number): number {
  const travel = pistonTravel(geometry.stroke / 2, geometry.rodLength, angle)
  return clearanceVolume(geometry) + boreArea(geometry.bore) * travel
}
