import { describe, expect, it } from 'vitest'
import { straightness } from '../../src/mechanics/straightness.ts'

describe('least-squares line', () => {
  // Source: Anscombe, "Graphs in statistical analysis", American Statistician 27 (1973) 17–21, first
  // set: y = 3.0 + 0.5 x, residual sum of squares 13.75 (data from memory; the printed results
  // confirm them). Half of the printed digit.
  it('agrees with a published fit and its residuals', () => {
    const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
    const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]
    const fit = straightness(
      x.map((value) => value / 10),
      y.map((value) => value / 1000),
    )
    expect(Math.abs(fit.intercept * 1000 - 3)).toBeLessThanOrEqual(0.005)
    expect(Math.abs(fit.slope * 100 - 0.5)).toBeLessThanOrEqual(0.0005)
    const squares = fit.residuals.reduce((sum, r) => sum + (1000 * r) ** 2, 0)
    expect(Math.abs(squares - 13.75)).toBeLessThanOrEqual(0.02)
  })
})
