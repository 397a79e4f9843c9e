import { describe, expect, it } from 'vitest'
import {
  airDensity,
  airPressureShare,
  compressorOutlet,
  compressorPower,
  evaporativeCooling,
  intercoolerOutlet,
} from '../../src/mechanics/charge.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { FUELS } from '../../src/mechanics/fuels.ts'

describe('compressorOutlet', () => {
  it('does nothing at a pressure ratio of one', () => {
    expect(compressorOutlet(298, 1, 0.7)).toBe(298)
  })

  it('heats more with less efficiency', () => {
    expect(compressorOutlet(298, 2, 0.6)).toBeGreaterThan(compressorOutlet(298, 2, 0.8))
    // Isentropic: T2/T1 = 2^(2/7).
    expect(compressorOutlet(300, 2, 1) / 300).toBeCloseTo(2 ** (2 / 7), 12)
  })

  it('refuses a vacuum and an efficiency above one', () => {
    expect(() => compressorOutlet(298, 0.9, 0.7)).toThrow(DomainError)
    expect(() => compressorOutlet(298, 2, 1.1)).toThrow(/efficiency/)
  })
})

describe('intercoolerOutlet', () => {
  it('goes from no cooling to the coolant', () => {
    expect(intercoolerOutlet(400, 300, 0)).toBe(400)
    expect(intercoolerOutlet(400, 300, 1)).toBe(300)
    expect(intercoolerOutlet(400, 300, 0.7)).toBeCloseTo(330, 12)
    expect(() => intercoolerOutlet(400, 300, 1.2)).toThrow(DomainError)
  })
})

describe('compressorPower', () => {
  it('is enthalpy rise over drive efficiency', () => {
    expect(compressorPower(0.5, 80, 1)).toBeCloseTo(0.5 * 1005 * 80, 9)
    expect(compressorPower(0.5, 80, 0.8)).toBeCloseTo(compressorPower(0.5, 80, 1) / 0.8, 9)
  })
})

describe('fuel in the charge', () => {
  it('cools by the heat it takes', () => {
    // Heywood 1988, section 6.2.1, from memory: full evaporation of a stoichiometric charge cools
    // by about 19 K for isooctane and 128 K for methanol at constant pressure.
    const whole = (id: 'pump-gasoline' | 'methanol') =>
      evaporativeCooling(FUELS[id], 1) / FUELS[id].coolingShare
    expect(Math.abs(whole('pump-gasoline') - 19)).toBeLessThan(6)
    // The book's mixture carries its own vapour's heat capacity, which is left out here.
    expect(whole('methanol')).toBeGreaterThan(128)
    expect(whole('methanol')).toBeLessThan(190)
    expect(evaporativeCooling(FUELS.methanol, 0.8)).toBeGreaterThan(
      evaporativeCooling(FUELS['pump-gasoline'], 0.88),
    )
  })

  it('displaces some of the air', () => {
    // Heywood 1988, Fig. 6-3, from memory: isooctane vapour takes below 2 %, methanol about 12 %
    // of the manifold pressure once all is vapour.
    expect(airPressureShare(FUELS['pump-gasoline'], 1)).toBeGreaterThan(0.98)
    const whole = { ...FUELS.methanol, coolingShare: 1 }
    expect(Math.abs(airPressureShare(whole, 1) - 0.88)).toBeLessThan(0.01)
  })
})

describe('airDensity', () => {
  it('is 1.225 kg/m³ on a standard day', () => {
    // U.S. Standard Atmosphere 1976; half of the last digit.
    expect(Math.abs(airDensity(101325, 288.15) - 1.225)).toBeLessThanOrEqual(0.0005)
  })
})
