import stdlibTriangularQuantile from '@stdlib/stats-base-dists-triangular-quantile'
import fc from 'fast-check'
import { mean as meanOf, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import {
  pertMoments,
  pertQuantile,
  type Spread,
  triangularMoments,
  triangularQuantile,
  truncatedNormalQuantile,
  uniformQuantile,
} from '../../src/mechanics/distributions.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { normalQuantile } from '../../src/mechanics/normal-distribution.ts'

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
      [triangularQuantile, triangularMoments],
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
    expect(triangularMoments(certain)).toEqual({ mean: 5, deviation: 0 })
  })

  it('refuse figures out of order', () => {
    for (const wrong of [
      { low: 2, likely: 1, high: 3 },
      { low: 2, likely: 4, high: 3 },
      { low: 4, likely: 4, high: 3 },
      { low: Number.NaN, likely: 1, high: 3 },
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

describe('truncatedNormalQuantile', () => {
  const cut = { mean: 10, deviation: 2, low: 9, high: 16 }

  it('stays inside the cut and rises', () => {
    const sample = evenSample((u) => truncatedNormalQuantile(u, cut), 500)
    expect(Math.min(...sample)).toBeGreaterThanOrEqual(9)
    expect(Math.max(...sample)).toBeLessThanOrEqual(16)
    expect(sample.every((value, place) => place === 0 || value > sample[place - 1]!)).toBe(true)
  })

  // Source: closed form, Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1,
  // eq. 13.134: mean = μ + σ (φ(a) − φ(b)) / (Φ(b) − Φ(a)); here a = −½, b = 3:
  // φ = 0.3520653, 0.0044318; Φ = 0.3085375, 0.9986501. Sampling leaves 1e-3.
  it('has the mean of the closed form', () => {
    const closed = 10 + (2 * (0.3520653 - 0.0044318)) / (0.9986501 - 0.3085375)
    const sample = evenSample((u) => truncatedNormalQuantile(u, cut), 4000)
    expect(Math.abs(meanOf(sample) - closed)).toBeLessThan(1e-3)
  })

  it('becomes the plain normal when the cuts are far off', () => {
    const far = { mean: 1, deviation: 3, low: -1e6, high: 1e6 }
    for (const u of [0.001, 0.2, 0.5, 0.93]) {
      expect(truncatedNormalQuantile(u, far)).toBeCloseTo(1 + 3 * normalQuantile(u), 10)
    }
  })

  it('keeps its digits in a far tail, where it nears an exponential', () => {
    // Beyond 7 deviations the tail falls as exp(−7 x − x²/2): median near ln 2 / 7.07.
    const tail = { mean: 0, deviation: 1, low: 7, high: 40 }
    const excess = truncatedNormalQuantile(0.5, tail) - 7
    expect(Math.abs(excess - Math.log(2) / 7.13)).toBeLessThan(0.002)
    const mirror = { mean: 0, deviation: 1, low: -40, high: -7 }
    expect(truncatedNormalQuantile(0.5, mirror)).toBeCloseTo(-7 - excess, 12)
  })

  it('refuses cuts out of order or out of reach', () => {
    expect(() => truncatedNormalQuantile(0.5, { ...cut, high: 9 })).toThrow(DomainError)
    expect(() => truncatedNormalQuantile(0.5, { ...cut, low: 30, high: 31 })).toThrow(/low/)
    expect(() => truncatedNormalQuantile(0.5, { ...cut, deviation: 0 })).toThrow(/deviation/)
  })
})

describe('uniformQuantile', () => {
  it('is a straight line from low to high', () => {
    expect(uniformQuantile(0, 2, 6)).toBe(2)
    expect(uniformQuantile(0.25, 2, 6)).toBe(3)
    expect(uniformQuantile(1, 2, 6)).toBe(6)
    expect(() => uniformQuantile(0.5, 6, 2)).toThrow(DomainError)
  })
})
