import { hullCorners, type Weight } from './load-hull.ts'
import { type Moments, shareAt } from './moments.ts'

/** Tolerances of a cover, tried in turn until the moments are few enough. */
const SAME = [0.9995, 0.9992, 0.9985, 0.997, 0.994, 0.98]

/**
 * Of some moments, a few that stand for all of them: at every ratio of the fan and for the weights
 * of every corner of the hull there, one that is kept comes to within 0.05 % of that corner's
 * weighted share. Where that takes too many, the tolerance is widened step by step.
 *
 * @param moments - among which to choose; at least one
 * @param ratios - of gas to inertia scale
 * @param most - at most this many are kept
 * @returns indices into the moments, at least one
 */
export function coverFan(moments: Moments, ratios: readonly number[], most: number): number[] {
  let kept: number[] = []
  for (const same of SAME) {
    kept = []
    for (const ratio of ratios) {
      for (const { at, weight } of hullCorners(moments, shareAt(moments, ratio))) {
        if (!stoodFor(moments, kept, weight, same * weighted(moments, at, weight))) kept.push(at)
      }
    }
    if (kept.length <= most) break
  }
  return kept.slice(0, most)
}

/** Whether one of those kept comes up to a weighted share. */
function stoodFor(
  moments: Moments,
  kept: readonly number[],
  weight: Weight,
  least: number,
): boolean {
  // From the last, which was kept for a ratio or a corner close by.
  for (let index = kept.length - 1; index >= 0; index--) {
    if (weighted(moments, kept[index]!, weight) >= least) return true
  }
  return false
}

function weighted({ pull, side }: Moments, at: number, weight: Weight): number {
  return weight.pull * pull[at]! + weight.side * side[at]!
}
