import type { Extremes, Moments } from './moments.ts'

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
const ROUGH = 5e-3

/**
 * Corners of the upper right hull of the moments' (pull, side) at the ratio last looked at, from
 * greatest pull to greatest side push, without those that stand out by less than 0.02 % of the
 * greatest from the line between their neighbours (quickhull).
 *
 * @returns at least one corner; the first and last also stand for pull only and side push only
 */
export function hullCorners(moments: Moments, extremes: Extremes): Corner[] {
  const hull = hullOf(moments, extremes)
  return hull.flatMap((at, index) => cornersAt(moments, hull, at, index))
}

/** Indices of the corners of {@link hullCorners}. */
function hullOf(moments: Moments, { pullAt, sideAt }: Extremes, slight: number = SLIGHT): number[] {
  const { pull, side, count } = moments
  if (side[sideAt]! <= side[pullAt]!) return [pullAt]
  if (pull[pullAt]! <= pull[sideAt]!) return [sideAt]
  const hull = [pullAt]
  const all: number[] = []
  for (let at = 0; at < count; at++) all.push(at)
  between(moments, all, pullAt, sideAt, slight, hull)
  return [...hull, sideAt]
}

/**
 * Mark the moments on, beyond or near a rough hull at the ratio last looked at.
 *
 * @param near - part of the way from nothing to the hull that counts as near
 * @param marks - set to 1 for each moment that is near; left alone for the others
 */
export function markNearHull(
  moments: Moments,
  extremes: Extremes,
  near: number,
  marks: Uint8Array,
): void {
  const { pull, side, count } = moments
  const leastPull = near * pull[extremes.pullAt]!
  const leastSide = near * side[extremes.sideAt]!
  for (let at = 0; at < count; at++) {
    if (pull[at]! >= leastPull || side[at]! >= leastSide) marks[at] = 1
  }
  const hull = hullOf(moments, extremes, ROUGH)
  for (let edge = 1; edge < hull.length; edge++) {
    const from = hull[edge - 1]!
    const out = normal(moments, from, hull[edge]!)
    const least = near * (out.pull * pull[from]! + out.side * side[from]!)
    for (let at = 0; at < count; at++) {
      if (out.pull * pull[at]! + out.side * side[at]! >= least) marks[at] = 1
    }
  }
}

/** Add the corners between two, in order: the one farthest out splits the rest in two. */
function between(
  moments: Moments,
  among: readonly number[],
  first: number,
  last: number,
  slight: number,
  hull: number[],
): void {
  const { pull, side } = moments
  const out = normal(moments, first, last)
  const line = out.pull * pull[first]! + out.side * side[first]!
  const beyond: number[] = []
  let far = first
  let most = slight
  for (let index = 0; index < among.length; index++) {
    const at = among[index]!
    const stands = out.pull * pull[at]! + out.side * side[at]! - line
    if (stands <= 0) continue
    beyond.push(at)
    if (stands > most) {
      most = stands
      far = at
    }
  }
  if (far === first) return
  between(moments, beyond, first, far, slight, hull)
  hull.push(far)
  between(moments, beyond, far, last, slight, hull)
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
