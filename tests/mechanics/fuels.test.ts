import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import {
  combustionEfficiency,
  FUELS,
  type FuelId,
  heatPerAir,
  laminarFlameSpeed,
} from '../../src/mechanics/fuels.ts'

const within = (found: number, published: number, share: number) =>
  expect(Math.abs(found / published - 1)).toBeLessThanOrEqual(share)

describe('FUELS', () => {
  // Heywood, Internal Combustion Engine Fundamentals, 1988, Appendix D, Table D.4, from memory:
  // gasoline 44.0 MJ/kg, 305 kJ/kg, 14.6; methanol 20.0, 1103, 6.47; ethanol 26.9, 840, 9.00. The
  // project's figures come from another table; 3 % on heating value, 1 % on air, 16 % on latent
  // heat is how far the two tables differ.
  it.each([
    { id: 'pump-gasoline', heating: 44.0e6, air: 14.6, latent: 305e3 },
    { id: 'methanol', heating: 20.0e6, air: 6.47, latent: 1103e3 },
  ] as const)('$id agrees with a second table', ({ id, heating, air, latent }) => {
    within(FUELS[id].heatingValue, heating, 0.03)
    within(FUELS[id].stoichiometricRatio, air, 0.01)
    within(FUELS[id].latentHeat, latent, 0.16)
  })

  it('e85 lies between ethanol and gasoline', () => {
    const { e85 } = FUELS
    within(e85.heatingValue, 0.8 * 26.9e6 + 0.2 * 44.0e6, 0.03)
    within(e85.stoichiometricRatio, 0.8 * 9 + 0.2 * 14.6, 0.01)
    // Heat and moles add by mass: ethanol 840 kJ/kg and 46.07 g/mol beside 305 and 105.
    within(e85.latentHeat, 0.8 * 840e3 + 0.2 * 305e3, 0.16)
    within(e85.molarMass, 1 / (0.8 / 0.04607 + 0.2 / 0.105), 1e-9)
    expect(e85.molarMass).toBeGreaterThan(0.046)
    expect(e85.molarMass).toBeLessThan(0.06)
  })

  it('race gasoline has the heat of gasoline', () => {
    within(FUELS['race-gasoline'].heatingValue, 44.0e6, 0.03)
    within(FUELS['race-gasoline'].latentHeat, 305e3, 0.16)
  })

  // Balance of CHyOz + (1 + y/4 − z/2)(O2 + 3.773 N2), Heywood 1988, eq. 3.6, from memory.
  it.each([
    { id: 'methanol', carbon: 1, hydrogen: 4, oxygen: 1 },
    { id: 'pump-gasoline', carbon: 1, hydrogen: 1.87, oxygen: 0 },
  ] as const)('$id burns with the air its formula needs', ({ id, carbon, hydrogen, oxygen }) => {
    const needed = (carbon + hydrogen / 4 - oxygen / 2) * (31.998 + 3.773 * 28.16)
    const mass = 12.011 * carbon + 1.008 * hydrogen + 15.999 * oxygen
    within(FUELS[id].stoichiometricRatio, needed / mass, 0.015)
  })

  it.each(Object.keys(FUELS) as FuelId[])('%s names its sources', (id) => {
    expect(FUELS[id].id).toBe(id)
    expect(FUELS[id].sources.length).toBeGreaterThanOrEqual(4)
    expect(FUELS[id].sources.join(' ')).toMatch(/memory|read|common practice/)
  })

  it('orders knock numbers as the trade does', () => {
    const number = (id: FuelId) => FUELS[id].knockNumber
    expect(number('pump-gasoline')).toBeLessThan(number('e85'))
    expect(number('e85')).toBeLessThanOrEqual(number('methanol'))
    expect(number('methanol')).toBeLessThan(number('race-gasoline'))
  })
})

describe('combustionEfficiency', () => {
  it('falls with richness as oxygen does', () => {
    expect(combustionEfficiency(1)).toBeCloseTo(0.95, 12)
    // Rich of stoichiometric the oxygen limits the heat: efficiency falls about as λ.
    for (const lambda of [0.8, 0.85, 0.9]) within(combustionEfficiency(lambda), 0.95 * lambda, 0.06)
    expect(combustionEfficiency(0.8)).toBeLessThan(combustionEfficiency(0.9))
  })

  it('refuses mixtures that would not burn', () => {
    expect(() => combustionEfficiency(0.5)).toThrow(DomainError)
    expect(() => combustionEfficiency(Number.NaN)).toThrow(/lambda is NaN/)
  })
})

describe('heatPerAir', () => {
  it('is near the published heat of a stoichiometric charge', () => {
    // Heywood 1988, Table D.4, from memory: heating value per kg of stoichiometric mixture
    // 2.83 MJ/kg gasoline, 2.68 methanol.
    const perMixture = (id: FuelId, ratio: number) =>
      (heatPerAir(FUELS[id], 1) * ratio) / (ratio + 1)
    within(perMixture('pump-gasoline', 14.7), 0.95 * 2.83e6, 0.03)
    within(perMixture('methanol', 6.45), 0.95 * 2.68e6, 0.03)
  })
})

describe('laminarFlameSpeed', () => {
  it('is greatest on the rich side', () => {
    const gasoline = FUELS['pump-gasoline']
    expect(laminarFlameSpeed(gasoline, 1 / 1.21)).toBeCloseTo(0.305, 12)
    expect(laminarFlameSpeed(gasoline, 1)).toBeLessThan(0.305)
    expect(laminarFlameSpeed(FUELS.methanol, 1)).toBeGreaterThan(laminarFlameSpeed(gasoline, 1))
    expect(laminarFlameSpeed(gasoline, 1.2)).toBeGreaterThan(0.15)
  })
})

describe('heat of a kilogram of air', () => {
  // Heywood 1988, section 3.5: 44.0 MJ/kg over 14.6 kg of air, of which 95 % is set free; lean
  // by λ each kilogram of air has 1/λ of the fuel.
  it('is the heating value over the air that goes with it', () => {
    within(heatPerAir(FUELS['pump-gasoline'], 1), (0.95 * 44.0e6) / 14.6, 0.03)
    const lean = heatPerAir(FUELS['pump-gasoline'], 1.15) / combustionEfficiency(1.15)
    const even = heatPerAir(FUELS['pump-gasoline'], 1) / combustionEfficiency(1)
    expect(even / lean).toBeCloseTo(1.15, 12)
  })
})
