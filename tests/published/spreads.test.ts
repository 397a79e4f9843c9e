import { describe, expect, it } from 'vitest'
import {
  pertMoments,
  pertQuantile,
  pertShapes,
  triangularQuantile,
} from '../../src/mechanics/distributions.ts'

const figures = { low: 10, likely: 20, high: 60 }

describe('PERT(10, 20, 60)', () => {
  // Source: mean (a + 4m + b)/6, Malcolm et al., Operations Research 7 (1959); shapes, deviation
  // and quantiles from SciPy's beta distribution with those shapes. Half of the last digit.
  it('has the published mean and the deviation of the scaled beta', () => {
    expect(pertShapes(figures).alpha).toBeCloseTo(1.8, 12)
    expect(pertShapes(figures).beta).toBeCloseTo(4.2, 12)
    expect(pertMoments(figures).mean).toBeCloseTo(25, 12)
    expect(Math.abs(pertMoments(figures).deviation - 8.6603)).toBeLessThanOrEqual(5e-5)
  })

  it.each([
    [0.1, 14.4951],
    [0.5, 23.8336],
    [0.9, 37.2667],
  ])('is not above its quantile with chance %f', (chance, quantile) => {
    expect(Math.abs(pertQuantile(chance, figures) - quantile)).toBeLessThanOrEqual(5e-5)
  })
})

describe('triangular(10, 20, 60)', () => {
  it.each([
    [0.1, 17.0711],
    [0.5, 28.3772],
    [0.9, 45.8579],
  ])('is not above its quantile with chance %f', (chance, quantile) => {
    expect(Math.abs(triangularQuantile(chance, figures) - quantile)).toBeLessThanOrEqual(5e-5)
  })
})
