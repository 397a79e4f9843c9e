import { describe, expect, it } from 'vitest'
import { standardAtmosphere } from '../../src/mechanics/atmosphere.ts'

describe('standardAtmosphere', () => {
  it('is in hydrostatic balance: dp/dh = −ρ g', () => {
    for (const height of [0, 1000, 3000, 8000]) {
      const up = standardAtmosphere(height + 1).pressure
      const down = standardAtmosphere(height - 1).pressure
      const { density } = standardAtmosphere(height)
      expect(Math.abs((up - down) / 2 / (-density * 9.80665) - 1)).toBeLessThan(1e-4)
    }
  })
})
