import { requireWithin } from './domain-error.ts'

/** Specific gas constant of air, J/(kg K). Universal constant 8.314462618 over 28.9647 g/mol. */
export const AIR_GAS_CONSTANT = 287.055

/** Ratio of specific heats as a polynomial of the mean gas temperature. */
export interface GammaFit {
  readonly constant: number
  /** 1/K */
  readonly linear: number
  /** 1/K² */
  readonly quadratic: number
  /** Temperature above which the fit is held, K. */
  readonly highest: number
  readonly source: string
}

/** The published fits that a gas cycle can be asked for by name. */
export type GammaFitId = 'linear' | 'quadratic' | 'air'

/**
 * `linear`: γ = 1.392 − 8.13·10⁻⁵ T. Gatowski et al., SAE 841359 (1984), read where it is quoted.
 * `quadratic`: γ = 1.338 − 6.0·10⁻⁵ T + 1.0·10⁻⁸ T². Brunt, Rai & Emtage, SAE 981052 (1998),
 * gasoline engine; read where it is quoted.
 * `air`: γ = 1.43954 − 1.30055·10⁻⁴ T + 2.8765·10⁻⁸ T². Least squares over 280–1700 K (within
 * 0.0034) to the cubic cp of air, Cengel & Boles, Thermodynamics, Table A-2c, from memory; for
 * air-standard cycles.
 */
export const GAMMA_FITS: Readonly<Record<GammaFitId, GammaFit>> = {
  linear: {
    constant: 1.392,
    linear: -8.13e-5,
    quadratic: 0,
    highest: 3000,
    source: 'Gatowski et al., SAE 841359, quoted elsewhere',
  },
  quadratic: {
    constant: 1.338,
    linear: -6e-5,
    quadratic: 1e-8,
    highest: 3000,
    source: 'Brunt, Rai & Emtage, SAE 981052, quoted elsewhere',
  },
  air: {
    constant: 1.43954,
    linear: -1.30055e-4,
    quadratic: 2.8765e-8,
    highest: 2000,
    source: 'fitted to cp of air, Cengel & Boles, Table A-2c, from memory',
  },
}

/**
 * A fit that does not change with temperature, for textbook cycles.
 *
 * @param gamma - ratio of specific heats, 1.05 to 1.7
 * @throws {DomainError} outside that range
 */
export function constantGamma(gamma: number): GammaFit {
  requireWithin('gamma', gamma, 1.05, 1.7)
  return { constant: gamma, linear: 0, quadratic: 0, highest: Infinity, source: 'given' }
}

/**
 * Ratio of specific heats of the cylinder gas.
 *
 * @param fit - one of {@link GAMMA_FITS} or {@link constantGamma}
 * @param temperature - mean gas temperature, K; above the fit's highest the fit is held
 * @returns γ, pure number
 */
export function gammaAt(fit: GammaFit, temperature: number): number {
  const t = Math.min(temperature, fit.highest)
  return fit.constant + t * (fit.linear + t * fit.quadratic)
}
