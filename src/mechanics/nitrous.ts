import { requireWithin } from './domain-error.ts'
import { combustionEfficiency, type Fuel } from './fuels.ts'

/** Mass of oxygen in a kilogram of nitrous oxide, 16.00/44.013, and of air. */
const NITROUS_OXYGEN = 15.999 / 44.013
const AIR_OXYGEN = 0.2314
/** Heat set free as nitrous oxide falls apart: 82.05 kJ/mol over 44.013 g/mol, J/kg. */
const DECOMPOSITION_HEAT = 82.05e3 / 0.044013

/**
 * Heat that a kilogram of nitrous oxide brings, with the fuel its oxygen burns.
 *
 * Its oxygen counts as that of 1.57 kg of air, at the same air ratio; the heat of its own
 * decomposition comes on top.
 *
 * @param fuel - fuel record
 * @param lambda - air ratio, 0.75 to 1.2
 * @returns J per kg of nitrous oxide
 * @see enthalpy of formation of N2O(g) +82.05 kJ/mol, NIST Chemistry WebBook, from memory
 */
export function nitrousHeat(fuel: Fuel, lambda: number): number {
  const burns = nitrousFuel(fuel, lambda) * fuel.heatingValue * combustionEfficiency(lambda)
  return burns + DECOMPOSITION_HEAT
}

/** Fuel that goes with a kilogram of nitrous oxide, kg. */
export function nitrousFuel(fuel: Fuel, lambda: number): number {
  return NITROUS_OXYGEN / (AIR_OXYGEN * fuel.stoichiometricRatio * lambda)
}

/**
 * Nitrous oxide for one cylinder and cycle that gives a stated gain at the crank.
 *
 * @param power - gain at the crank of the whole engine, W, 0 to 2e6
 * @param speed - crank speed, rad/s
 * @param cylinders - how many share it
 * @param efficiency - share of the added heat that reaches the crank, 0.05 to 0.7
 * @param heat - J per kg, from {@link nitrousHeat}
 * @returns kg a cycle and cylinder
 */
export function nitrousDose(
  power: number,
  speed: number,
  cylinders: number,
  efficiency: number,
  heat: number,
): number {
  requireWithin('nitrousPower', power, 0, 2e6, 'W')
  requireWithin('efficiency', efficiency, 0.05, 0.7)
  return (power * 4 * Math.PI) / (speed * cylinders * efficiency * heat)
}
