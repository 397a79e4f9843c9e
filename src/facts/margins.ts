import { MARGIN_IDS, type MarginId, type Margins } from '../../shared/assessment.ts'
import { registerCapacity } from '../mechanics/register.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { JointModel } from './joint-model.ts'
import type { Samples } from './samples.ts'

/** Margins of one joint over all sampled cases. */
export interface JointMargins {
  /** Likely case, and the tenth and ninetieth in a hundred. Worked out when it is read. */
  readonly margins: Margins
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
  samples: Samples,
  rulebook: Rulebook,
): JointMargins {
  const count = samples.count
  const cases = Object.fromEntries(MARGIN_IDS.map((id) => [id, new Float64Array(count)])) as Record<
    MarginId,
    Float64Array
  >
  const state = clampAndRegister(model, samples)
  const worstPoint = sideMargins(model, samples, state, cases)
  pullMargins(model, samples, state, cases)
  const unloading = (1 - model.loadFactor) * model.loadLeft
  const [clamp, pull] = [state.clamp[0] as number, samples.worstPull[0] as number]
  return {
    cases,
    clamp,
    friction: (state.friction[0] as number) * Math.max(0, clamp - unloading * pull),
    registerCapacity: state.register[0] as number,
    faceFriction: state.friction[0] as number,
    worst: {
      pull: samples.pull[worstPoint] as number,
      side: samples.side[worstPoint] as number,
    },
    ...held(cases, rulebook),
    get margins() {
      return spreads(cases)
    },
  }
}

/** What holds the cap in each case. */
interface Held {
  readonly preload: Float64Array
  readonly clamp: Float64Array
  readonly friction: Float64Array
  readonly register: Float64Array
}

/** The drawn figures of one name; ones (or noughts) when it is not in doubt. */
function drawn({ of, count }: Samples, name: string, otherwise: number): Float64Array {
  return of.get(name) ?? new Float64Array(count).fill(otherwise)
}

function clampAndRegister(model: JointModel, samples: Samples): Held {
  const { count } = samples
  const scatter = drawn(samples, 'preload', 1)
  const torque = drawn(samples, 'fastenerTorque', 1)
  const embedding = drawn(samples, 'embedding', 0)
  const preload = new Float64Array(count)
  const clamp = new Float64Array(count)
  for (let row = 0; row < count; row++) {
    const factor = scatter[row]! * torque[row]!
    preload[row] = factor
    clamp[row] = Math.max(0, model.clamp * factor - embedding[row]! * MM * model.lossPerEmbedding)
  }
  const register = registers(model, samples)
  return { preload, clamp, friction: drawn(samples, 'faceFriction', 0), register }
}

/** rules/scatter.json gives fits and settling in mm. */
const MM = 1e-3

function registers(model: JointModel, samples: Samples): Float64Array {
  const capacity = new Float64Array(samples.count)
  if (model.registerHeight <= 0) return capacity
  const height = drawn(samples, 'registerHeight', 1)
  const width = drawn(samples, 'capWidth', 1)
  const fit = drawn(samples, 'registerInterference', 0)
  for (let row = 0; row < samples.count; row++) {
    capacity[row] = registerCapacity({
      height: model.registerHeight * height[row]!,
      length: model.registerLength * width[row]!,
      interference: fit[row]! * MM,
      allowablePressure: model.registerPressure,
    })
  }
  return capacity
}

/** Hold and grip of every case; returns the point where the likely case holds least. */
function sideMargins(
  model: JointModel,
  { points, pull, side, count }: Samples,
  { clamp, friction, register }: Held,
  cases: Record<MarginId, Float64Array>,
): number {
  const unloading = (1 - model.loadFactor) * model.loadLeft
  let worst = 0
  for (let row = 0; row < count; row++) {
    const [rub, force] = [friction[row]!, clamp[row]!]
    const fixed = register[row]! + model.crossCapacity
    let [hold, grip] = [NO_LOAD, NO_LOAD]
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
  samples: Samples,
  { clamp, preload }: Held,
  cases: Record<MarginId, Float64Array>,
): void {
  const unloading = (1 - model.loadFactor) * model.loadLeft
  const strength = drawn(samples, 'capStrength', 1)
  const thread = drawn(samples, 'threadStrength', 1)
  const sizes = fatigueScale(model, samples)
  for (let row = 0; row < samples.count; row++) {
    const pull = samples.worstPull[row]!
    cases.separation[row] = ratio(clamp[row]! / unloading, pull)
    cases.capFatigue[row] = ratio(
      model.endurablePull * strength[row]! * sizes[row]!,
      pull * model.loadLeft,
    )
    let [proof, strip] = [NO_LOAD, NO_LOAD]
    for (const group of model.groups) {
      const load = group.preload * preload[row]! + group.loadPerPull * pull
      proof = Math.min(proof, ratio(group.proofLoad, load))
      strip = Math.min(strip, ratio(group.strippingLoad * thread[row]!, load))
    }
    cases.fastenerProof[row] = proof
    cases.threadStrip[row] = strip
  }
}

function fatigueScale(model: JointModel, samples: Samples): Float64Array {
  const scale = new Float64Array(samples.count).fill(1)
  for (const [key, exponent] of model.strengthExponents) {
    const values = samples.of.get(key)
    if (!values) continue
    for (let row = 0; row < scale.length; row++) scale[row] = scale[row]! * values[row]! ** exponent
  }
  return scale
}

function ratio(capacity: number, load: number): number {
  return load > capacity / NO_LOAD ? capacity / load : NO_LOAD
}

function held(
  cases: Record<MarginId, Float64Array>,
  { holding }: Rulebook,
): Pick<JointMargins, 'holdsIn' | 'weakest'> {
  const counted = MARGIN_IDS.filter((id) => holding.margins[id] > 0)
  const failures = new Map<MarginId, number>(counted.map((id) => [id, 0]))
  const rows = cases.hold.length
  let holds = 0
  // Case 0 is the likely one; only the drawn cases are counted.
  for (let row = 1; row < rows; row++) {
    let stands = true
    for (const id of counted) {
      if (cases[id][row]! >= holding.margins[id]) continue
      stands = false
      failures.set(id, (failures.get(id) as number) + 1)
    }
    if (stands) holds++
  }
  const room = (id: MarginId): number => cases[id][0]! / holding.margins[id]
  const weakest = counted.reduce((worst, id) => {
    const more = (failures.get(id) as number) - (failures.get(worst) as number)
    return more > 0 || (more === 0 && room(id) < room(worst)) ? id : worst
  })
  return { holdsIn: Math.round((100 * holds) / (rows - 1)), weakest }
}

function spreads(cases: Readonly<Record<MarginId, Float64Array>>): Margins {
  return Object.fromEntries(
    MARGIN_IDS.map((id) => {
      const sorted = cases[id].slice(1).sort()
      const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))]!
      const likely = cases[id][0]!
      return [id, { low: Math.min(likely, at(0.1)), likely, high: Math.max(likely, at(0.9)) }]
    }),
  ) as Margins
}
