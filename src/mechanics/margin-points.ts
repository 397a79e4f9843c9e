import { pressedPart, pullOf } from './cap-share.ts'
import type { MainLoads } from './main-loads.ts'

/** Least and greatest factor by which gas and inertia loads are scaled in sampling. */
export const SCALE_RANGE = { low: 0.6, high: 1.6 } as const

/** Most points kept for one main. */
export const MOST_POINTS = 24

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

/** Every this many degrees in the first look at a cycle. */
const STRIDE = 3
/** A moment is looked at closely if it comes this near to the greatest in the first look. */
const NEAR = 0.96
/** A point stands for another if its value is at least this part of the other's. */
const SAME = 0.9997

/** Ratios of gas to inertia scale, evenly spaced in the logarithm over the whole range. */
const RATIOS = spread(9, SCALE_RANGE.low / SCALE_RANGE.high, SCALE_RANGE.high / SCALE_RANGE.low)
/** Those of the first look. */
const FIRST_RATIOS = [RATIOS[0]!, RATIOS[4]!, RATIOS[8]!]
/** Weights of pull against side push, each in units of its greatest: from pull only to side only. */
const WEIGHTS = Array.from({ length: 9 }, (_, step) => ({
  pull: Math.cos((step * Math.PI) / 16),
  side: Math.sin((step * Math.PI) / 16),
}))

function spread(count: number, low: number, high: number): number[] {
  const step = Math.log(high / low) / (count - 1)
  return Array.from({ length: count }, (_, index) => low * Math.exp(index * step))
}

/** Moments of one main: loads apart, and where each is in load × 720 + degree, by half. */
interface Moments {
  count: number
  flat: Int32Array
  half: Int8Array
  gasX: Float64Array
  gasY: Float64Array
  inertiaX: Float64Array
  inertiaY: Float64Array
  /** At the ratio last looked at, as parts of the greatest. */
  pull: Float64Array
  side: Float64Array
}

/**
 * The few moments that decide a main's margins at every scale of gas and inertia.
 *
 * A margin that falls as pull and side push grow, along straight lines in (pull, side), is least
 * at a corner of the upper right hull of all moments' (pull, side). So do separation, which goes
 * as 1/pull, and grip and hold, (μ(clamp − c·pull) + R)/side with any μ, clamp, c and R while the
 * joint is closed: such a margin is t exactly where t·side + μ c·pull first reaches μ·clamp + R.
 * Both shares being homogeneous, the hull's corners depend on the scales of gas and inertia only
 * through their ratio. So the greatest of a·pull + b·side is found for a fan of ratios and
 * weights over the whole range, and a moment is kept where none kept before comes within 0.03 % of
 * it. Between the ratios and weights of the fan the loss stays below 0.1 %; the tests show it
 * against full sweeps at random scales.
 *
 * @param loads - one set for each speed and load case
 * @param main - index of the main
 * @returns 1 to 24 points; in practice 4 to 12
 */
export function marginPoints(loads: readonly MainLoads[], main: number): MarginPoint[] {
  const moments = closeLook(loads, main, firstLook(loads, main))
  const kept: number[] = []
  for (const ratio of RATIOS) {
    share(moments, ratio)
    for (const weight of WEIGHTS) keepGreatest(moments, weight, kept)
  }
  if (kept.length === 0) kept.push(0)
  return kept.map((at) => pointAt(moments, at, main))
}

/** Keep the moment of greatest weighted share, unless a kept one is as good. */
function keepGreatest(
  { count, pull, side }: Moments,
  weight: { pull: number; side: number },
  kept: number[],
): void {
  const at = greatest(count, pull, side, weight.pull, weight.side)
  const enough = SAME * (weight.pull * pull[at]! + weight.side * side[at]!)
  if (enough === 0 || kept.length === MOST_POINTS) return
  for (const other of kept) {
    if (weight.pull * pull[other]! + weight.side * side[other]! >= enough) return
  }
  kept.push(at)
}

function greatest(
  count: number,
  pull: Float64Array,
  side: Float64Array,
  pullWeight: number,
  sideWeight: number,
): number {
  let most = -1
  let where = 0
  for (let at = 0; at < count; at++) {
    const value = pullWeight * pull[at]! + sideWeight * side[at]!
    if (value > most) {
      most = value
      where = at
    }
  }
  return where
}

