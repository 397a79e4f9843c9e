import { requireWithin } from './domain-error.ts'

/** How heat goes to the walls. */
export type WallHeat =
  | { readonly kind: 'none' }
  /** A stated share of the burn's heat, lost as it is released. */
  | { readonly kind: 'share'; readonly share: number }
  /** Woschni's correlation. */
  | {
      readonly kind: 'woschni'
      /** Mean wall temperature, K. */
      readonly wallTemperature: number
      /** Multiplies the coefficient, 1 = as published. */
      readonly scale: number
    }

/**
 * Woschni's constants in SI: h = 0.013 B^−0.2 p^0.8 T^−0.53 w^0.8 with p in Pa,
 * w = c1·Sp + c2·(Vd T1/(p1 V1))·(p − p_motored).
 *
 * The published 129.8 for p in bar becomes 129.8·10^(−5·0.8) = 0.01298 for p in Pa.
 * c1 2.28 with the valves shut; c2 3.24·10⁻³ m/(s K) in burn and expansion, 0 before.
 *
 * @see Woschni, SAE 670931 (1967); constants 129.8, −0.53, 2.28, 3.24·10⁻³ read where quoted
 */
export const WOSCHNI = {
  factor: 129.8 * 10 ** -4,
  pressureExponent: 0.8,
  temperatureExponent: -0.53,
  speedExponent: 0.8,
  pistonSpeedFactor: 2.28,
  burnFactor: 3.24e-3,
} as const

/**
 * Woschni's heat transfer coefficient.
 *
 * @param bore - m, above 0
 * @param pressure - Pa absolute
 * @param temperature - mean gas temperature, K
 * @param gasSpeed - w, m/s; see {@link woschniGasSpeed}
 * @returns W/(m² K)
 * @throws {DomainError} if an argument is not a finite number above 0
 */
export function woschniCoefficient(
  bore: number,
  pressure: number,
  temperature: number,
  gasSpeed: number,
): number {
  requireWithin('bore', bore, 1e-3, 1, 'm')
  requireWithin('pressure', pressure, 1, 1e9, 'Pa')
  requireWithin('temperature', temperature, 1, 1e4, 'K')
  requireWithin('gasSpeed', gasSpeed, 0, 1e4, 'm/s')
  return (
    WOSCHNI.factor *
    bore ** -0.2 *
    pressure ** WOSCHNI.pressureExponent *
    temperature ** WOSCHNI.temperatureExponent *
    gasSpeed ** WOSCHNI.speedExponent
  )
}

/**
 * Woschni's gas speed with the valves shut.
 *
 * @param pistonSpeed - mean piston speed, m/s
 * @param sweptVolume - Vd, m³
 * @param reference - pressure (Pa), temperature (K), volume (m³) at the start of compression
 * @param pressureRise - cylinder pressure less motored pressure, Pa; 0 before the burn
 * @returns w, m/s
 */
export function woschniGasSpeed(
  pistonSpeed: number,
  sweptVolume: number,
  reference: { pressure: number; temperature: number; volume: number },
  pressureRise: number,
): number {
  const scale = (sweptVolume * reference.temperature) / (reference.pressure * reference.volume)
  return WOSCHNI.pistonSpeedFactor * pistonSpeed + WOSCHNI.burnFactor * scale * pressureRise
}
