import { describe, expect, it } from 'vitest'
import { ratiosOver, WHOLE_RANGE } from '../../src/mechanics/ratio-range.ts'

describe('ratiosOver', () => {
  it('takes both ends and steps evenly, no farther than asked', () => {
    const ratios = ratiosOver({ low: 0.5, high: 2 }, 1.5)
    expect(ratios[0]).toBe(0.5)
    expect(ratios.at(-1)).toBeCloseTo(2, 12)
    // 4^(1/4), the first even step below 1.5.
    for (let index = 1; index < ratios.length; index++) {
      expect(ratios[index]! / ratios[index - 1]!).toBeCloseTo(Math.SQRT2, 12)
    }
  })

  it('is one ratio where the range is one', () => {
    expect(ratiosOver({ low: 1.1, high: 1.1 }, 1.2)).toEqual([1.1])
  })

  it('covers every scale of gas over every scale of inertia', () => {
    expect(WHOLE_RANGE.low * WHOLE_RANGE.high).toBeCloseTo(1, 12)
    expect(WHOLE_RANGE.high).toBeCloseTo(1.6 / 0.6, 12)
  })
})
