import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hullCorners } from '../../src/mechanics/load-hull.ts'
import { emptyMoments, shareAt } from '../../src/mechanics/moments.ts'

const force = fc.double({ min: -1e4, max: 1e4, noNaN: true })

// Corners that stand out by less than 0.02 % are left out; half again for the far side of a chord.
const SLIGHT = 3e-4

describe('hullCorners', () => {
  it('hold the greatest of every weighted sum of pull and side push', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(force, force), { minLength: 1, maxLength: 60 }),
        fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
        (loads, angle) => {
          const moments = emptyMoments(loads.length)
          loads.forEach(([x, y], at) => {
            moments.inertiaX[at] = x
            moments.inertiaY[at] = y
          })
          moments.count = loads.length
          const corners = hullCorners(moments, shareAt(moments, 1)).map((corner) => corner.at)
          const value = (at: number): number =>
            Math.cos(angle) * moments.pull[at]! + Math.sin(angle) * moments.side[at]!
          const most = Math.max(...loads.map((_, at) => value(at)))
          expect(corners.length).toBeGreaterThan(0)
          expect(Math.max(...corners.map(value))).toBeGreaterThanOrEqual(most - SLIGHT)
        },
      ),
    )
  })

  it('have weights for which each stands out', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(force, force), { minLength: 2, maxLength: 60 }), (loads) => {
        const moments = emptyMoments(loads.length)
        loads.forEach(([x, y], at) => {
          moments.inertiaX[at] = x
          moments.inertiaY[at] = y
        })
        moments.count = loads.length
        for (const { at, weight } of hullCorners(moments, shareAt(moments, 1))) {
          const value = (one: number): number =>
            weight.pull * moments.pull[one]! + weight.side * moments.side[one]!
          const most = Math.max(...loads.map((_, one) => value(one)))
          expect(value(at)).toBeGreaterThanOrEqual(most - SLIGHT)
        }
      }),
    )
  })
})
