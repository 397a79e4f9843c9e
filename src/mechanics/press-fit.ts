import { DomainError, requireWithin } from './domain-error.ts'

/** A ring or pin pressed into a bore: hollow dowels of a cap, a sleeve in its housing. */
export interface PressFit {
  /** R, radius of the joint, m; 0.0005 to 0.5 */
  readonly radius: number
  /** ri, inner radius of the pressed part, m; 0 = solid */
  readonly innerRadius: number
  /** ro, outer radius of the part around it, m; above R */
  readonly outerRadius: number
  /** δ, interference on the radius, m; 0 to 0.001 */
  readonly radialInterference: number
  /** E and ν of the pressed part */
  readonly innerModulus: number
  readonly innerPoisson: number
  /** E and ν of the part around it */
  readonly outerModulus: number
  readonly outerPoisson: number
}

function requireFit(fit: PressFit): void {
  requireWithin('radius', fit.radius, 0.0005, 0.5, 'm')
  requireWithin('radialInterference', fit.radialInterference, 0, 0.001, 'm')
  requireWithin('innerModulus', fit.innerModulus, 1e9, 1e12, 'Pa')
  requireWithin('outerModulus', fit.outerModulus, 1e9, 1e12, 'Pa')
  requireWithin('innerPoisson', fit.innerPoisson, 0, 0.5)
  requireWithin('outerPoisson', fit.outerPoisson, 0, 0.5)
  if (!(fit.innerRadius >= 0 && fit.innerRadius < fit.radius)) {
    throw new DomainError('innerRadius', fit.innerRadius, `from 0 to below ${fit.radius} m`)
  }
  if (!(fit.outerRadius > fit.radius && fit.outerRadius <= 5)) {
    throw new DomainError('outerRadius', fit.outerRadius, `above ${fit.radius} m, up to 5 m`)
  }
}

/**
 * Pressure in a press fit of two thick rings:
 * p = δ / {R [(1/Eo)((ro² + R²)/(ro² − R²) + νo) + (1/Ei)((R² + ri²)/(R² − ri²) − νi)]}.
 *
 * @param fit - see {@link PressFit}
 * @returns p, Pa
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., eq 3–56
 */
export function pressFitPressure(fit: PressFit): number {
  requireFit(fit)
  const [R2, i2, o2] = [fit.radius ** 2, fit.innerRadius ** 2, fit.outerRadius ** 2]
  const around = ((o2 + R2) / (o2 - R2) + fit.outerPoisson) / fit.outerModulus
  const within = ((R2 + i2) / (R2 - i2) - fit.innerPoisson) / fit.innerModulus
  return fit.radialInterference / (fit.radius * (around + within))
}

/**
 * Hoop stress at the bore of the part around a press fit: σ = p (ro² + R²)/(ro² − R²).
 *
 * @param fit - see {@link PressFit}
 * @returns σ, Pa, tension
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley, 9th ed., eq 3–58
 */
export function pressFitHoop(fit: PressFit): number {
  const pressure = pressFitPressure(fit)
  const [R2, o2] = [fit.radius ** 2, fit.outerRadius ** 2]
  return (pressure * (o2 + R2)) / (o2 - R2)
}
