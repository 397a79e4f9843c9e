import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { latinHypercube } from '../../src/mechanics/latin-hypercube.ts'

describe('latinHypercube', () => {
  it('holds one point in every slice of every column', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 0, max: 4294967295 }),
        (count, width, seed) => {
          const points = latinHypercube(count, width, seed)
          for (let column = 0; column < width; column++) {
            const slices = new Set<number>()
            for (let row = 0; row < count; row++) {
              slices.add(Math.floor(points[row * width + column]! * count))
            }
            expect(slices.size).toBe(count)
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  it('gives every order of three slices about equally often', () => {
    const orders = new Map<string, number>()
    for (let seed = 0; seed < 6000; seed++) {
      const order = Array.from(latinHypercube(3, 1, seed, 'middle'), (u) => Math.floor(3 * u))
      orders.set(order.join(), (orders.get(order.join()) ?? 0) + 1)
    }
    expect(orders.size).toBe(6)
    // 1000 each; chi-squared with 5 degrees of freedom passes 20.5 once in a thousand.
    const statistic = [...orders.values()].reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0)
    expect(statistic).toBeLessThan(20.5)
  })

  it('has the exact mean of one half when points sit at the middles', () => {
    const points = latinHypercube(64, 1, 4, 'middle')
    expect(points.reduce((sum, u) => sum + u, 0) / 64).toBe(0.5)
  })

  it('repeats for a seed and refuses what does not fit', () => {
    expect(latinHypercube(20, 3, 2)).toEqual(latinHypercube(20, 3, 2))
    expect(latinHypercube(20, 3, 2)).not.toEqual(latinHypercube(20, 3, 3))
    expect(() => latinHypercube(2.5, 3, 2)).toThrow(DomainError)
    expect(() => latinHypercube(4, 0, 2)).toThrow(/dimensions/)
  })
})