/** Fill pull and side at one ratio of gas to inertia, as parts of the greatest of each. */
function share(moments: Moments, ratio: number): void {
  const { count, gasX, gasY, inertiaX, inertiaY, pull, side } = moments
  let mostPull = 0
  let mostSide = 0
  for (let at = 0; at < count; at++) {
    const across = Math.abs(ratio * gasX[at]! + inertiaX[at]!)
    const y = ratio * gasY[at]! + inertiaY[at]!
    const part = pressedPart(across, y)
    const down = pullOf(across, y, part)
    const along = across * part
    pull[at] = down
    side[at] = along
    if (down > mostPull) mostPull = down
    if (along > mostSide) mostSide = along
  }
  const perPull = mostPull > 0 ? 1 / mostPull : 0
  const perSide = mostSide > 0 ? 1 / mostSide : 0
  for (let at = 0; at < count; at++) {
    pull[at] = pull[at]! * perPull
    side[at] = side[at]! * perSide
  }
}

/** Every third degree of every load, and of a split case both halves. */
function firstLook(loads: readonly MainLoads[], main: number): Moments {
  const halves = loads[0]!.splitCase ? 2 : 1
  const moments = emptyMoments((halves * loads.length * 720) / STRIDE)
  for (let flat = 0; flat < loads.length * 720; flat += STRIDE) {
    addMoment(moments, loads, main, flat, 1)
    if (halves === 2) addMoment(moments, loads, main, flat, -1)
  }
  return moments
}

/** Every degree around those moments of the first look that come near the greatest. */
function closeLook(loads: readonly MainLoads[], main: number, first: Moments): Moments {
  const near = new Uint8Array(first.count)
  for (const ratio of FIRST_RATIOS) {
    share(first, ratio)
    for (let weight = 0; weight < WEIGHTS.length; weight += 2) {
      markNear(first, WEIGHTS[weight]!.pull, WEIGHTS[weight]!.side, near)
    }
  }
  const marked = near.reduce((sum, one) => sum + one, 0)
  const moments = emptyMoments(marked * STRIDE)
  for (let at = 0; at < first.count; at++) {
    if (near[at] === 1) addAround(moments, loads, main, first.flat[at]!, first.half[at]!)
  }
  return moments
}

function markNear(
  { count, pull, side }: Moments,
  pullWeight: number,
  sideWeight: number,
  near: Uint8Array,
): void {
  const at = greatest(count, pull, side, pullWeight, sideWeight)
  const least = NEAR * (pullWeight * pull[at]! + sideWeight * side[at]!)
  for (let index = 0; index < count; index++) {
    if (pullWeight * pull[index]! + sideWeight * side[index]! >= least) near[index] = 1
  }
}

/** The moment's own degree and its neighbours up to halfway to the next of the first look. */
function addAround(
  moments: Moments,
  loads: readonly MainLoads[],
  main: number,
  flat: number,
  half: number,
): void {
  const degree = flat % 720
  const reach = (STRIDE - 1) / 2
  for (let step = -reach; step <= reach; step++) {
    addMoment(moments, loads, main, flat - degree + ((degree + step + 720) % 720), half)
  }
}

function emptyMoments(room: number): Moments {
  const numbers = (): Float64Array => new Float64Array(room)
  return {
    count: 0,
    flat: new Int32Array(room),
    half: new Int8Array(room),
    gasX: numbers(),
    gasY: numbers(),
    inertiaX: numbers(),
    inertiaY: numbers(),
    pull: numbers(),
    side: numbers(),
  }
}

function addMoment(
  moments: Moments,
  loads: readonly MainLoads[],
  main: number,
  flat: number,
  half: number,
): void {
  const load = loads[(flat / 720) | 0]!
  const index = flat % 720
  const at = moments.count++
  moments.flat[at] = flat
  moments.half[at] = half
  moments.gasX[at] = half * load.gasX[main]![index]!
  moments.gasY[at] = half * load.gasY[main]![index]!
  moments.inertiaX[at] = half * load.inertiaX[main]![index]!
  moments.inertiaY[at] = half * load.inertiaY[main]![index]!
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
