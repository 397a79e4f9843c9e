import { MARGIN_IDS, type MarginId, type Margins } from '../../shared/assessment.ts'
import { registerCapacity } from '../mechanics/register.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { JointModel } from './joint-model.ts'
import type { Samples } from './samples.ts'

/** Margins of one joint over all sampled cases. */
export interface JointMargins {
  /** Likely case, and the tenth and ninetieth in a hundred. */
  readonly margins: Margins
  /** Of 100 cases, how many hold. */
  readonly holdsIn: number
  /** Every margin of every case, for ranking what matters. */
  readonly cases: Readonly<Record<MarginId, Float64Array>>
  /** In the likely case. */
  readonly clamp: number
  readonly friction: number
  readonly registerCapacity: number
  /** Index of the margin point where hold is least in the likely case. */
  readonly worstPoint: number
}

/** A margin against no load at all; JSON has no infinity. */
const NO_LOAD = 99

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
  const cases = Object.fromEntries(
    MARGIN_IDS.map((id) => [id, new Float64Array(samples.count)]),
  ) as Record<MarginId, Float64Array>
  const likely = { clamp: 0, friction: 0, registerCapacity: 0, worstPoint: 0 }
  const fatigue = fatigueScale(model, samples)
  for (let row = 0; row < samples.count; row++) {
    const figure = (name: string, otherwise: number): number =>
      samples.of.get(name)?.[row] ?? otherwise
    const preload = figure('preload', 1) * figure('fastenerTorque', 1)
    const clamp = Math.max(
      0,
      model.clamp * preload - figure('embedding', 0) * 1e-3 * model.lossPerEmbedding,
    )
    const friction = figure('faceFriction', 0)
    const register = registerOf(model, figure)
    const point = sideMargins(model, samples, row, { clamp, friction, register }, cases)
    const pull = samples.worstPull[row] as number
    const unloading = (1 - model.loadFactor) * model.loadLeft
    cases.separation[row] = ratio(clamp / unloading, pull)
    cases.capFatigue[row] = ratio(
      model.endurablePull * figure('capStrength', 1) * fatigue(row),
      pull * model.loadLeft,
    )
    fastenerMargins(model, cases, row, preload, pull, figure('threadStrength', 1))
    if (row === 0) {
      Object.assign(likely, { clamp, registerCapacity: register, worstPoint: point })
      likely.friction = friction * Math.max(0, clamp - unloading * pull)
    }
  }
  return { ...likely, cases, holdsIn: holdsIn(cases, rulebook), margins: spreads(cases) }
}

function registerOf(
  model: JointModel,
  figure: (name: string, otherwise: number) => number,
): number {
  if (model.registerHeight <= 0) return 0
  return registerCapacity({
    height: model.registerHeight * figure('registerHeight', 1),
    length: model.registerLength * figure('capWidth', 1),
    interference: figure('registerInterference', 0) * 1e-3,
    allowablePressure: model.registerPressure,
  })
}

function sideMargins(
  model: JointModel,
  samples: Samples,
  row: number,
  held: { clamp: number; friction: number; register: number },
  cases: Record<MarginId, Float64Array>,
): number {
  const { points, pull, side } = samples
  const unloading = (1 - model.loadFactor) * model.loadLeft
  const fixed = held.register + model.crossCapacity
  let [hold, grip, worst] = [NO_LOAD, NO_LOAD, 0]
  for (let index = 0; index < points; index++) {
    const at = row * points + index
    const across = (side[at] as number) * model.loadLeft
    if (across < 1) continue
    const rubbing = held.friction * Math.max(0, held.clamp - unloading * (pull[at] as number))
    if (rubbing / across < grip) grip = rubbing / across
    if ((rubbing + fixed) / across < hold) {
      hold = (rubbing + fixed) / across
      worst = index
    }
  }
  cases.hold[row] = hold
  cases.grip[row] = grip
  return worst
}

function fastenerMargins(
  model: JointModel,
  cases: Record<MarginId, Float64Array>,
  row: number,
  preload: number,
  pull: number,
  threadStrength: number,
): void {
  let [proof, strip] = [NO_LOAD, NO_LOAD]
  for (const group of model.groups) {
    const load = group.preload * preload + group.loadPerPull * pull
    proof = Math.min(proof, ratio(group.proofLoad, load))
    strip = Math.min(strip, ratio(group.strippingLoad * threadStrength, load))
  }
  cases.fastenerProof[row] = proof
  cases.threadStrip[row] = strip
}

function fatigueScale(model: JointModel, samples: Samples): (row: number) => number {
  const parts = [...model.strengthExponents].flatMap(([key, exponent]) => {
    const values = samples.of.get(key)
    return values ? [{ values, exponent }] : []
  })
  return (row) => {
    let product = 1
    for (const { values, exponent } of parts) product *= (values[row] as number) ** exponent
    return product
  }
}

function ratio(capacity: number, load: number): number {
  return load > capacity / NO_LOAD ? capacity / load : NO_LOAD
}

function holdsIn(cases: Record<MarginId, Float64Array>, { holding }: Rulebook): number {
  const rows = cases.hold.length
  let held = 0
  // Case 0 is the likely one; only the drawn cases are counted.
  for (let row = 1; row < rows; row++) {
    if (MARGIN_IDS.every((id) => (cases[id][row] as number) >= holding.margins[id])) held++
  }
  return Math.round((100 * held) / (rows - 1))
}

function spreads(cases: Record<MarginId, Float64Array>): Margins {
  return Object.fromEntries(
    MARGIN_IDS.map((id) => {
      const drawn = cases[id].slice(1).sort()
      const at = (share: number): number => drawn[Math.floor(share * (drawn.length - 1))] as number
      const likely = cases[id][0] as number
      return [id, { low: Math.min(likely, at(0.1)), likely, high: Math.max(likely, at(0.9)) }]
    }),
  ) as Margins
}
