import { DomainError, requireWithin } from './domain-error.ts'
import { nothingYet, type Running, raise, scan, scanBetween } from './load-scan.ts'
import type { LoadAt } from './main-load-at.ts'
import { CYCLE, type MainLoads } from './main-loads.ts'

/** What the engine is doing while it turns at a speed. */
export type LoadCase = 'full-load' | 'closed-throttle'

/** Loads at several speeds, and the bearing they act on. */
export interface LoadSweepInput {
  /** One for each speed and case, each with arrays of its own; at least one. */
  loads: readonly MainLoads[]
  /** Gives every degree, where the loads are at every so many; greatest loads are looked for between. */
  loadAt?: LoadAt
  /** What each of them is; default all full load. */
  cases?: readonly LoadCase[]
  /** Diameter and working width of the main bearing, m, for its unit load. */
  bearing?: { diameter: number; width: number }
}

/** A greatest load and when it happens. */
export interface WorstLoad {
  /** N. */
  force: number
  main: number
  /** Index into the sweep's loads. */
  speedIndex: number
  /** rad/s. */
  speed: number
  loadCase: LoadCase
  /** Crank angle from firing top dead centre of the first cylinder, rad. */
  angle: number
  /** 1 on the side of −y; −1 on the upper half of a split case. */
  half: 1 | -1
}

/** One main over all speeds. */
export interface MainSweep {
  main: number
  worstPull: WorstLoad
  worstSide: WorstLoad
  /** Greatest load on the bearing, whichever way it points. */
  peakLoad: WorstLoad
  /** Greatest pull and side push at each speed, N. */
  atSpeeds: { pull: number; side: number }[]
  /** Load over projected area D·L, Pa, where the bearing's sizes are given. */
  unitLoad?: { peak: number; mean: number }
}

/** Every main, and the worst of all. */
export interface LoadSweep {
  worstPull: WorstLoad
  worstSide: WorstLoad
  mains: MainSweep[]
}

/**
 * Find where a crank pulls and pushes its main caps hardest, over all speeds and load cases.
 *
 * @param input - loads with arrays of their own: not from one shared workspace
 * @returns for each main the greatest pull, side push and bearing load
 * @throws {DomainError} if there are no loads, or their numbers of mains or cases differ
 */
export function loadSweep(input: LoadSweepInput): LoadSweep {
  checkInput(input)
  const mains = Array.from({ length: input.loads[0]!.mains }, (_, main) => sweepMain(input, main))
  const worst = (of: (main: MainSweep) => WorstLoad): WorstLoad =>
    mains.map(of).reduce((most, next) => (next.force > most.force ? next : most))
  return {
    worstPull: worst((main) => main.worstPull),
    worstSide: worst((main) => main.worstSide),
    mains,
  }
}

/** Refuse loads that do not belong together. */
function checkInput({ loads, loadAt, cases, bearing }: LoadSweepInput): void {
  const mains = loads[0]?.mains
  if (mains === undefined) throw new DomainError('loads.length', 0, 'at least 1')
  for (const load of loads) {
    if (load.mains !== mains) throw new DomainError('loads[].mains', load.mains, `${mains}`)
    if (load.every !== 1 && (!loadAt || bearing)) {
      throw new DomainError('loads[].every', load.every, '1 without loadAt, or with a bearing')
    }
  }
  if (cases && cases.length !== loads.length) {
    throw new DomainError('cases.length', cases.length, `${loads.length}`)
  }
  if (loads.length > 1 && new Set(loads.map((load) => load.gasX[0])).size < loads.length) {
    throw new DomainError('loads', 'one set twice', 'arrays of their own for each speed')
  }
  if (bearing) {
    requireWithin('bearing.diameter', bearing.diameter, 0.01, 1, 'm')
    requireWithin('bearing.width', bearing.width, 0.002, 1, 'm')
  }
}

const CAP_ALONE = [1] as const
const BOTH_HALVES = [1, -1] as const

function sweepMain(input: LoadSweepInput, main: number): MainSweep {
  const [pull, side, peak] = [nothingYet(), nothingYet(), nothingYet()]
  const atSpeeds = input.loads.map((load, speedIndex) => {
    const start = speedIndex * CYCLE
    const [ownPull, ownSide] = [nothingYet(), nothingYet()]
    for (const half of load.splitCase ? BOTH_HALVES : CAP_ALONE) {
      const block = { load, main, start, half }
      if (input.loadAt) scanBetween(block, input.loadAt, ownPull, ownSide, peak)
      else scan(block, ownPull, ownSide, peak)
    }
    raise(pull, ownPull.value, ownPull.at, ownPull.half)
    raise(side, ownSide.value, ownSide.at, ownSide.half)
    return { pull: ownPull.value, side: ownSide.value }
  })
  // Looked for by its square.
  peak.value = Math.sqrt(Math.max(0, peak.value))
  const named = (running: Running): WorstLoad => nameWorst(input, main, running)
  const sweep: MainSweep = {
    main,
    worstPull: named(pull),
    worstSide: named(side),
    peakLoad: named(peak),
    atSpeeds,
  }
  if (input.bearing) {
    const area = input.bearing.diameter * input.bearing.width
    sweep.unitLoad = { peak: sweep.peakLoad.force / area, mean: meanLoad(input.loads, main) / area }
  }
  return sweep
}

/** Mean size of the load on a main over the cycle, at the speed where that is greatest, N. */
export function meanLoad(loads: readonly MainLoads[], main: number): number {
  return Math.max(
    ...loads.map(({ gasX, gasY, inertiaX, inertiaY }) => {
      let sum = 0
      for (let index = 0; index < CYCLE; index++) {
        const x = gasX[main]![index]! + inertiaX[main]![index]!
        const y = gasY[main]![index]! + inertiaY[main]![index]!
        sum += Math.sqrt(x * x + y * y)
      }
      return sum / CYCLE
    }),
  )
}

function nameWorst(input: LoadSweepInput, main: number, { value, at, half }: Running): WorstLoad {
  const speedIndex = Math.floor(at / CYCLE)
  return {
    force: value,
    main,
    speedIndex,
    speed: input.loads[speedIndex]!.speed,
    loadCase: input.cases?.[speedIndex] ?? 'full-load',
    angle: ((at % CYCLE) * Math.PI) / 180,
    half,
  }
}
