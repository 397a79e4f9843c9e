import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { combinedUncertainty, guardBand, meanUncertainty } from '../../src/mechanics/guard-band.ts'

const limits = { low: 10, high: 12 }

describe('guardBand', () => {
  it('measures to the nearer limit and takes the uncertainty off on either side', () => {
    expect(guardBand(10.5, limits, 0.2)).toEqual({
      inside: 0.5,
      surelyInside: 0.3,
      surelyOutside: -0.7,
      nearer: 'low',
    })
    expect(guardBand(12.5, limits, 0.25)).toEqual({
      inside: -0.5,
      surelyInside: -0.75,
      surelyOutside: 0.25,
      nearer: 'high',
    })
  })

  it('holds for every true value that the gauge allows', () => {
    const value = fc.double({ min: 8, max: 14, noNaN: true })
    const share = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(value, fc.double({ min: 0, max: 1, noNaN: true }), share, (read, u, error) => {
        const { surelyInside, surelyOutside } = guardBand(read, limits, u)
        const truth = read + error * u
        if (surelyInside > 1e-12) expect(truth >= 10 && truth <= 12).toBe(true)
        if (surelyOutside > 1e-12) expect(truth < 10 || truth > 12).toBe(true)
        expect(surelyInside > 0 && surelyOutside > 0).toBe(false)
      }),
    )
  })

  it('serves a limit on one side only', () => {
    const band = guardBand(3, { low: Number.NEGATIVE_INFINITY, high: 5 }, 0.5)
    expect(band).toEqual({ inside: 2, surelyInside: 1.5, surelyOutside: -2.5, nearer: 'high' })
  })

  it('names what does not fit', () => {
    expect(() => guardBand(Number.NaN, limits, 0)).toThrow(/value/)
    expect(() => guardBand(1, { low: 2, high: 1 }, 0)).toThrow(/limits\.low/)
    expect(() => guardBand(1, limits, -1)).toThrow(/uncertainty/)
  })
})

describe('meanUncertainty', () => {
  // By hand, off by 5 as read, of which 3 changes from reading to reading: 4 stays whatever is read.
  it('averages out what changes, and keeps what the readings share', () => {
    const gauge = { size: 5, repeat: 3 }
    expect(meanUncertainty(gauge, 1)).toBe(5)
    expect(meanUncertainty(gauge, 9)).toBeCloseTo(Math.sqrt(17), 12)
    expect(meanUncertainty(gauge, 1e12)).toBeCloseTo(4, 9)
  })

  it('takes a gauge that repeats no better than it is set as all repeat', () => {
    expect(meanUncertainty({ size: 2, repeat: 3 }, 9)).toBe(1)
  })

  it('names what does not fit', () => {
    expect(() => meanUncertainty({ size: 1, repeat: 1 }, 0)).toThrow(/readings/)
    expect(() => meanUncertainty({ size: -1, repeat: 1 }, 1)).toThrow(/size/)
    expect(() => meanUncertainty({ size: 1, repeat: Number.NaN }, 1)).toThrow(/repeat/)
  })
})

describe('combinedUncertainty', () => {
  it('adds in squares, each reading as often as it counts', () => {
    expect(combinedUncertainty([{ uncertainty: 3 }, { uncertainty: 4 }])).toBe(5)
    expect(combinedUncertainty([{ uncertainty: 2, sensitivity: 2 }, { uncertainty: 3 }])).toBe(5)
    expect(combinedUncertainty([])).toBe(0)
  })
})
