import { coverFan, RATIOS } from './fan-cover.ts'
import type { MainLoads } from './main-loads.ts'
import {
  addMoment,
  beyondChord,
  emptyMoments,
  type Moments,
  pickMoments,
  shareAt,
} from './moments.ts'

export { SCALE_RANGE } from './fan-cover.ts'

/** Most points kept for one main. */
export const MOST_POINTS = 64

/**
 * One moment at which a main may be at its worst: gas and inertia load, N, apart. The load on the
 * cap at scales g and m is capShare(g·gasX + m·inertiaX, g·gasY + m·inertiaY).
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

/** Every this many degrees in the first look at a cycle; odd. */
const STRIDE = 5
/** The first look: at which ratios, and how near to the hull a moment must come to go on. */
const FIRST = { ratios: RATIOS.filter((_, index) => index % 8 === 0), near: 0.95 }
/** The close look: at more ratios, so that a narrower band loses nothing between them. */
const CLOSE = { ratios: RATIOS.filter((_, index) => index % 4 === 0), near: 0.96 }

/**
 * The few moments that decide a main's margins at every scale of gas and inertia.
 *
 * A margin that falls as pull and side push grow, along straight lines in (pull, side), is least
 * at a corner of the upper right hull of all moments' (pull, side). So do separation, which goes
 * as 1/pull, and grip and hold, (μ(clamp − c·pull) + R)/side with any μ, clamp, c and R while the
 * joint is closed: such a margin is t exactly where t·side + μ c·pull first reaches μ·clamp + R.
 * Both shares being homogeneous, the hull's corners depend on the scales of gas and inertia only
 * through their ratio. So the corners are found at a fan of ratios over the whole range, and as few
 * moments are kept as stand for all of them; see the cover for its tolerance. Worst pull and worst
 * side push come out within 0.1 %, as the tests show against full sweeps at random scales; margins
 * too, unless the joint is about to open, where 0.1 % of the pull is more than 0.1 % of what is
 * left of the clamp.
 *
 * @param loads - one set for each speed and load case
 * @param main - index of the main
 * @returns 1 to 64 points; 5 to 25 as a rule
 */
export function marginPoints(loads: readonly MainLoads[], main: number): MarginPoint[] {
  const moments = closeLook(loads, main, firstLook(loads, main))
  return coverFan(moments, MOST_POINTS).map((at) => pointAt(moments, at, main))
}

/**
 * Of the points of all mains, those that decide for the engine as a whole, where every main is
 * held alike: enough to find the worst main's margins at every scale.
 *
 * @param points - margin points of every main
 * @returns 1 to 64 of them
 */
export function decidingPoints(points: readonly MarginPoint[]): MarginPoint[] {
  const moments = emptyMoments(points.length)
  for (const point of points) {
    const at = moments.count++
    moments.gasX[at] = point.gasX
    moments.gasY[at] = point.gasY
    moments.inertiaX[at] = point.inertiaX
    moments.inertiaY[at] = point.inertiaY
  }
  return coverFan(moments, MOST_POINTS).map((at) => points[at]!)
}

/** Every fifth degree of every load, and of a split case both halves. */
function firstLook(loads: readonly MainLoads[], main: number): Moments {
  const halves = loads[0]!.splitCase ? 2 : 1
  const moments = emptyMoments((halves * loads.length * 720) / STRIDE)
  for (let flat = 0; flat < loads.length * 720; flat += STRIDE) {
    addMoment(moments, loads, main, flat, 1)
    if (halves === 2) addMoment(moments, loads, main, flat, -1)
  }
  return moments
}

/** Indices of the moments that come near the hull at some ratio of a look. */
function nearHull(moments: Moments, look: typeof FIRST): number[] {
  const near = new Uint8Array(moments.count)
  for (const ratio of look.ratios) {
    beyondChord(moments, shareAt(moments, ratio), look.near, (at) => {
      near[at] = 1
    })
  }
  const found: number[] = []
  for (let at = 0; at < moments.count; at++) if (near[at] === 1) found.push(at)
  return found
}

/** Every degree around those moments of the first look that come near the hull. */
function closeLook(loads: readonly MainLoads[], main: number, first: Moments): Moments {
  const near = nearHull(first, FIRST)
  const moments = emptyMoments(STRIDE * near.length)
  const reach = (STRIDE - 1) / 2
  for (const at of near) {
    const flat = first.flat[at]!
    const degree = flat % 720
    for (let step = -reach; step <= reach; step++) {
      const index = flat - degree + ((degree + step + 720) % 720)
      addMoment(moments, loads, main, index, first.half[at]!)
    }
  }
  return pickMoments(moments, nearHull(moments, CLOSE))
}

function pointAt(moments: Moments, at: number, main: number): MarginPoint {
  const flat = moments.flat[at]!
  return {
    main,
    speedIndex: Math.floor(flat / 720),
    angle: ((flat % 720) * Math.PI) / 180,
    gasX: moments.gasX[at]!,
    gasY: moments.gasY[at]!,
    inertiaX: moments.inertiaX[at]!,
    inertiaY: moments.inertiaY[at]!,
    half: moments.half[at] === -1 ? -1 : 1,
  }
}
