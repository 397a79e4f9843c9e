import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { lowDiscrepancy, MOST_DIMENSIONS } from '../../src/mechanics/low-discrepancy.ts'

const seeds = fc.integer({ min: 0, max: 4294967295 })

/** How many of the cells of a grid, cut columns × rows over two columns of points, are hit. */
function cellsHit(points: Float64Array, width: number, one: number, other: number, cut: number) {
  const count = points.length / width
  const hit = new Set<number>()
  for (let row = 0; row < count; row++) {
    const across = Math.floor(points[row * width + one]! * cut)
    const up = Math.floor((points[row * width + other]! * count) / cut)
    hit.add(across * count + up)
  }
  return hit.size
}

describe('lowDiscrepancy', () => {
  it('puts one of 2^k points in each of 2^k slices of every column, whatever the seed', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 0, max: 9 }), (seed, power) => {
        const count = 2 ** power
        const points = lowDiscrepancy(count, MOST_DIMENSIONS, seed)
        for (let column = 0; column < MOST_DIMENSIONS; column++) {
          const slices = new Set<number>()
          for (let row = 0; row < count; row++) {
            slices.add(Math.floor(points[row * MOST_DIMENSIONS + column]! * count))
          }
          expect(slices.size).toBe(count)
        }
      }),
      { numRuns: 30 },
    )
  })

  it('fills every elementary box of the first two columns once', () => {
    // The first two columns of a Sobol sequence are a (0, m, 2)-net, scrambled or not.
    fc.assert(
      fc.property(seeds, (seed) => {
        const points = lowDiscrepancy(256, 5, seed)
        for (const cut of [1, 2, 4, 8, 16, 32, 64, 128, 256]) {
          expect(cellsHit(points, 5, 0, 1, cut)).toBe(256)
        }
      }),
      { numRuns: 20 },
    )
  })

  it('keeps every number strictly between 0 and 1', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const points = lowDiscrepancy(333, 7, seed)
        expect(points.length).toBe(333 * 7)
        expect(points.every((value) => value > 0 && value < 1)).toBe(true)
      }),
      { numRuns: 20 },
    )
  })

  it('integrates a product over 20 columns far closer than chance would', () => {
    // ∏ (1 + (u − ½)) integrates to 1 exactly; its variance is (13/12)^20 − 1 = 3.96, so 1024
    // chance points would miss by 0.062 in standard error. A tenth of that is asked.
    const points = lowDiscrepancy(1024, 20, 11)
    let sum = 0
    for (let row = 0; row < 1024; row++) {
      let product = 1
      for (let column = 0; column < 20; column++) product *= 0.5 + points[row * 20 + column]!
      sum += product
    }
    expect(Math.abs(sum / 1024 - 1)).toBeLessThan(0.0062 * 4)
  })

  it('leaves columns unrelated to each other', () => {
    const points = lowDiscrepancy(1024, MOST_DIMENSIONS, 5)
    for (let one = 0; one < MOST_DIMENSIONS; one++) {
      for (let other = 0; other < one; other++) {
        let products = 0
        for (let row = 0; row < 1024; row++) {
          const from = row * MOST_DIMENSIONS
          products += (points[from + one]! - 0.5) * (points[from + other]! - 0.5)
        }
        expect(Math.abs((12 * products) / 1024)).toBeLessThan(0.1)
      }
    }
  })

  it('repeats for a seed, differs between seeds, and grows without moving old points', () => {
    const whole = lowDiscrepancy(64, 4, 9)
    expect(lowDiscrepancy(64, 4, 9)).toEqual(whole)
    expect(lowDiscrepancy(16, 4, 9)).toEqual(whole.slice(0, 64))
    expect(lowDiscrepancy(64, 4, 10)).not.toEqual(whole)
  })

  it('names what does not fit', () => {
    expect(() => lowDiscrepancy(0, 2, 1)).toThrow(/count/)
    expect(() => lowDiscrepancy(8, 26, 1)).toThrow(/dimensions/)
    expect(() => lowDiscrepancy(8, 2, 1.5)).toThrow(DomainError)
  })
})
