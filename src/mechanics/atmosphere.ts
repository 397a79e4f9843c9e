import { requireWithin } from './domain-error.ts'

/** Sea-level standard day: Pa, K. U.S. Standard Atmosphere 1976. */
export const STANDARD_PRESSURE = 101325
const STANDARD_TEMPERATURE = 288.15

/** Fall of temperature with height in the lowest layer, K/m. */
const LAPSE = 0.0065
/** g M / (R · lapse) of the standard atmosphere. */
const PRESSURE_EXPONENT = 5.25588
/** Specific gas constant of the standard atmosphere, J/(kg K). */
const GAS_CONSTANT = 287.0529

/** Air at a height: Pa, K, kg/m³. */
export interface Atmosphere {
  readonly pressure: number
  readonly temperature: number
  readonly density: number
}

/**
 * Standard air at a geopotential height.
 *
 * T = 288.15 − 0.0065 h; p = 101325 (T/288.15)^5.25588; ρ = p/(R T).
 *
 * @param height - geopotential, m, −500 to 11000
 * @throws {DomainError} outside that range
 * @see U.S. Standard Atmosphere, 1976, lowest layer
 */
export function standardAtmosphere(height: number): Atmosphere {
  requireWithin('height', height, -500, 11000, 'm')
  const temperature = STANDARD_TEMPERATURE - LAPSE * height
  const pressure = STANDARD_PRESSURE * (temperature / STANDARD_TEMPERATURE) ** PRESSURE_EXPONENT
  return { pressure, temperature, density: pressure / (GAS_CONSTANT * temperature) }
}
