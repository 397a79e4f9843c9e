import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hullCorners, markNearHull } from '../../src/mechanics/load-hull.ts'
import { type Extremes, emptyMoments, type Moments, shareAt } from '../../src/mechanics/moments.ts'

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

type Point = readonly [pull: number, side: number]

/** Moments that have these shares already, and which of them is greatest each way. */
function withShares(points: readonly Point[]): { moments: Moments; extremes: Extremes } {
  const moments = emptyMoments(points.length)
  moments.count = points.length
  moments.pull.set(points.map(([pull]) => pull))
  moments.side.set(points.map(([, side]) => side))
  const greatest = (of: Float64Array) => of.indexOf(Math.max(...of))
  const [pullAt, sideAt] = [greatest(moments.pull), greatest(moments.side)]
  return { moments, extremes: { pullAt, sideAt, pull: 1, side: 1 } }
}

// A quarter of an arc in five corners, with one point inside and one that hardly stands out.
const ARC: Point[] = [
  [1, 0],
  [0.9, 0.5],
  [0.7, 0.75],
  [0.4, 0.9],
  [0, 1],
  [0.5, 0.5],
  [0.8, 0.625 + 1e-4],
]

describe('a hull drawn by hand', () => {
  it('goes from the greatest pull to the greatest side push, corner by corner', () => {
    const { moments, extremes } = withShares(ARC)
    const corners = hullCorners(moments, extremes)
    expect(corners.map(({ at }) => at)).toEqual([0, 0, 1, 2, 3, 4, 4])
    expect(corners[1]?.weight).toEqual({ pull: 1, side: 0 })
    expect(corners.at(-1)?.weight).toEqual({ pull: 0, side: 1 })
    for (const { weight } of corners)
      expect(Math.hypot(weight.pull, weight.side)).toBeCloseTo(1, 12)
    // Between its edges from (1, 0) and to (0.7, 0.75): normals (0.5, 0.1) and (0.25, 0.2).
    const [one, two] = [Math.hypot(0.5, 0.1), Math.hypot(0.25, 0.2)]
    const sum = [0.5 / one + 0.25 / two, 0.1 / one + 0.2 / two] as const
    const { pull, side } = corners[2]?.weight ?? { pull: 0, side: 1 }
    expect(pull / side).toBeCloseTo(sum[0] / sum[1], 12)
  })

  it('is one corner where one moment is greatest both ways', () => {
    const { moments, extremes } = withShares([
      [0.5, 0.9],
      [1, 1],
      [0.9, 0.2],
    ])
    const corners = hullCorners(moments, extremes)
    expect(corners.map(({ at }) => at)).toEqual([1, 1, 1])
    const both = withShares([
      [1, 0.4],
      [1, 1],
    ])
    expect(hullCorners(both.moments, both.extremes).every(({ at }) => at === 1)).toBe(true)
    const alike = withShares([
      [1, 1],
      [0.3, 1],
    ])
    expect(hullCorners(alike.moments, alike.extremes).every(({ at }) => at === 0)).toBe(true)
  })

  it('holds every weighted sum of points strewn at random, and nothing inside', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(fc.array(fc.tuple(part, part), { minLength: 3, maxLength: 40 }), (strewn) => {
        const points: Point[] = [
          ...strewn.map(([a, b]): Point => [0.9 * a, 0.9 * b]),
          [1, 0],
          [0, 1],
        ]
        const { moments, extremes } = withShares(points)
        const corners = hullCorners(moments, extremes)
        for (let turn = 0; turn <= 40; turn++) {
          const [x, y] = [Math.cos((turn * Math.PI) / 80), Math.sin((turn * Math.PI) / 80)]
          const value = ([pull, side]: Point) => x * pull + y * side
          const held = Math.max(...corners.map(({ at }) => value(points[at] as Point)))
          expect(held).toBeGreaterThanOrEqual(Math.max(...points.map(value)) - SLIGHT)
        }
        const inner = corners.slice(2, -2)
        for (const { at, weight } of inner) {
          const value = ([pull, side]: Point) => weight.pull * pull + weight.side * side
          expect(value(points[at] as Point)).toBeGreaterThan(
            Math.max(...points.map(value)) - SLIGHT,
          )
        }
      }),
    )
  })
})

describe('markNearHull', () => {
  it('marks what is at least so far out along an edge, and nothing farther in', () => {
    // Points on the edges of the arc, drawn in towards the origin by t: near from 0.9 up.
    const share = fc.double({ min: 0.05, max: 0.95, noNaN: true })
    const drawn = fc.double({ min: 0.5, max: 1, noNaN: true })
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3 }), share, drawn, (edge, along, t) => {
        fc.pre(Math.abs(t - 0.9) > 1e-6)
        const [from, to] = [ARC[edge] as Point, ARC[edge + 1] as Point]
        const mix = (n: 0 | 1) => t * (from[n] + along * (to[n] - from[n]))
        const points: Point[] = [...ARC.slice(0, 5), [mix(0), mix(1)], [0.2, 0.2]]
        const { moments, extremes } = withShares(points)
        const marks = new Uint8Array(points.length)
        markNearHull(moments, extremes, 0.9, marks)
        expect(Array.from(marks)).toEqual([1, 1, 1, 1, 1, t > 0.9 ? 1 : 0, 0])
      }),
    )
  })

  it('marks what is near the greatest of either, and leaves marks that are there', () => {
    const { moments, extremes } = withShares([
      [1, 0.3],
      [0.3, 1],
      [0.95, 0],
      [0, 0.95],
      [0.1, 0.1],
    ])
    const marks = new Uint8Array([0, 0, 0, 0, 1])
    markNearHull(moments, extremes, 0.9, marks)
    expect(Array.from(marks)).toEqual([1, 1, 1, 1, 1])
    const strict = new Uint8Array(5)
    markNearHull(moments, extremes, 0.96, strict)
    expect(Array.from(strict)).toEqual([1, 1, 0, 0, 0])
  })
})
