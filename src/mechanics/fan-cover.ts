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
  const cells = cellsOf(pickMoments(moments, among), weights)
  let kept = among.map((_, at) => at)
  for (const same of SAME) {
    kept = greedy(among.length, cells, same)
    if (kept.length <= most) break
  }
  return kept.slice(0, most).map((at) => among[at]!)
}

/** One cell for each ratio and corner: every moment's weighted share as a part of the greatest. */
function cellsOf(few: Moments, weights: readonly Weight[][]): Float64Array[] {
  const { count, pull, side } = few
  return RATIOS.flatMap((ratio, row) => {
    shareAt(few, ratio)
    return weights[row]!.map((weight) => {
      const cell = new Float64Array(count)
      let most = 0
      for (let at = 0; at < count; at++) {
        const value = weight.pull * pull[at]! + weight.side * side[at]!
        cell[at] = value
        if (value > most) most = value
      }
      for (let at = 0; at < count; at++) cell[at] = most > 0 ? cell[at]! / most : 1
      return cell
    })
  })
}

/** The moment that stands for most cells, then for most of the rest, until none is left. */
function greedy(count: number, cells: readonly Float64Array[], same: number): number[] {
  const gains = new Int32Array(count)
  const note = (cell: Float64Array, change: number): void => {
    for (let at = 0; at < count; at++) if (cell[at]! >= same) gains[at] = gains[at]! + change
  }
  for (const cell of cells) note(cell, 1)
  const kept: number[] = []
  let open = cells
  while (open.length > 0) {
    const best = gains.indexOf(Math.max(...gains))
    kept.push(best)
    const left: Float64Array[] = []
    for (const cell of open) {
      if (cell[best]! >= same) note(cell, -1)
      else left.push(cell)
    }
    open = left
  }
  return kept
}
