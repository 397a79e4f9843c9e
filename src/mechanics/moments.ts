import { pullOf } from './cap-share.ts'
import type { LoadAt, LoadOnMain } from './main-load-at.ts'

/** Moments of the mains in flat arrays, for loops that do not allocate. Forces in N. */
export interface Moments {
  count: number
  main: Int8Array
  /** Index into the sweep's loads × 720 + degree. */
  flat: Int32Array
  /** 1, or −1 for the upper half of a split case, whose forces are reversed. */
  half: Int8Array
  gasX: Float64Array
  gasY: Float64Array
  inertiaX: Float64Array
  inertiaY: Float64Array
  /** Pull and side push at the ratio last looked at, as parts of the greatest of each. */
  pull: Float64Array
  side: Float64Array
}

/** The moments of greatest pull and of greatest side push, and how great they are. */
export interface Extremes {
  pullAt: number
  sideAt: number
  pull: number
  side: number
}

/** Loads up to this, N, count as none. */
const NOTHING = 1e-6

/** Room for moments. */
export function emptyMoments(room: number): Moments {
  // One buffer for all: small ones of their own are dear to collect.
  const all = new Float64Array(6 * room)
  const part = (index: number): Float64Array => all.subarray(index * room, (index + 1) * room)
  return {
    count: 0,
    main: new Int8Array(room),
    flat: new Int32Array(room),
    half: new Int8Array(room),
    gasX: part(0),
    gasY: part(1),
    inertiaX: part(2),
    inertiaY: part(3),
    pull: part(4),
    side: part(5),
  }
}

/** Add one moment; of a split case's upper half with `half` −1. */
export function addMoment(
  moments: Moments,
  loadAt: LoadAt,
  main: number,
  flat: number,
  half: number,
): void {
  loadAt((flat / 720) | 0, main, flat % 720, found)
  const at = moments.count++
  moments.main[at] = main
  moments.flat[at] = flat
  moments.half[at] = half
  moments.gasX[at] = half * found.gasX
  moments.gasY[at] = half * found.gasY
  moments.inertiaX[at] = half * found.inertiaX
  moments.inertiaY[at] = half * found.inertiaY
}

/** Of the moment last added; one for all, so that none is garbage. */
const found: LoadOnMain = { gasX: 0, gasY: 0, inertiaX: 0, inertiaY: 0 }

/** A copy of some of the moments. */
export function pickMoments(moments: Moments, among: readonly number[]): Moments {
  const few = emptyMoments(among.length)
  for (const at of among) {
    const to = few.count++
    few.main[to] = moments.main[at]!
    few.flat[to] = moments.flat[at]!
    few.half[to] = moments.half[at]!
    few.gasX[to] = moments.gasX[at]!
    few.gasY[to] = moments.gasY[at]!
    few.inertiaX[to] = moments.inertiaX[at]!
    few.inertiaY[to] = moments.inertiaY[at]!
  }
  return few
}

/**
 * Fill pull and side push with gas scaled by `ratio` and inertia by one, as parts of the greatest
 * of each (zeros where there is next to nothing).
 */
export function shareAt(moments: Moments, ratio: number): Extremes {
  const { count, gasX, gasY, inertiaX, inertiaY, pull, side } = moments
  const most: Extremes = { pullAt: 0, sideAt: 0, pull: 0, side: 0 }
  for (let at = 0; at < count; at++) {
    const across = Math.abs(ratio * gasX[at]! + inertiaX[at]!)
    const y = ratio * gasY[at]! + inertiaY[at]!
    const part = partNearly(across, y)
    const down = pullOf(across, y, part)
    const along = across * part
    pull[at] = down
    side[at] = along
    if (down > most.pull) {
      most.pull = down
      most.pullAt = at
    }
    if (along > most.side) {
      most.side = along
      most.sideAt = at
    }
  }
  const perPull = most.pull > NOTHING ? 1 / most.pull : 0
  const perSide = most.side > NOTHING ? 1 / most.side : 0
  for (let at = 0; at < count; at++) {
    pull[at] = pull[at]! * perPull
    side[at] = side[at]! * perSide
  }
  return most
}

/**
 * 1 − δ/π to within 4e-6, in a quarter of the time of the exact one: enough to choose moments by.
 * M. Abramowitz & I. Stegun, Handbook of Mathematical Functions, eq. 4.4.47 (from memory; the
 * tests hold it against the exact one).
 */
export function partNearly(across: number, y: number): number {
  const up = Math.abs(y)
  const steep = across > up
  const ratio = steep ? up / across : up > 0 ? across / up : 0
  const square = ratio * ratio
  const series =
    0.999866 +
    square * (-0.3302995 + square * (0.180141 + square * (-0.085133 + square * 0.0208351)))
  const turn = (ratio * series) / Math.PI
  const fromUp = steep ? 0.5 - turn : turn
  return y < 0 ? 1 - fromUp : fromUp
}
