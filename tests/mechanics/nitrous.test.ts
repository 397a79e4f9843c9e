import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { combustionEfficiency, FUELS } from '../../src/mechanics/fuels.ts'
import { nitrousDose, nitrousFuel, nitrousHeat } from '../../src/mechanics/nitrous.ts'

const gasoline = FUELS['pump-gasoline']

describe('nitrous oxide', () => {
  it('burns fuel by the oxygen it holds', () => {
    // CH1.87 + 1.4675 O2, and N2O holds half an O2: 2.935 mol N2O for 13.90 g of fuel.
    const perKilogram = (12.011 + 1.87 * 1.008) / (2 * 1.4675 * 44.013)
    // 1.5 %: the air ratio 14.7 stands for a gasoline of a slightly different formula.
    expect(Math.abs(nitrousFuel(gasoline, 1) / perKilogram - 1)).toBeLessThan(0.015)
    expect(nitrousFuel(gasoline, 0.8)).toBeCloseTo(nitrousFuel(gasoline, 1) / 0.8, 12)
  })

  it('brings the heat of that fuel and of its own decomposition', () => {
    const fuel = nitrousFuel(gasoline, 0.88) * gasoline.heatingValue * combustionEfficiency(0.88)
    // Enthalpy of formation of N2O(g) 82.05 kJ/mol, NIST Chemistry WebBook, from memory.
    expect(nitrousHeat(gasoline, 0.88) - fuel).toBeCloseTo(82.05e3 / 0.044013, 3)
  })

  it('is dosed by power, cycles and efficiency', () => {
    const dose = nitrousDose(100e3, 400, 8, 0.4, 6.5e6)
    const cycles = (400 / (4 * Math.PI)) * 8
    expect(dose * cycles * 0.4 * 6.5e6).toBeCloseTo(100e3, 6)
    expect(() => nitrousDose(-1, 400, 8, 0.4, 6.5e6)).toThrow(DomainError)
  })
})
