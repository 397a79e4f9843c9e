import { pullOf } from './cap-share.ts'
import { type LoadAt, loadsRead } from './main-load-at.ts'
import type { MainLoads } from './main-loads.ts'
import { addMoment, emptyMoments, type Moments, partNearly } from './moments.ts'

/** Every this many degrees in the first look at a cycle; odd, and divides 360. */
export const STRIDE = 5
const LOOKS = 720 / STRIDE

/** Greatest pull and side push yet at one ratio, N, and what comes near to their line. */
interface Horizon {
  near: number
  pull: number
  sideAtPull: number
  side: number
  pullAtSide: number
  leastPull: number
  leastSide: number
  /** Weights of the straight line between the two, and its least value. */
  perPull: number
  perSide: number
  least: number
}

/**
 * Moments of all mains that come near the upper right hull of (pull, side) at some ratio of gas
 * to inertia, out of every fifth degree. Some that do not are among them, since the horizon rises
 * while they are looked at.
 *
 * @param loads - one set for each speed and load case, at every degree or every fifth
 * @param ratios - at which to look
 * @param near - 1 takes what lies on or beyond the line from greatest pull to greatest side push
 *   or reaches either; less takes in what comes near to that
 */
export function coarseLook(
  loads: readonly MainLoads[],
  ratios: readonly number[],
  near: number,
): Moments {
  const { mains, splitCase } = loads[0]!
  const halves = splitCase ? 2 : 1
  const marks = new Uint8Array(mains * loads.length * halves * LOOKS)
  for (const ratio of ratios) {
    const horizon = emptyHorizon(near)
    for (let block = 0, main = 0; main < mains; main++) {
      for (let speed = 0; speed < loads.length; speed++) {
        for (let half = 1; half > -halves; half -= 2) {
          markBlock(marks, LOOKS * block++, horizon, loads[speed]!, main, half, ratio)
        }
      }
    }
  }
  return gather(loads, marks, halves)
}

function emptyHorizon(near: number): Horizon {
  const greatest = { pull: 0, sideAtPull: 0, side: 0, pullAtSide: 0 }
  return { near, ...greatest, leastPull: 0, leastSide: 0, perPull: 0, perSide: 0, least: 0 }
}

/** Mark the looks of one main, load and half that come near the horizon, and raise it. */
function markBlock(
  marks: Uint8Array,
  from: number,
  horizon: Horizon,
  load: MainLoads,
  main: number,
  half: number,
  ratio: number,
): void {
  const gasX = load.gasX[main]!
  const gasY = load.gasY[main]!
  const inertiaX = load.inertiaX[main]!
  const inertiaY = load.inertiaY[main]!
  let { leastPull, leastSide, perPull, perSide, least } = horizon
  const step = STRIDE / load.every
  for (let index = 0, at = from; at < from + LOOKS; index += step, at++) {
    const across = Math.abs(ratio * gasX[index]! + inertiaX[index]!)
    const y = half * (ratio * gasY[index]! + inertiaY[index]!)
    // Bounds that need no angle.
    const mostPull = across * PER_PI + (y < 0 ? -y : 0)
    const mostSide = y < 0 ? across : 0.5 * across
    if (mostPull < leastPull && mostSide < leastSide) {
      if (perPull * mostPull + perSide * mostSide < least) continue
    }
    const part = partNearly(across, y)
    const pull = pullOf(across, y, part)
    const side = across * part
    if (pull >= leastPull || side >= leastSide || perPull * pull + perSide * side >= least) {
      marks[at] = 1
      if (pull <= horizon.pull && side <= horizon.side) continue
      raise(horizon, pull, side)
      ;({ leastPull, leastSide, perPull, perSide, least } = horizon)
    }
  }
}

const PER_PI = 1 / Math.PI

function raise(horizon: Horizon, pull: number, side: number): void {
  const { near } = horizon
  if (pull > horizon.pull) {
    horizon.pull = pull
    horizon.sideAtPull = side
  }
  if (side > horizon.side) {
    horizon.side = side
    horizon.pullAtSide = pull
  }
  horizon.leastPull = near * horizon.pull
  horizon.leastSide = near * horizon.side
  horizon.perPull = horizon.side - horizon.sideAtPull
  horizon.perSide = horizon.pull - horizon.pullAtSide
  horizon.least = near * (horizon.perPull * horizon.pull + horizon.perSide * horizon.sideAtPull)
}

/** The marked looks themselves. */
function gather(loads: readonly MainLoads[], marks: Uint8Array, halves: number): Moments {
  let marked = 0
  for (let at = 0; at < marks.length; at++) marked += marks[at]!
  const moments = emptyMoments(marked)
  const loadAt = loadsRead(loads)
  for (let at = 0; at < marks.length; at++) {
    if (marks[at] === 0) continue
    const block = Math.floor(at / LOOKS)
    const half = block % halves === 0 ? 1 : -1
    const pair = Math.floor(block / halves)
    const flat = (pair % loads.length) * 720 + (at % LOOKS) * STRIDE
    addMoment(moments, loadAt, Math.floor(pair / loads.length), flat, half)
  }
  return moments
}

/** Every degree around the looks of a coarse look, those within two degrees. */
export function degreesAround(loadAt: LoadAt, looks: Moments): Moments {
  const moments = emptyMoments(STRIDE * looks.count)
  const reach = (STRIDE - 1) / 2
  for (let at = 0; at < looks.count; at++) {
    const flat = looks.flat[at]!
    const degree = flat % 720
    for (let step = -reach; step <= reach; step++) {
      const turned = flat - degree + ((degree + step + 720) % 720)
      addMoment(moments, loadAt, looks.main[at]!, turned, looks.half[at]!)
    }
  }
  return moments
}
