import { beyondChord, type Extremes, type Moments } from './moments.ts'

/** Weights of pull and side push, each in units of its greatest; together of length one. */
export interface Weight {
  pull: number
  side: number
}

/** A corner of the hull and the weights for which it stands out most from its neighbours. */
export interface Corner {
  at: number
  weight: Weight
}

/** In units of the greatest pull and side push. */
const SLIGHT = 2e-4

/**
 * Corners of the upper right hull of the moments' (pull, side) at the ratio last looked at, from
 * greatest pull to greatest side push (monotone chain), without those that stand out by less than
 * 0.02 % of the greatest.
 *
 * @returns at least one corner; the first and last also stand for pull only and side push only
 */
export function hullCorners(moments: Moments, extremes: Extremes): Corner[] {
  const { pull, side } = moments
  const able: number[] = []
  beyondChord(moments, extremes, 1, (at) => able.push(at))
  able.sort((a, b) => pull[b]! - pull[a]! || side[b]! - side[a]!)
  const hull: number[] = []
  for (const at of able) {
    if (hull.length > 0 && side[at]! <= side[hull.at(-1)!]!) continue
    while (hull.length > 1 && !turnsOutward(moments, hull.at(-2)!, hull.at(-1)!, at)) hull.pop()
    hull.push(at)
  }
  const few = simpler(moments, hull)
  return few.flatMap((at, index) => cornersAt(moments, few, at, index))
}

/**
 * The hull without the corners that stand out from the line between those kept by less than
 * {@link SLIGHT}: split at the corner farthest from the chord, again and again.
 */
function simpler(moments: Moments, hull: readonly number[]): number[] {
  const first = hull[0]!
  const last = hull.at(-1)!
  if (hull.length < 3) return [...hull]
  const { pull, side } = normal(moments, first, last)
  const out = (at: number): number =>
    pull * (moments.pull[at]! - moments.pull[first]!) +
    side * (moments.side[at]! - moments.side[first]!)
  const far = hull.reduce((most, at, index) => (out(at) > out(hull[most]!) ? index : most), 0)
  if (out(hull[far]!) < SLIGHT) return [first, last]
  const before = simpler(moments, hull.slice(0, far + 1))
  return [...before, ...simpler(moments, hull.slice(far)).slice(1)]
}

/** Whether the middle of three, in order of falling pull and rising side push, stands out. */
function turnsOutward({ pull, side }: Moments, from: number, middle: number, to: number): boolean {
  const cross =
    (pull[middle]! - pull[from]!) * (side[to]! - side[from]!) -
    (side[middle]! - side[from]!) * (pull[to]! - pull[from]!)
  return cross > 0
}

/** A corner between the normals of its two edges; at the ends also along the axis. */
function cornersAt(moments: Moments, hull: readonly number[], at: number, index: number): Corner[] {
  const before = hull[index - 1]
  const after = hull[index + 1]
  const into = before === undefined ? { pull: 1, side: 0 } : normal(moments, before, at)
  const out = after === undefined ? { pull: 0, side: 1 } : normal(moments, at, after)
  const corners = [{ at, weight: unit(into.pull + out.pull, into.side + out.side) }]
  if (before === undefined) corners.push({ at, weight: into })
  if (after === undefined) corners.push({ at, weight: out })
  return corners
}

function normal({ pull, side }: Moments, from: number, to: number): Weight {
  return unit(side[to]! - side[from]!, pull[from]! - pull[to]!)
}

function unit(pull: number, side: number): Weight {
  const length = Math.hypot(pull, side)
  return { pull: pull / length, side: side / length }
}
