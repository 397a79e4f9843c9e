import { describe, expect, it } from 'vitest'
import {
  equivalentDiameter,
  type SurfaceFinish,
  sizeFactor,
  surfaceFactor,
} from '../../src/mechanics/marin.ts'

describe('surface factor', () => {
  // Source: Shigley's Mechanical Engineering Design, 9th ed., Table 6–2 (from memory): ka = a Sut^b
  // in MPa. Worked by hand with logarithms at 500 and 1000 MPa; tolerance half of the last digit.
  it.each([
    ['ground', 1000e6, 0.8783],
    ['machined', 500e6, 0.8688],
    ['machined', 1000e6, 0.7231],
    ['hot-rolled', 500e6, 0.6658],
    ['hot-rolled', 1000e6, 0.4047],
    ['as-forged', 500e6, 0.5612],
    ['as-forged', 1000e6, 0.2816],
  ] as const)('%s at %d Pa is %d', (finish, ultimate, factor) => {
    expect(Math.abs(surfaceFactor(ultimate, finish) - factor)).toBeLessThanOrEqual(6e-5)
  })

  it.each<SurfaceFinish>(['ground', 'machined', 'hot-rolled', 'as-forged'])(
    '%s costs a stronger steel more',
    (finish) => {
      expect(surfaceFactor(1400e6, finish)).toBeLessThan(surfaceFactor(900e6, finish))
    },
  )
})

describe('size factor', () => {
  // Source: Shigley, 9th ed., eq 6–20 (from memory): 1.24 d^−0.107 from 2.79 to 51 mm, 1.51 d^−0.157
  // to 254 mm. Its Example 6–4 has kb 0.858 for 32 mm by the inch form of the same line.
  it('is 0.858 at 32 mm', () => {
    expect(Math.abs(sizeFactor(0.032) / 0.858 - 1)).toBeLessThan(0.003)
  })

  it('is 0.733 at 100 mm and 0.633 at its end', () => {
    expect(Math.abs(sizeFactor(0.1) - 0.7328)).toBeLessThan(6e-5)
    expect(Math.abs(sizeFactor(0.254) - 0.633)).toBeLessThan(6e-5)
  })

  it('has two lines that meet at 51 mm', () => {
    expect(Math.abs(sizeFactor(0.051) / sizeFactor(0.0511) - 1)).toBeLessThan(1e-3)
    expect(sizeFactor(0.051)).toBeCloseTo(1.24 * 51 ** -0.107, 12)
  })

  it('is one for small bars', () => {
    for (const diameter of [0.001, 0.00279, 0.005, 0.007]) expect(sizeFactor(diameter)).toBe(1)
    expect(sizeFactor(0.008)).toBeLessThan(1)
  })

  it('is refused outside 0 to 254 mm', () => {
    for (const wrong of [0, -0.01, 0.2541, Number.NaN]) {
      expect(() => sizeFactor(wrong)).toThrow(/diameter/)
    }
  })
})

describe('equivalent diameter', () => {
  // Source: Shigley, 9th ed., eq 6–25: 0.808 √(h b); 20 × 45 mm is 24.24 mm.
  it('of 20 × 45 mm is 24.24 mm, whichever way it lies', () => {
    expect(equivalentDiameter(0.02, 0.045)).toBeCloseTo(0.02424, 9)
    expect(equivalentDiameter(0.045, 0.02)).toBe(equivalentDiameter(0.02, 0.045))
  })
})
