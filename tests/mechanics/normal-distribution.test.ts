import fc from 'fast-check'
import { erf } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { normalChance, normalQuantile } from '../../src/mechanics/normal-distribution.ts'

describe('normalChance', () => {
  it('agrees with the error function of a general library', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
        const other = 0.5 * (1 + erf(z / Math.SQRT2))
        expect(Math.abs(normalChance(z) - other)).toBeLessThan(1e-14)
      }),
    )
  })

  it('joins series and tail without a step', () => {
    for (const z of [-3, 3]) {
      const jump = normalChance(z + 1e-9) - normalChance(z - 1e-9)
      expect(Math.abs(jump - 2e-9 * 0.004431848411938)).toBeLessThan(1e-14)
    }
  })
})

describe('normalQuantile', () => {
  // Source: SciPy 1.17.1, scipy.special.ndtri, printed to 16 digits.
  it.each([
    [1e-300, -37.0470962993612],
    [1e-20, -9.26234008979841],
    [1e-10, -6.361340902404056],
    [0.001, -3.090232306167813],
    [0.025, -1.9599639845400545],
    [0.1, -1.2815515655446004],
    [0.75, 0.6744897501960817],
    [0.999999, 4.753424308817087],
  ])('finds the quantile of %f', (chance, quantile) => {
    expect(Math.abs(normalQuantile(chance) / quantile - 1)).toBeLessThan(1e-11)
  })

  it('undoes the distribution and is odd about one half', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 0.5, noNaN: true }), (chance) => {
        const z = normalQuantile(chance)
        expect(Math.abs(normalChance(z) / chance - 1)).toBeLessThan(1e-12)
        // The mirrored chance 1 − p keeps fewer digits of a small p.
        expect(Math.abs(normalQuantile(1 - chance) + z)).toBeLessThan(1e-16 / chance + 1e-12)
      }),
    )
  })

  it('refuses 0, 1 and what is no number', () => {
    for (const chance of [0, 1, -0.1, Number.NaN]) {
      expect(() => normalQuantile(chance)).toThrow(DomainError)
    }
  })
})
