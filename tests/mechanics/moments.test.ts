import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capShare, pressedPart } from '../../src/mechanics/cap-share.ts'
import { emptyMoments, partNearly, shareAt } from '../../src/mechanics/moments.ts'

const force = fc.double({ min: -1e5, max: 1e5, noNaN: true })

describe('partNearly', () => {
  it('is the exact part to within the 1e-5 rad of its source', () => {
    fc.assert(
      fc.property(force, force, (x, y) => {
        const across = Math.abs(x)
        expect(Math.abs(partNearly(across, y) - pressedPart(across, y))).toBeLessThan(4e-6)
      }),
      { numRuns: 2000 },
    )
  })

  it('has no part of nothing and all of a load straight down', () => {
    expect(partNearly(0, 0)).toBe(0)
    expect(partNearly(0, 5)).toBe(0)
    expect(partNearly(0, -5)).toBe(1)
  })
})

describe('shareAt', () => {
  it('fills shares of the greatest, with gas scaled by the ratio', () => {
    const moments = emptyMoments(2)
    moments.count = 2
    moments.gasY.set([-1000, -200])
    moments.inertiaX.set([0, 800])
    const most = shareAt(moments, 2)
    expect(most.pullAt).toBe(0)
    expect(most.pull).toBeCloseTo(2000, 9)
    expect(most.sideAt).toBe(1)
    expect(moments.side[1]).toBe(1)
    // Tolerance: the nearly exact part.
    expect(moments.pull[1]! * 2000).toBeCloseTo(capShare(800, -400).pull, 1)
  })

  it('has zero shares where nothing pulls', () => {
    const moments = emptyMoments(1)
    moments.count = 1
    expect(shareAt(moments, 1).pull).toBe(0)
    expect(moments.pull[0]).toBe(0)
  })
})
