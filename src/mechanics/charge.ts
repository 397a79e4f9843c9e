import { requireWithin } from './domain-error.ts'
import type { Fuel } from './fuels.ts'
import { AIR_GAS_CONSTANT } from './gas-properties.ts'

/** Ratio of specific heats and specific heat (J/(kg K)) of air through a compressor. */
const AIR_GAMMA = 1.4
const AIR_CP = 1005

/** Molar mass of air, kg/mol. */
const AIR_MOLAR_MASS = 0.0289647

/**
 * Temperature after a compressor: T2 = T1 + (T1 Π^((γ−1)/γ) − T1)/η.
 *
 * @param temperature - at the inlet, K, 200 to 400
 * @param pressureRatio - Π, absolute, 1 to 10
 * @param efficiency - isentropic, 0.3 to 1
 * @returns K
 * @throws {DomainError} outside those ranges
 * @see Heywood, Internal Combustion Engine Fundamentals, 1988, section 6.8, from memory
 */
export function compressorOutlet(
  temperature: number,
  pressureRatio: number,
  efficiency: number,
): number {
  requireWithin('temperature', temperature, 200, 400, 'K')
  requireWithin('pressureRatio', pressureRatio, 1, 10)
  requireWithin('efficiency', efficiency, 0.3, 1)
  const rise = pressureRatio ** ((AIR_GAMMA - 1) / AIR_GAMMA) - 1
  return temperature * (1 + rise / efficiency)
}

/**
 * Temperature after an intercooler: T3 = T2 − e (T2 − Tc).
 *
 * @param temperature - T2 before it, K
 * @param coolant - Tc, temperature of the cooling air or water, K
 * @param effectiveness - e, 0 (none) to 1
 * @returns K
 */
export function intercoolerOutlet(
  temperature: number,
  coolant: number,
  effectiveness: number,
): number {
  requireWithin('effectiveness', effectiveness, 0, 1)
  return temperature - effectiveness * (temperature - coolant)
}

/**
 * Shaft power of a compressor: P = ṁ cp (T2 − T1) / η_mech.
 *
 * @param massFlow - of air, kg/s, 0 or more
 * @param rise - T2 − T1 across the compressor, K, 0 or more
 * @param mechanicalEfficiency - of its drive, 0.5 to 1
 * @returns W
 */
export function compressorPower(
  massFlow: number,
  rise: number,
  mechanicalEfficiency: number,
): number {
  requireWithin('massFlow', massFlow, 0, 100, 'kg/s')
  requireWithin('rise', rise, 0, 1000, 'K')
  requireWithin('mechanicalEfficiency', mechanicalEfficiency, 0.5, 1)
  return (massFlow * AIR_CP * rise) / mechanicalEfficiency
}

/**
 * Fall of the charge's temperature as its fuel evaporates: share · h_fg / (AFR · cp).
 *
 * @param fuel - fuel record; its coolingShare says how much of the latent heat comes from the air
 * @param lambda - air ratio, 0.75 to 1.2
 * @returns K, 0 or more
 * @see Heywood 1988, section 6.2.1, from memory
 */
export function evaporativeCooling(fuel: Fuel, lambda: number): number {
  return (fuel.coolingShare * fuel.latentHeat) / (fuel.stoichiometricRatio * lambda * AIR_CP)
}

/**
 * Share of the manifold pressure left for air beside the fuel's vapour:
 * 1/(1 + (F/A)(M_air/M_fuel)), for the share of the fuel that has evaporated.
 *
 * @see Heywood 1988, eq. 6.2 and section 6.2.1, from memory
 */
export function airPressureShare(fuel: Fuel, lambda: number): number {
  const vapour = fuel.coolingShare / (fuel.stoichiometricRatio * lambda)
  return 1 / (1 + (vapour * AIR_MOLAR_MASS) / fuel.molarMass)
}

/** Density of air, kg/m³, by the ideal gas law; pressure Pa absolute, temperature K. */
export function airDensity(pressure: number, temperature: number): number {
  return pressure / (AIR_GAS_CONSTANT * temperature)
}
