import { describe, expect, it } from 'vitest'
import { lowDiscrepancy } from '../../src/mechanics/low-discrepancy.ts'
import { firstOrderEffect } from '../../src/mechanics/variance-share.ts'

describe('first-order effects of the Ishigami function', () => {
  // Source: Ishigami & Homma, "An importance quantification technique in uncertainty analysis
  // for computer models", ISUMA 1990; with a = 7, b = 0.1 first-order shares 0.3139, 0.4424, 0
  // (Saltelli et al., Global Sensitivity Analysis: The Primer, 2008; from memory, and worked
  // again from V₁ = ½(1 + bπ⁴/5)², V₂ = a²/8, V = a²/8 + bπ⁴/5 + b²π⁸/18 + ½).
  // Slices of finite width lose part of a curved effect: 0.02.
  it.each([
    [0, 0.3139],
    [1, 0.4424],
    [2, 0],
  ])('input %i has share %f', (input, share) => {
    const sample = lowDiscrepancy(8192, 3, 17).map((u) => Math.PI * (2 * u - 1))
    const count = sample.length / 3
    const results = Float64Array.from({ length: count }, (_, row) => {
      const [one, two, three] = sample.subarray(3 * row, 3 * row + 3)
      return Math.sin(one!) + 7 * Math.sin(two!) ** 2 + 0.1 * three! ** 4 * Math.sin(one!)
    })
    const column = Float64Array.from({ length: count }, (_, row) => sample[3 * row + input]!)
    expect(Math.abs(firstOrderEffect(column, results) - share)).toBeLessThan(0.02)
  })
})
