import {
  type CapJointStiffness,
  type CapStiffnessInput,
  capJointStiffness,
} from './cap-joint-stiffness.ts'
import { type CrossBolts, crossBoltCapacity } from './cross-bolts.ts'
import { requireWithin } from './domain-error.ts'
import { type Girdle, girdleEffect } from './girdle.ts'
import { fitPressure, type Register, registerCapacity } from './register.ts'

export interface CapJointInput extends CapStiffnessInput {
  /** μ at rest of the parting face; 0 to 1 */
  readonly friction: number
  /** Embedding, sum over all faces of one fastener, m; 0 to 1e-4 */
  readonly embeddingLoss: number
  /** How much more the parts grow than the fasteners, warm, m; see thermalStretch; 0 if left out */
  readonly thermalStretch?: number | undefined
  readonly register: Register
  readonly crossBolts?: CrossBolts | undefined
  readonly girdle?: Girdle | undefined
}

/** A main cap clamped to its block. Loads in N on one cap. */
export interface CapJoint {
  /** Upright clamp at the parting face after embedding (and warm-up), before any load, N */
  readonly clamp: number
  /** Share of the pull that the fasteners feel, 0 to 1 */
  readonly loadFactor: number
  /** Pull on the cap that frees the parting face, N */
  readonly openingLoad: number
  /** Side push that the register holds, N */
  readonly registerCapacity: number
  /** Side push that the cross bolts hold, N */
  readonly crossCapacity: number
  /** Clamp left at the parting face under a pull, N; never below 0 */
  residualClamp(pull: number): number
  /** Side push that friction alone holds under a pull, N */
  gripCapacity(pull: number): number
  /** Side push that friction, register and cross bolts hold under a pull, N */
  holdCapacity(pull: number): number
  /** Load added along one fastener of a group by a pull while the faces are closed, N */
  fastenerLoad(group: number, pull: number): number
}

/**
 * Upright clamp of a cap once its faces have bedded in.
 *
 * @param stiffness - of the joint, from {@link capJointStiffness}
 * @param preloads - N each, one for every group; at least 0
 * @param embedding - sum over all faces of one fastener, m; 0 to 1e-4
 * @param stretch - growth of the parts beyond the fasteners' when warm, m; −5e-4 to 5e-4
 * @returns N, at least 0
 * @throws {DomainError} if a value is not a finite number in its range
 * @see VDI 2230, preload loss through embedding (from memory)
 */
function clampAfterEmbedding(
  stiffness: CapJointStiffness,
  preloads: readonly number[],
  embedding: number,
  stretch = 0,
): number {
  requireWithin('embeddingLoss', embedding, 0, 1e-4, 'm')
  requireWithin('thermalStretch', stretch, -5e-4, 5e-4, 'm')
  let clamp = (stretch - embedding) * stiffness.lossPerEmbedding
  for (let group = 0; group < stiffness.groups.length; group++) {
    const preload = preloads[group] ?? Number.NaN
    requireWithin('fastener.preload', preload, 0, 5e5, 'N')
    clamp += preload * (stiffness.groups[group]?.uprightShare ?? 0)
  }
  return Math.max(0, clamp)
}

/** Capacity of the register with the pressure of its own fit taken off. */
function registerCapacityOf(input: CapJointInput): number {
  const { register, capModulus, blockModulus } = input
  const { span, interference } = register
  const own = span === undefined ? 0 : fitPressure(interference, span, capModulus, blockModulus)
  return registerCapacity(register, Math.min(own, register.allowablePressure))
}

/**
 * The joint of a main cap, composed: clamp of all fasteners resolved upright, embedding,
 * girdle, friction at the parting face, register, cross bolts.
 *
 * *Separation margin* = openingLoad / pull; *grip margin* = gripCapacity(pull) / side (below
 * 1 the faces slip and fret); *hold margin* = holdCapacity(pull) / side (below 1 the cap
 * walks). A girdle's share is taken off pull and side before the joint sees them, so the
 * capacities are of the whole load on the cap. The cap is taken as rigid: inner and outer
 * fasteners of one stiffness share alike. A leaning pair is not credited with holding sideways.
 *
 * @param input - see {@link CapJointInput}
 * @param stiffness - from {@link capJointStiffness}; worked from the input when left out
 * @returns capacities; their pulls are N, at least 0
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., sections 8–4 to 8–9; VDI 2230
 */
export function capJoint(
  input: CapJointInput,
  stiffness: CapJointStiffness = capJointStiffness(input),
): CapJoint {
  const { friction, fasteners, embeddingLoss } = input
  requireWithin('friction', friction, 0, 1)
  const preloads = fasteners.map(({ preload }) => preload)
  const { clamp: added, loadLeft } = girdleEffect(input.girdle)
  const bolted = clampAfterEmbedding(stiffness, preloads, embeddingLoss, input.thermalStretch)
  const clamp = bolted + added
  const { loadFactor, groups } = stiffness
  const unloading = (1 - loadFactor) * loadLeft
  const register = registerCapacityOf(input)
  const cross = input.crossBolts ? crossBoltCapacity(input.crossBolts) : 0
  const residualClamp = (pull: number) => {
    requireWithin('pull', pull, 0, 1e7, 'N')
    return Math.max(0, clamp - unloading * pull)
  }
  return {
    clamp,
    loadFactor,
    openingLoad: clamp / unloading,
    registerCapacity: register,
    crossCapacity: cross,
    residualClamp,
    gripCapacity: (pull) => (friction * residualClamp(pull)) / loadLeft,
    holdCapacity: (pull) => (friction * residualClamp(pull) + register + cross) / loadLeft,
    fastenerLoad: (group, pull) => (groups[group]?.loadPerPull ?? Number.NaN) * pull * loadLeft,
  }
}
