import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capShare, pressedPart } from '../../src/mechanics/cap-share.ts'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { loadsRead } from '../../src/mechanics/main-load-at.ts'
import { mainLoads } from '../../src/mechanics/main-loads.ts'
import {
  addMoment,
  emptyMoments,
  partNearly,
  pickMoments,
  shareAt,
} from '../../src/mechanics/moments.ts'
import { engine } from '../support/layout-loads.ts'

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

describe('shareAt, gas and inertia together', () => {
  it('adds them as forces: what one takes away the other must give', () => {
    fc.assert(
      fc.property(
        force,
        force,
        force,
        force,
        fc.double({ min: 0, max: 2 }),
        (gx, gy, ix, iy, r) => {
          fc.pre(Number.isFinite(r))
          const moments = emptyMoments(3)
          moments.count = 2
          moments.gasX.set([gx, 0])
          moments.gasY.set([gy, 0])
          moments.inertiaX.set([ix, 0])
          moments.inertiaY.set([iy, 0])
          const exact = capShare(r * gx + ix, r * gy + iy)
          const most = shareAt(moments, r)
          // Tolerance: the nearly exact part, 4e-6 of forces up to 3e5 N.
          expect(Math.abs(most.pull - Math.max(0, exact.pull))).toBeLessThan(3)
          expect(Math.abs(most.side - Math.abs(exact.side))).toBeLessThan(3)
          expect([most.pullAt, most.sideAt]).toEqual([0, 0])
        },
      ),
    )
  })
})

describe('addMoment and pickMoments', () => {
  const layout = CRANK_LAYOUTS['inline-4']
  const slow = mainLoads(engine(layout, { speed: 200 }))
  const fast = mainLoads(engine(layout, { speed: 700 }))

  it('take a moment from its load, its degree and its main', () => {
    const loadAt = loadsRead([slow, fast])
    const moments = emptyMoments(3)
    addMoment(moments, loadAt, 2, 40, 1)
    addMoment(moments, loadAt, 1, 720 + 371, 1)
    addMoment(moments, loadAt, 1, 720 + 371, -1)
    expect(moments.count).toBe(3)
    expect(Array.from(moments.main)).toEqual([2, 1, 1])
    expect(Array.from(moments.flat)).toEqual([40, 1091, 1091])
    const parts = ['gasX', 'gasY', 'inertiaX', 'inertiaY'] as const
    for (const part of parts) {
      expect(moments[part][0]).toBe(slow[part][2]?.[40])
      expect(moments[part][1]).toBe(fast[part][1]?.[371])
      // The upper half of a split case feels the same force the other way round.
      expect(moments[part][2]).toBe(-(fast[part][1]?.[371] ?? Number.NaN))
    }
    const few = pickMoments(moments, [2, 0])
    expect(few.count).toBe(2)
    expect([Array.from(few.main), Array.from(few.half)]).toEqual([
      [1, 2],
      [-1, 1],
    ])
    for (const part of parts) expect(few[part][0]).toBe(moments[part][2])
    expect(few.gasY[1]).toBe(moments.gasY[0])
  })
})
