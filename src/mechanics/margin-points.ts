import { pressedPart, pullOf } from './cap-share.ts'
import type { MainLoads } from './main-loads.ts'

/** Least and greatest factor by which gas and inertia loads are scaled in sampling. */
export const SCALE_RANGE = { low: 0.6, high: 1.6 } as const

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

/** Most points kept for one main. */
export const MOST_POINTS = 24

/** Ratios of gas to inertia scale, from 0.6/1.6 to 1.6/0.6, evenly spaced in the logarithm. */
const RATIOS = spread(13, SCALE_RANGE.low / SCALE_RANGE.high, SCALE_RANGE.high / SCALE_RANGE.low)
/** Those used to find which samples can matter at all. */
const COARSE_RATIOS = [RATIOS[0]!, RATIOS[3]!, RATIOS[6]!, RATIOS[9]!, RATIOS[12]!]
/** Weights of pull against side push, as angles from pull only to side only. */
const WEIGHTS = Array.from({ length: 9 }, (_, step) => (step * Math.PI) / 16)
const PULL_WEIGHT = WEIGHTS.map(Math.cos)
const SIDE_WEIGHT = WEIGHTS.map(Math.sin)
const STRIDE = 3
/** A sample matters if it comes this near to the greatest for some ratio and weight. */
const NEAR = 0.93
/** A point stands for another if its value is at least this part of the other's. */
const SAME = 0.9997

function spread(count: number, low: number, high: number): number[] {
  const step = Math.log(high / low) / (count - 1)
  return Array.from({ length: count }, (_, index) => low * Math.exp(index * step))
}

/** Samples of one main, flat: load index × 720 + degree, negative (−1 − n) for the upper half. */
type Sample = number

/**
 * The few moments that decide a main's margins at every scale of gas and inertia.
 *
 * Any margin that falls as pull and side push grow, along straight lines in (pull, side) — as
 * separation does, and grip μ(clamp − c·pull)/side and hold [μ(clamp − c·pull) + R]/side for any
 * μ, clamp, c and R while the joint is closed — is least at a corner of the upper right hull of
 * all moments' (pull, side): the margin is t exactly where t·side + μ c·pull first reaches
 * μ·clamp + R. Both components being homogeneous, the hull depends on gas and inertia scale only
 * through their ratio. So the greatest of w·pull + (1 − w)·side is found at a fan of ratios and
 * weights over the whole range, and as few moments are kept as stand for all of them to within
 * 0.03 %. Between the ratios and weights of the fan the loss stays below 0.1 %, which the tests
 * prove against full sweeps at random scales.
 *
 * @param loads - one set for each speed and load case
 * @param main - index of the main
 * @returns 1 to 24 points
 */
export function marginPoints(loads: readonly MainLoads[], main: number): MarginPoint[] {
  const samples = samplesThatMatter(loads, main)
  const values = fanValues(loads, main, samples)
  return cover(samples.length, values).map((index) => pointAt(loads, main, samples[index]!))
}

const FAN = RATIOS.length * WEIGHTS.length

/** Scale the fan of one ratio to its own greatest pull and side push, over the given samples. */
function fill(
  loads: readonly MainLoads[],
  main: number,
  samples: readonly Sample[],
  ratio: number,
  out: { pull: Float64Array; side: Float64Array },
): void {
  let mostPull = 0
  let mostSide = 0
  for (let at = 0; at < samples.length; at++) {
    const sample = samples[at]!
    const flat = sample < 0 ? -1 - sample : sample
    const load = loads[(flat / 720) | 0]!
    const index = flat % 720
    const across = Math.abs(ratio * load.gasX[main]![index]! + load.inertiaX[main]![index]!)
    const up = ratio * load.gasY[main]![index]! + load.inertiaY[main]![index]!
    const y = sample < 0 ? -up : up
    const part = pressedPart(across, y)
    const pull = pullOf(across, y, part)
    const side = across * part
    out.pull[at] = pull
    out.side[at] = side
    mostPull = Math.max(mostPull, pull)
    mostSide = Math.max(mostSide, side)
  }
  const perPull = mostPull > 0 ? 1 / mostPull : 0
  const perSide = mostSide > 0 ? 1 / mostSide : 0
  for (let at = 0; at < samples.length; at++) {
    out.pull[at] = out.pull[at]! * perPull
    out.side[at] = out.side[at]! * perSide
  }
}

