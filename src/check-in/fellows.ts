import { toSi } from '../../shared/units.ts'
import type { ShopRules } from '../shop-sheet/shop-rules.ts'
import { median } from './median.ts'

/** A value that stands apart from its fellows. */
export interface Apart {
  /** Place among the values, from 0. */
  readonly place: number
  readonly value: number
  /** The middle of all values. */
  readonly middle: number
  /** How far any value may stand from the middle before it is asked about. */
  readonly allowed: number
}

/**
 * Values that stand plainly apart from the rest: farther from the median than the rule allows, and
 * farther than a multiple of the median distance, so that among values that scatter anyway none is
 * picked out. Median and median distance, because a mean would follow the odd one.
 *
 * @param values - one for each main, m; undefined where nothing was measured
 * @returns the odd ones, in order; none when fewer are measured than can tell
 * Source: common practice, no published source.
 */
export function apartFromFellows(
  values: readonly (number | undefined)[],
  { away, spreads, least, unit }: ShopRules['fellows'],
): Apart[] {
  const given = values.filter((value) => value !== undefined)
  if (given.length < least) return []
  const middle = median(given)
  const usual = median(given.map((value) => Math.abs(value - middle)))
  const allowed = Math.max(toSi(away, unit), spreads * usual)
  // The last bits of a conversion from inches must not decide.
  const nothing = 1e-9
  return values.flatMap((value, place) =>
    value !== undefined && Math.abs(value - middle) > allowed + nothing
      ? [{ place, value, middle, allowed }]
      : [],
  )
}
