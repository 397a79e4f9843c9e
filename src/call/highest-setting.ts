/** One setting that was looked at. */
export interface Look<T> {
  readonly found: T
  readonly ok: boolean
  /** How much is asked over what there is, finite; near 1 at the edge. It only guides the search. */
  readonly demand: () => number
}

/** A step and what it asks. */
export interface Known {
  readonly step: number
  readonly demand: number
}

/** Every so many looks the rest of the way is halved, so that none can creep. */
const HALVED = 5

/**
 * The highest of some steps that is ok while the next is not.
 *
 * Looks next where a straight line through the last two steps comes to a demand of 1: demand goes
 * nearly as the load does, so two or three looks do where halving takes one for each doubling of
 * the steps.
 *
 * @param look - works out one step
 * @param bounds - the highest step that need not be looked at, and one above it that is not ok
 * @param known - two steps whose demand is known, or nearly so, to begin with
 * @returns what was found there; undefined when no step between the bounds is ok
 */
export function highestSetting<T>(
  look: (step: number) => Look<T>,
  bounds: { readonly above: number; readonly below: number },
  known: readonly [Known, Known],
): T | undefined {
  let [before, last] = known
  let { above: from, below: to } = bounds
  let highest: T | undefined
  for (let looks = 1; to - from > 1; looks++) {
    const halve = looks % HALVED === 0
    const edge = (halve ? undefined : edgeThrough(before, last)) ?? (from + to) / 2
    const step = Math.min(to - 1, Math.max(from + 1, Math.floor(edge)))
    const { found, ok, demand } = look(step)
    if (ok) {
      from = step
      highest = found
    } else to = step
    before = last
    last = { step, demand: demand() }
  }
  return highest
}

/** Where a straight line through both comes to 1; undefined where it does not rise. */
function edgeThrough(one: Known, other: Known): number | undefined {
  const rise = (other.demand - one.demand) / (other.step - one.step)
  return rise > 0 ? other.step + (1 - other.demand) / rise : undefined
}
