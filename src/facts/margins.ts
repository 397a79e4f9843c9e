import type { Margins } from '../../shared/assessment.ts'
import { MARGIN_IDS, type MarginId } from '../../shared/route-ids.ts'
import { nthSmallest } from '../mechanics/order-statistic.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { CapCases } from './cap-cases.ts'
import type { Held } from './held.ts'
import type { JointModel } from './joint-model.ts'
import { once } from './memory.ts'

/** Margins of one joint over all sampled cases. */
export interface JointMargins {
  /** Likely case, and the tenth and ninetieth in a hundred. */
  readonly margins: () => Margins
  /** Of 100 cases, how many hold. */
  readonly holdsIn: number
  /** The margin that fails in most cases; the nearest to its limit when none fails. */
  readonly weakest: MarginId
  /** Every margin of every case, the likely one first, for ranking what matters. */
  readonly cases: Readonly<Record<MarginId, Float64Array>>
  /** In the likely case, N. */
  readonly clamp: number
  readonly friction: number
  readonly registerCapacity: number
  /** Friction of the parting faces, likely. */
  readonly faceFriction: number
  /** Pull and side push, N, at the instant where the likely case holds least. */
  readonly worst: { readonly pull: number; readonly side: number }
}

/** A margin against no load at all; JSON has no infinity. */
const NO_LOAD = 99
/** A side push below this, N, is none. */
const NO_PUSH = 1

/**
 * Margins of a joint against the sampled loads.
 *
 * *hold* = (friction + register + cross bolts) / side push; *grip* = friction alone / side
 * push; *separation* = pull that opens the joint / pull; *capFatigue* = endurable pull /
 * pull; *fastenerProof* and *threadStrip* = proof or stripping load / greatest load of a
 * fastener. Each is the least over all mains, speeds and crank angles.
 */
export function jointMargins(
  model: JointModel,
  held: Held,
  loads: CapCases,
  rulebook: Rulebook,
): JointMargins {
  const { count } = loads
  // One buffer for all: small ones of their own are dear to collect.
  const room = new Float64Array(MARGIN_IDS.length * count)
  const part = (index: number): Float64Array => room.subarray(index * count, (index + 1) * count)
  const cases: Record<MarginId, Float64Array> = {
    hold: part(0),
    grip: part(1),
    separation: part(2),
    capFatigue: part(3),
    fastenerProof: part(4),
    threadStrip: part(5),
  }
  const worstPoint = sideMargins(model, held, loads, cases)
  pullMargins(model, held, loads, cases)
  const { holdsIn, weakest } = holding(cases, rulebook)
  const unloading = (1 - model.loadFactor) * model.loadLeft
  const [clamp, pull] = [held.clamp[0] as number, loads.worstPull[0] as number]
  return {
    cases,
    clamp,
    friction: (held.friction[0] as number) * Math.max(0, clamp - unloading * pull),
    registerCapacity: held.register[0] as number,
    faceFriction: held.friction[0] as number,
    worst: {
      pull: loads.pull[worstPoint] as number,
      side: loads.side[worstPoint] as number,
    },
    holdsIn,
    weakest,
    margins: once(() => spreads(cases)),
  }
}

/** Hold and grip of every case; returns the point where the likely case holds least. */
function sideMargins(
  model: JointModel,
  { clamp, friction, register }: Held,
  { points, pull, side, count }: CapCases,
  cases: Record<MarginId, Float64Array>,
): number {
  const unloading = (1 - model.loadFactor) * model.loadLeft
  let worst = 0
  for (let row = 0; row < count; row++) {
    const rub = friction[row]!
    const force = clamp[row]!
    const fixed = register[row]! + model.crossCapacity
    let hold = NO_LOAD
    let grip = NO_LOAD
    for (let index = 0, at = row * points; index < points; index++, at++) {
      const across = side[at]! * model.loadLeft
      if (across < NO_PUSH) continue
      const left = force - unloading * pull[at]!
      const rubbing = left > 0 ? rub * left : 0
      const gripping = rubbing / across
      if (gripping < grip) grip = gripping
      const holding = gripping + fixed / across
      if (holding < hold) {
        hold = holding
        if (row === 0) worst = index
      }
    }
    cases.hold[row] = hold
    cases.grip[row] = grip
  }
  return worst
}

/** The margins that only the greatest pull decides. */
function pullMargins(
  model: JointModel,
  { clamp, preload, endurable, thread }: Held,
  { worstPull, count }: CapCases,
  cases: Record<MarginId, Float64Array>,
): void {
  const unloading = (1 - model.loadFactor) * model.loadLeft
  for (let row = 0; row < count; row++) {
    const pull = worstPull[row]!
    cases.separation[row] = ratio(clamp[row]! / unloading, pull)
    cases.capFatigue[row] = ratio(endurable[row]!, pull * model.loadLeft)
    let proof = NO_LOAD
    let strip = NO_LOAD
    for (const group of model.groups) {
      const load = group.preload * preload[row]! + group.loadPerPull * pull
      proof = Math.min(proof, ratio(group.proofLoad, load))
      strip = Math.min(strip, ratio(group.strippingLoad * thread[row]!, load))
    }
    cases.fastenerProof[row] = proof
    cases.threadStrip[row] = strip
  }
}

function ratio(capacity: number, load: number): number {
  return load > capacity / NO_LOAD ? capacity / load : NO_LOAD
}

/** Margins that count at all, and the least that each may be. */
interface Limit {
  readonly id: MarginId
  readonly least: number
  readonly values: Float64Array
}

function holding(
  cases: Record<MarginId, Float64Array>,
  { holding: { margins } }: Rulebook,
): Pick<JointMargins, 'holdsIn' | 'weakest'> {
  const limits = MARGIN_IDS.filter((id) => margins[id] > 0).map(
    (id): Limit => ({ id, least: margins[id], values: cases[id] }),
  )
  // Case 0 is the likely one; only the drawn cases are counted.
  const rows = cases.hold.length
  const fallen = new Uint8Array(rows)
  const failures = limits.map(({ values, least }) => {
    let count = 0
    for (let row = 1; row < rows; row++) {
      if (values[row]! >= least) continue
      count++
      fallen[row] = 1
    }
    return count
  })
  const holds = fallen.reduce((left, one) => left - one, rows - 1)
  const room = ({ values, least }: Limit): number => values[0]! / least
  const weakest = limits.reduce((worst, limit, index) => {
    const more = failures[index]! - failures[limits.indexOf(worst)]!
    return more > 0 || (more === 0 && room(limit) < room(worst)) ? limit : worst
  })
  return { holdsIn: Math.round((100 * holds) / (rows - 1)), weakest: weakest.id }
}

function spreads(cases: Readonly<Record<MarginId, Float64Array>>): Margins {
  const margins: Partial<Record<MarginId, Margins[MarginId]>> = {}
  const drawn = new Float64Array(cases.hold.length - 1)
  const place = (share: number): number => Math.floor(share * (drawn.length - 1))
  for (const id of MARGIN_IDS) {
    drawn.set(cases[id].subarray(1))
    const tenth = nthSmallest(drawn, place(0.1))
    const ninetieth = nthSmallest(drawn, place(0.9), place(0.1))
    const likely = cases[id][0]!
    margins[id] = { low: Math.min(likely, tenth), likely, high: Math.max(likely, ninetieth) }
  }
  return margins as Margins
}