/** Every third degree of every load, thinned to what comes near the greatest, with neighbours. */
function samplesThatMatter(loads: readonly MainLoads[], main: number): Sample[] {
  const coarse: Sample[] = []
  for (let flat = 0; flat < loads.length * 720; flat += STRIDE) {
    coarse.push(flat)
    if (loads[0]!.splitCase) coarse.push(-1 - flat)
  }
  const shares = {
    pull: new Float64Array(coarse.length),
    side: new Float64Array(coarse.length),
  }
  const near = new Uint8Array(coarse.length)
  for (const ratio of COARSE_RATIOS) {
    fill(loads, main, coarse, ratio, shares)
    for (let weight = 0; weight < WEIGHTS.length; weight += 2) {
      markNear(shares, PULL_WEIGHT[weight]!, SIDE_WEIGHT[weight]!, near)
    }
  }
  const kept = new Set<Sample>()
  for (let at = 0; at < coarse.length; at++) {
    if (near[at]) addNeighbours(coarse[at]!, kept)
  }
  return [...kept]
}

function markNear(
  shares: { pull: Float64Array; side: Float64Array },
  pullWeight: number,
  sideWeight: number,
  near: Uint8Array,
): void {
  const { pull, side } = shares
  let most = 0
  for (let at = 0; at < pull.length; at++) {
    most = Math.max(most, pullWeight * pull[at]! + sideWeight * side[at]!)
  }
  const least = NEAR * most
  for (let at = 0; at < pull.length; at++) {
    if (pullWeight * pull[at]! + sideWeight * side[at]! >= least) near[at] = 1
  }
}

function addNeighbours(sample: Sample, kept: Set<Sample>): void {
  const flat = sample < 0 ? -1 - sample : sample
  const start = flat - (flat % 720)
  for (let step = 1 - STRIDE; step < STRIDE; step++) {
    const index = start + ((flat - start + step + 720) % 720)
    kept.add(sample < 0 ? -1 - index : index)
  }
}

/** Each sample's value at every ratio and weight, as a part of the greatest there. */
function fanValues(
  loads: readonly MainLoads[],
  main: number,
  samples: readonly Sample[],
): Float64Array {
  const count = samples.length
  const values = new Float64Array(count * FAN)
  const shares = { pull: new Float64Array(count), side: new Float64Array(count) }
  RATIOS.forEach((ratio, row) => {
    fill(loads, main, samples, ratio, shares)
    for (let weight = 0; weight < WEIGHTS.length; weight++) {
      const base = (row * WEIGHTS.length + weight) * count
      let most = 0
      for (let at = 0; at < count; at++) {
        const value =
          PULL_WEIGHT[weight]! * shares.pull[at]! + SIDE_WEIGHT[weight]! * shares.side[at]!
        values[base + at] = value
        most = Math.max(most, value)
      }
      const per = most > 0 ? 1 / most : 0
      for (let at = 0; at < count; at++) values[base + at] = values[base + at]! * per
    }
  })
  return values
}

/** Greedy cover: the sample that stands for most of the fan, then for most of the rest. */
function cover(count: number, values: Float64Array): number[] {
  const open = new Set(Array.from({ length: FAN }, (_, cell) => cell))
  const chosen: number[] = []
  while (open.size > 0 && chosen.length < MOST_POINTS) {
    const gains = new Uint16Array(count)
    for (const cell of open) {
      const base = cell * count
      for (let at = 0; at < count; at++) if (values[base + at]! >= SAME) gains[at]!++
    }
    const best = gains.indexOf(Math.max(...gains))
    if (gains[best] === 0) break
    chosen.push(best)
    for (const cell of open) if (values[cell * count + best]! >= SAME) open.delete(cell)
  }
  return chosen.length > 0 ? chosen : [0]
}

function pointAt(loads: readonly MainLoads[], main: number, sample: Sample): MarginPoint {
  const half = sample < 0 ? -1 : 1
  const flat = sample < 0 ? -1 - sample : sample
  const speedIndex = Math.floor(flat / 720)
  const index = flat % 720
  const load = loads[speedIndex]!
  return {
    main,
    speedIndex,
    angle: (index * Math.PI) / 180,
    gasX: half * load.gasX[main]![index]!,
    gasY: half * load.gasY[main]![index]!,
    inertiaX: half * load.inertiaX[main]![index]!,
    inertiaY: half * load.inertiaY[main]![index]!,
    half,
  }
}
