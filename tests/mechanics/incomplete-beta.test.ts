import stdlibBetaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import fc from 'fast-check'
import { lgamma } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import {
  betaDensity,
  betaQuantile,
  incompleteBeta,
  logGamma,
} from '../../src/mechanics/incomplete-beta.ts'

const shape = fc.double({ min: 0.5, max: 60, noNaN: true })
const chance = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true })

describe('logGamma', () => {
  it('agrees with a general library', () => {
    for (const x of [0.05, 0.3, 0.5, 1, 1.7, 2, 3.5, 10, 80.25, 4000]) {
      const other = lgamma(x)
      // The library misses ln √π by 2e-12 itself; the exact values below are held closer.
      expect(Math.abs(logGamma(x) - other)).toBeLessThan(1e-11 * (1 + Math.abs(other)))
    }
  })

  it('gives factorials and the half-integer value √π', () => {
    expect(Math.exp(logGamma(6))).toBeCloseTo(120, 10)
    expect(logGamma(0.5)).toBeCloseTo(0.5 * Math.log(Math.PI), 13)
  })
})

describe('incompleteBeta', () => {
  it('is a polynomial in closed form for whole shapes', () => {
    for (const x of [0.01, 0.2, 0.5, 0.77, 0.99]) {
      expect(incompleteBeta(x, 1, 1)).toBeCloseTo(x, 13)
      expect(incompleteBeta(x, 5, 1)).toBeCloseTo(x ** 5, 13)
      expect(incompleteBeta(x, 1, 5)).toBeCloseTo(1 - (1 - x) ** 5, 13)
      // A beta with both shapes 3 is the smootherstep polynomial.
      expect(incompleteBeta(x, 3, 3)).toBeCloseTo(x ** 3 * (10 - 15 * x + 6 * x * x), 13)
    }
  })

  it('has the density for its slope', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        (x, alpha, beta) => {
          const step = 1e-5
          const rise = incompleteBeta(x + step, alpha, beta) - incompleteBeta(x - step, alpha, beta)
          // Central difference: error of order step² times the third derivative.
          expect(Math.abs(rise / (2 * step) - betaDensity(x, alpha, beta))).toBeLessThan(1e-5)
        },
      ),
    )
  })
})

describe('betaQuantile', () => {
  it('agrees with the quantiles of a general statistics library', () => {
    fc.assert(
      fc.property(chance, shape, shape, (p, alpha, beta) => {
        const other = stdlibBetaQuantile(p, alpha, beta)
        // The library's own result is good to about nine digits for some shapes.
        expect(Math.abs(betaQuantile(p, alpha, beta) - other)).toBeLessThan(1e-9)
      }),
      { numRuns: 300 },
    )
  })

  it('undoes the distribution', () => {
    // Below shape 1 the density has no bound and rounding x to a double already costs more.
    const bounded = fc.double({ min: 1, max: 60, noNaN: true })
    fc.assert(
      fc.property(chance, bounded, bounded, (p, alpha, beta) => {
        const back = incompleteBeta(betaQuantile(p, alpha, beta), alpha, beta)
        expect(Math.abs(back - p)).toBeLessThan(1e-11)
      }),
      { numRuns: 300 },
    )
  })

  it('reaches the ends and refuses what does not fit', () => {
    expect(betaQuantile(0, 2, 3)).toBe(0)
    expect(betaQuantile(1, 2, 3)).toBe(1)
    expect(() => betaQuantile(1.1, 2, 3)).toThrow(DomainError)
    expect(() => incompleteBeta(0.5, 0, 3)).toThrow(/alpha/)
    expect(() => incompleteBeta(0.5, 1, Number.NaN)).toThrow(/beta/)
  })
})
