import { requireWithin } from './domain-error.ts'

/** Materials whose growth with warmth is tabled here. */
export type GrowthMaterial =
  | 'gray-iron'
  | 'compacted-iron'
  | 'ductile-iron'
  | 'sintered-steel'
  | 'steel'
  | 'aluminium'

/** Mean coefficient of linear expansion near room temperature, 1/K, with where it is from. */
export const EXPANSION: Record<GrowthMaterial, { perKelvin: number; source: string }> = {
  'gray-iron': {
    perKelvin: 11.4e-6,
    source: 'Callister, Materials Science and Engineering, Table B.6, gray iron G3000',
  },
  'compacted-iron': { perKelvin: 11.5e-6, source: 'from memory, between gray and ductile iron' },
  'ductile-iron': {
    perKelvin: 11.2e-6,
    source: 'Callister, Materials Science and Engineering, Table B.6, ductile iron 60-40-18',
  },
  'sintered-steel': { perKelvin: 12.0e-6, source: 'from memory, as plain carbon steel' },
  steel: {
    perKelvin: 12.3e-6,
    source: 'Callister, Materials Science and Engineering, Table B.6, steels 4140 and 4340',
  },
  aluminium: {
    perKelvin: 21.5e-6,
    source: 'Callister, Materials Science and Engineering, Table B.6, cast alloy 356.0',
  },
}

/**
 * Growth of a length with warmth, α L ΔT.
 *
 * @param length - at the reference temperature, m; 0 to 10
 * @param perKelvin - α, 1/K; 0 to 1e-4
 * @param rise - ΔT above the reference, K; −100 to 300, negative when colder
 * @returns m, negative when it shrinks
 * @throws {DomainError} if an argument does not fit
 * @see Callister, Materials Science and Engineering, chapter on thermal properties
 */
export function thermalGrowth(length: number, perKelvin: number, rise: number): number {
  requireWithin('length', length, 0, 10, 'm')
  requireWithin('perKelvin', perKelvin, 0, 1e-4, '1/K')
  requireWithin('rise', rise, -100, 300, 'K')
  return perKelvin * length * rise
}

/** Expansion coefficient of a tabled material, 1/K. */
export function expansionOf(material: GrowthMaterial): number {
  return EXPANSION[material].perKelvin
}
