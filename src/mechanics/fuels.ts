import { requireWithin } from './domain-error.ts'

/** The fuels that full load knows. */
export type FuelId = 'pump-gasoline' | 'race-gasoline' | 'e85' | 'methanol'

/** What a fuel does in the cylinder. All figures are for the liquid fuel as burnt. */
export interface Fuel {
  readonly id: FuelId
  /** Lower heating value, J/kg. */
  readonly heatingValue: number
  /** Stoichiometric air to fuel mass ratio. */
  readonly stoichiometricRatio: number
  /** Latent heat of evaporation, J/kg. */
  readonly latentHeat: number
  /** Mean molar mass of the vapour, kg/mol. */
  readonly molarMass: number
  /** Mean of research and motor octane number. */
  readonly knockNumber: number
  /** Usual air ratio (lambda) at full load. */
  readonly fullLoadLambda: number
  /** Share of the latent heat that cools the charge before the inlet valve closes, 0..1. */
  readonly coolingShare: number
  /** Laminar flame speed: the greatest (m/s), the equivalence ratio where, and the curvature. */
  readonly flameSpeed: { readonly greatest: number; readonly at: number; readonly curve: number }
  /** Where the figures come from, a line each. */
  readonly sources: readonly string[]
}

const ALTERNATIVE_FUELS =
  'U.S. Department of Energy, Alternative Fuels Data Center, Properties of Fuels (table read in a reprint)'
const FLAME_SPEEDS =
  'Heywood, Internal Combustion Engine Fundamentals, 1988, laminar flame speed after Rhodes & Keck and Metghalchi & Keck, from memory'
const COMMON_LAMBDA = 'full-load air ratio: common practice, no published source'
const COMMON_COOLING =
  'share of the latent heat that cools the charge: no published source, chosen so that the charge cools by about 15 K (gasoline) to 50 K (methanol)'

/** Rhodes & Keck: S = 0.305 − 0.549 (phi − 1.21)², m/s, gasoline at 298 K and 1 atm. */
const GASOLINE_FLAME = { greatest: 0.305, at: 1.21, curve: -0.549 }
/** Metghalchi & Keck: S = 0.369 − 1.405 (phi − 1.11)², m/s, methanol at 298 K and 1 atm. */
const METHANOL_FLAME = { greatest: 0.369, at: 1.11, curve: -1.405 }

/**
 * Fuel properties. Btu per pound of the printed table is multiplied by 2326 J/kg.
 * E85 is 80 % ethanol and 20 % gasoline by mass (85 % by volume at most; sold blends hold less):
 * heating value, latent heat and stoichiometric ratio are mass means of the two.
 */
export const FUELS: Readonly<Record<FuelId, Fuel>> = {
  'pump-gasoline': {
    id: 'pump-gasoline',
    heatingValue: 18676 * 2326,
    stoichiometricRatio: 14.7,
    latentHeat: 150 * 2326,
    molarMass: 0.105,
    knockNumber: 92,
    fullLoadLambda: 0.88,
    coolingShare: 0.5,
    flameSpeed: GASOLINE_FLAME,
    sources: [
      `heating value 18676 Btu/lb, latent heat about 150 Btu/lb, air ratio 14.7, molar mass 100–105, (R+M)/2 86–94: ${ALTERNATIVE_FUELS}`,
      FLAME_SPEEDS,
      COMMON_LAMBDA,
      COMMON_COOLING,
    ],
  },
  'race-gasoline': {
    id: 'race-gasoline',
    heatingValue: 18676 * 2326,
    stoichiometricRatio: 14.7,
    latentHeat: 150 * 2326,
    molarMass: 0.105,
    knockNumber: 110,
    fullLoadLambda: 0.88,
    coolingShare: 0.5,
    flameSpeed: GASOLINE_FLAME,
    sources: [
      `as pump gasoline: ${ALTERNATIVE_FUELS}`,
      'knock number 110: common practice, no published source',
      FLAME_SPEEDS,
      COMMON_LAMBDA,
      COMMON_COOLING,
    ],
  },
  e85: {
    id: 'e85',
    heatingValue: (0.8 * 11585 + 0.2 * 18676) * 2326,
    stoichiometricRatio: 0.8 * 9.0 + 0.2 * 14.7,
    latentHeat: (0.8 * 396 + 0.2 * 150) * 2326,
    molarMass: 1 / (0.8 / 0.04607 + 0.2 / 0.105),
    knockNumber: 99,
    fullLoadLambda: 0.85,
    coolingShare: 0.35,
    flameSpeed: METHANOL_FLAME,
    sources: [
      `ethanol 11585 Btu/lb, 396 Btu/lb, 9.0, (R+M)/2 100; blended by mass: ${ALTERNATIVE_FUELS}`,
      `flame speed as methanol (assumption): ${FLAME_SPEEDS}`,
      COMMON_LAMBDA,
      COMMON_COOLING,
    ],
  },
  methanol: {
    id: 'methanol',
    heatingValue: 8637 * 2326,
    stoichiometricRatio: 6.45,
    latentHeat: 506 * 2326,
    molarMass: 0.03204,
    knockNumber: 100,
    fullLoadLambda: 0.8,
    coolingShare: 0.25,
    flameSpeed: METHANOL_FLAME,
    sources: [
      `8637 Btu/lb, 506 Btu/lb, molar mass 32.04, (R+M)/2 100: ${ALTERNATIVE_FUELS}`,
      'air ratio 6.45: stoichiometry of CH3OH',
      FLAME_SPEEDS,
      COMMON_LAMBDA,
      COMMON_COOLING,
    ],
  },
}

/**
 * Combustion efficiency of a premixed charge: the share of the fuel's heating value set free.
 * Rich of stoichiometric the oxygen runs out, so the share falls.
 * ηc = 0.95 · (−1.6082 + 4.6509 λ − 2.0764 λ²) / 0.9663, scaled to 0.95 at λ = 1.
 *
 * @param lambda - air ratio, 0.75 to 1.2
 * @returns share of the heating value, pure number
 * @throws {DomainError} outside that range
 * @see Blair, Design and Simulation of Four-Stroke Engines, 1999, from memory; 0.95 at λ = 1 is
 *   the middle of Heywood 1988, Fig. 3-9, from memory
 */
export function combustionEfficiency(lambda: number): number {
  requireWithin('lambda', lambda, 0.75, 1.2)
  const shape = (x: number) => -1.6082 + 4.6509 * x - 2.0764 * x * x
  return (0.95 * shape(lambda)) / shape(1)
}

/**
 * Heat set free for each kilogram of air.
 *
 * @param fuel - fuel record
 * @param lambda - air ratio, 0.75 to 1.2
 * @returns J per kg of air
 */
export function heatPerAir(fuel: Fuel, lambda: number): number {
  return (fuel.heatingValue * combustionEfficiency(lambda)) / (fuel.stoichiometricRatio * lambda)
}

/**
 * Laminar flame speed at 298 K and one atmosphere, S = greatest + curve (φ − at)².
 *
 * @param fuel - fuel record
 * @param lambda - air ratio, 0.75 to 1.2; φ = 1/λ
 * @returns m/s
 * @see Heywood 1988, eq. 9.33 and its table, from memory
 */
export function laminarFlameSpeed(fuel: Fuel, lambda: number): number {
  requireWithin('lambda', lambda, 0.75, 1.2)
  const offset = 1 / lambda - fuel.flameSpeed.at
  return fuel.flameSpeed.greatest + fuel.flameSpeed.curve * offset * offset
}
