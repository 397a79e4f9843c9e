import { hullCorners, type Weight } from './load-hull.ts'
import { type Moments, pickMoments, shareAt } from './moments.ts'

/** Least and greatest factor by which gas and inertia loads are scaled in sampling. */
export const SCALE_RANGE = { low: 0.6, high: 1.6 } as const

/** Ratios of gas to inertia scale, evenly spaced in the logarithm over the whole range. */
export const RATIOS = Array.from(
  { length: 41 },
  (_, index) => (SCALE_RANGE.low / SCALE_RANGE.high) ** (1 - index / 20),
)

/** Tolerances of a cover, tried in turn until the moments are few enough. */
const SAME = [0.9995, 0.9992, 0.9985, 0.997, 0.994, 0.98]

/**
 * Of some moments, as few as stand for all of them: at every ratio of the fan and for the weights
 * of every corner of the hull there, one that is kept comes to within 0.05 % of that corner's
 * weighted share. Where that takes too many, the tolerance is widened step by step.
 *
 * @param moments - among which to choose; at least one
 * @param most - at most this many are kept
 * @returns indices into the moments, at least one
 */
export function coverFan(moments: Moments, most: number): number[] {
  const corners = new Set<number>()
  const weights = RATIOS.map((ratio) => {
    const hull = hullCorners(moments, shareAt(moments, ratio))
    for (const { at } of hull) corners.add(at)
    return hull.map((corner) => corner.weight)
  })
  const among = [...corners]
  const values = valuesOf(pickMoments(moments, among), weights)
  let kept = among.map((_, at) => at)
  for (const same of SAME) {
    kept = greedy(among.length, values, same)
    if (kept.length <= most) break
  }
  return kept.slice(0, most).map((at) => among[at]!)
}

/**
 * One row for each ratio and corner of the hull there: every moment's weighted share as a part of
 * the greatest. Rows one after another in one array.
 */
function valuesOf(few: Moments, weights: readonly Weight[][]): Float64Array {
  const { count, pull, side } = few
  const values = new Float64Array(count * weights.reduce((sum, row) => sum + row.length, 0))
  let start = 0
  for (let row = 0; row < RATIOS.length; row++) {
    shareAt(few, RATIOS[row]!)
    for (const weight of weights[row]!) {
      let most = 0
      for (let at = 0; at < count; at++) {
        const value = weight.pull * pull[at]! + weight.side * side[at]!
        values[start + at] = value
        if (value > most) most = value
      }
      // Where nothing pulls, every moment stands for every other.
      const per = most > 0 ? 1 / most : 0
      for (let at = 0; at < count; at++)
        values[start + at] = most > 0 ? values[start + at]! * per : 1
      start += count
    }
  }
  return values
}

/** The moment that stands for most rows, then for most of the rest, until none is left. */
function greedy(count: number, values: Float64Array, same: number): number[] {
  const gains = new Int32Array(count)
  let open: number[] = []
  for (let start = 0; start < values.length; start += count) {
    open.push(start)
    note(gains, values, start, same, 1)
  }
  const kept: number[] = []
  while (open.length > 0) {
    const best = gains.indexOf(Math.max(...gains))
    kept.push(best)
    const left: number[] = []
    for (const start of open) {
      if (values[start + best]! >= same) note(gains, values, start, same, -1)
      else left.push(start)
    }
    open = left
  }
  return kept
}

/** Count a row, or uncount it, for every moment that stands for it. */
function note(
  gains: Int32Array,
  values: Float64Array,
  start: number,
  same: number,
  change: number,
): void {
  for (let at = 0; at < gains.length; at++) {
    if (values[start + at]! >= same) gains[at] = gains[at]! + change
  }
}
