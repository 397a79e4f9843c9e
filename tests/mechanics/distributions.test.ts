import stdlibTriangularQuantile from '@stdlib/stats-base-dists-triangular-quantile'
import fc from 'fast-check'
import { mean as meanOf, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import {
  pertMoments,
  pertQuantile,
  type Spread,
  triangularQuantile,
} from '../../src/mechanics/distributions.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'

const chance = fc.double({ min: 0, max: 1, noNaN: true })
const spread: fc.Arbitrary<Spread> = fc
  .tuple(
    fc.double({ min: -1000, max: 1000, noNaN: true }),
    fc.double({ min: 0.01, max: 500, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  )
  .map(([low, width, share]) => {
    const high = low + width
    return { low, likely: Math.min(high, Math.max(low, low + share * width)), high }
  })

/** Midpoints of n equal slices of chance, through a quantile: a sample without noise. */
function evenSample(quantile: (chance: number) => number, count: number): number[] {
  return Array.from({ length: count }, (_, place) => quantile((place + 0.5) / count))
}

describe('the bounded spreads', () => {
  it('stay within low and high and rise with the chance', () => {
    fc.assert(
      fc.property(spread, chance, chance, (figures, one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)]
        for (const quantile of [pertQuantile, triangularQuantile]) {
          const [from, to] = [quantile(less, figures), quantile(more, figures)]
          expect(from).toBeGreaterThanOrEqual(figures.low - 1e-9)
          expect(to).toBeLessThanOrEqual(figures.high + 1e-9)
          expect(to).toBeGreaterThanOrEqual(from - 1e-9)
        }
      }),
    )
  })

  it('have samples whose mean and deviation are the stated moments', () => {
    const figures = { low: 3, likely: 4, high: 11 }
    for (const [quantile, moments] of [
      [pertQuantile, pertMoments],
      // Closed forms of the triangular: mean (l + m + h)/3, variance (l² + m² + h² − lm − lh − mh)/18.
      [
        triangularQuantile,
        () => ({ mean: 6, deviation: Math.sqrt((9 + 16 + 121 - 12 - 33 - 44) / 18) }),
      ],
    ] as const) {
      const sample = evenSample((u) => quantile(u, figures), 4000)
      // Slices of 1/4000 leave out a little of the tails: 0.1 % of the width.
      expect(Math.abs(meanOf(sample) - moments(figures).mean)).toBeLessThan(0.008)
      expect(Math.abs(standardDeviation(sample) - moments(figures).deviation)).toBeLessThan(0.008)
    }
  })

  it('take a figure without width for certain', () => {
    const certain = { low: 5, likely: 5, high: 5 }
    expect(pertQuantile(0.3, certain)).toBe(5)
    expect(triangularQuantile(0.3, certain)).toBe(5)
    expect(pertMoments(certain)).toEqual({ mean: 5, deviation: 0 })
  })

  it('refuse figures out of order', () => {
    for (const wrong of [
      { low: 2, likely: 1, high: 3 },
      { low: 2, likely: 4, high: 3 },
      { low: 4, likely: 4, high: 3 },
      { low: Number.NaN, likely: 1, high: 3 },
      { low: -Infinity, likely: 1, high: 3 },
      { low: 1, likely: 2, high: Infinity },
      { low: 3, likely: 3, high: 2 },
    ]) {
      expect(() => pertQuantile(0.5, wrong)).toThrow(DomainError)
      expect(() => triangularQuantile(0.5, wrong)).toThrow(DomainError)
      expect(() => pertMoments(wrong)).toThrow(DomainError)
    }
  })
})

describe('triangularQuantile', () => {
  it('agrees with a general statistics library', () => {
    fc.assert(
      fc.property(spread, chance, (figures, u) => {
        const other = stdlibTriangularQuantile(u, figures.low, figures.high, figures.likely)
        expect(Math.abs(triangularQuantile(u, figures) - other)).toBeLessThan(1e-9)
      }),
    )
  })
})
