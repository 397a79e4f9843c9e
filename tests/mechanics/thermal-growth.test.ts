import { describe, expect, it } from 'vitest'
import { EXPANSION, expansionOf, thermalGrowth } from '../../src/mechanics/thermal-growth.ts'

describe('thermalGrowth', () => {
  it('is odd in the rise and in proportion to the length', () => {
    expect(thermalGrowth(0.4, 1e-5, -50)).toBeCloseTo(-thermalGrowth(0.4, 1e-5, 50), 15)
    expect(thermalGrowth(0.8, 1e-5, 50)).toBeCloseTo(2 * thermalGrowth(0.4, 1e-5, 50), 15)
  })

  it('names what does not fit', () => {
    expect(() => thermalGrowth(1, 1, 10)).toThrow(/perKelvin/)
    expect(() => thermalGrowth(1, 1e-5, 1000)).toThrow(/rise/)
  })
})

describe('EXPANSION', () => {
  it('gives every material a source and a coefficient that a metal can have', () => {
    for (const [material, { perKelvin, source }] of Object.entries(EXPANSION)) {
      expect(perKelvin).toBeGreaterThan(9e-6)
      expect(perKelvin).toBeLessThan(25e-6)
      expect(source.length).toBeGreaterThan(10)
      expect(expansionOf(material as keyof typeof EXPANSION)).toBe(perKelvin)
    }
  })
})
