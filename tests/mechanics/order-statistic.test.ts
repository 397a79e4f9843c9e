import fc from 'fast-check'
import { quantileSorted } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { nthSmallest } from '../../src/mechanics/order-statistic.ts'

// Adding 0 makes −0 into 0: a sort may put the two in any order.
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0)
const values = fc.array(number, { minLength: 1 })

describe('nthSmallest', () => {
  it('is what stands at its place among all sorted, one after the other', () => {
    fc.assert(
      fc.property(values, fc.nat(), fc.nat(), (list, one, other) => {
        const [first, second] = [one, other].map((n) => n % list.length).sort((a, b) => a - b)
        const sorted = list.toSorted((a, b) => a - b)
        const kept = Float64Array.from(list)
        expect(nthSmallest(kept, first!)).toBe(sorted[first!])
        expect(nthSmallest(kept, second!, first!)).toBe(sorted[second!])
      }),
    )
  })

  it('agrees with a published library on a median of many equals', () => {
    const list = Float64Array.from({ length: 101 }, (_, index) => (index * 37) % 5)
    const sorted = [...list].sort((a, b) => a - b)
    expect(nthSmallest(list.slice(), 50)).toBe(quantileSorted(sorted, 0.5))
  })
})
