import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pertQuantile } from '../../src/mechanics/distributions.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { pertSampler } from '../../src/mechanics/pert-table.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })

describe('pertSampler', () => {
  it('stays within its stated error of the exact quantile', () => {
    fc.assert(
      fc.property(share, fc.double({ min: 0, max: 1, noNaN: true }), (likely, chance) => {
        const spread = { low: 0, likely, high: 1 }
        const error = Math.abs(pertSampler(spread)(chance) - pertQuantile(chance, spread))
        expect(error).toBeLessThan(chance > 0.001 && chance < 0.999 ? 2e-5 : 2e-4)
      }),
      { numRuns: 500 },
    )
  })

  it('stays within it in both far tails', () => {
    for (const likely of [0, 0.1, 0.5, 0.9, 1]) {
      const spread = { low: 0, likely, high: 1 }
      const quick = pertSampler(spread)
      for (let power = -12; power < -2; power += 0.05) {
        for (const chance of [10 ** power, 1 - 10 ** power]) {
          expect(Math.abs(quick(chance) - pertQuantile(chance, spread))).toBeLessThan(2e-4)
        }
      }
    }
  })

  it('rises with the chance, from low to high', () => {
    fc.assert(
      fc.property(share, (likely) => {
        const quick = pertSampler({ low: 0, likely, high: 1 })
        expect([quick(0), quick(1)]).toEqual([0, 1])
        for (let place = 1; place <= 1000; place++) {
          // Up to the error allowed where both halves of the table meet.
          expect(quick(place / 1000)).toBeGreaterThan(quick((place - 1) / 1000) - 1e-6)
        }
      }),
      { numRuns: 20 },
    )
  })

  it('scales with the spread, takes no width for certain, and refuses disorder', () => {
    const unit = pertSampler({ low: 0, likely: 0.25, high: 1 })
    const scaled = pertSampler({ low: 10, likely: 20, high: 50 })
    expect(scaled(0.3)).toBeCloseTo(10 + 40 * unit(0.3), 10)
    expect(pertSampler({ low: 4, likely: 4, high: 4 })(0.9)).toBe(4)
    expect(() => pertSampler({ low: 3, likely: 2, high: 5 })).toThrow(DomainError)
  })
})
