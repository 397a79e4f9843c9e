import { coarseLook, degreesAround } from './coarse-look.ts'
import { coverFan } from './fan-cover.ts'
import { markNearHull } from './load-hull.ts'
import { type LoadAt, loadsRead } from './main-load-at.ts'
import type { MainLoads } from './main-loads.ts'
import { type Moments, pickMoments, shareAt } from './moments.ts'
import { type RatioRange, ratiosOver, WHOLE_RANGE } from './ratio-range.ts'

/** Most points kept for an engine. */
export const MOST_POINTS = 64

/**
 * One moment at which the engine may be at its worst: gas and inertia load on one main, N, apart.
 * The load on the cap at scales g and m is capShare(g·gasX + m·inertiaX, g·gasY + m·inertiaY).
 */
export interface MarginPoint {
  main: number
  /** Index into the sweep's loads. */
  speedIndex: number
  /** Crank angle from firing top dead centre of the first cylinder, rad. */
  angle: number
  gasX: number
  gasY: number
  inertiaX: number
  inertiaY: number
  /**
   * 1 on the side of −y; −1 on the upper half of a split case, for which the four components are
   * already reversed, so that the cap's formula holds.
   */
  half: 1 | -1
}

/** The first look: ratios how far apart, and how near to the hull a moment must come to go on. */
const FIRST = { step: 1.5, near: 0.97 }
/** The close look: at more ratios, so that a narrower band loses nothing between them. */
const CLOSE = { step: 1.22, near: 0.99 }
/** Ratios at which the points kept must stand for all moments. */
const COVER_STEP = 1.16

/**
 * The few moments of all mains that decide the margins of an engine whose mains are held alike, at
 * every scale of gas and inertia within a range of their ratio.
 *
 * A margin that falls as pull and side push grow, along straight lines in (pull, side), is least
 * at a corner of the upper right hull of all moments' (pull, side). So do separation, which goes
 * as 1/pull, and grip and hold, (μ(clamp − c·pull) + R)/side with any μ, clamp, c and R while the
 * joint is closed: such a margin is t exactly where t·side + μ c·pull first reaches μ·clamp + R.
 * Both shares being homogeneous, the hull's corners depend on the scales of gas and inertia only
 * through their ratio. So the corners are found at a fan of ratios over the whole range, and as few
 * moments are kept as stand for all of them; see the cover for its tolerance. Worst pull and worst
 * side push come out within 0.1 % as a rule, as the tests show against full sweeps at random scales
 * (0.2 % at worst among some hundreds more); margins too, unless the joint is about to open, where 0.1 % of the pull is more than 0.1 % of what is
 * left of the clamp.
 *
 * @param loads - one set for each speed and load case; at every fifth degree is enough if `loadAt`
 *   gives the others
 * @param range - of the gas scale over the inertia scale; default all that sampling allows
 * @returns 1 to 64 points; 5 to 25 as a rule
 */
export function marginPoints(
  loads: readonly MainLoads[],
  range: RatioRange = WHOLE_RANGE,
  loadAt: LoadAt = loadsRead(loads),
): MarginPoint[] {
  const first = ratiosOver(range, FIRST.step)
  const looks = nearHull(coarseLook(loads, first, FIRST.near), first, FIRST.near)
  const close = ratiosOver(range, CLOSE.step)
  const moments = nearHull(degreesAround(loadAt, looks), close, CLOSE.near)
  const kept = coverFan(moments, ratiosOver(range, COVER_STEP), MOST_POINTS)
  return kept.map((at) => pointAt(moments, at))
}

/** Of some moments, those that come near the hull at some ratio. */
function nearHull(moments: Moments, ratios: readonly number[], near: number): Moments {
  const marks = new Uint8Array(moments.count)
  for (const ratio of ratios) markNearHull(moments, shareAt(moments, ratio), near, marks)
  const found: number[] = []
  for (let at = 0; at < moments.count; at++) if (marks[at] === 1) found.push(at)
  return pickMoments(moments, found)
}

function pointAt(moments: Moments, at: number): MarginPoint {
  const flat = moments.flat[at]!
  return {
    main: moments.main[at]!,
    speedIndex: Math.floor(flat / 720),
    angle: ((flat % 720) * Math.PI) / 180,
    gasX: moments.gasX[at]!,
    gasY: moments.gasY[at]!,
    inertiaX: moments.inertiaX[at]!,
    inertiaY: moments.inertiaY[at]!,
    half: moments.half[at] === -1 ? -1 : 1,
  }
}
