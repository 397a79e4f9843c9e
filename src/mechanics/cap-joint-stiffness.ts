import { fastenerStiffness } from './bolted-joint.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { memberStiffness } from './member-stiffness.ts'
import { type ThreadForm, tensileStressArea } from './threads.ts'

/** Fasteners of one kind in one cap; leaning ones stand in mirrored pairs. */
export interface CapFastener {
  /** 1 to 12 */
  readonly count: number
  /** Angle from upright, rad; 0 to 0.7, 0 = straight */
  readonly lean: number
  /** d, m; 0.004 to 0.030 */
  readonly nominalDiameter: number
  /** P, m; above 0, up to d/4 */
  readonly pitch: number
  /** N each along the fastener, as tightened; 0 to 5e5 */
  readonly preload: number
  /** E of the fastener, Pa */
  readonly modulus: number
  /** Clamped length in the cap, m; 0.002 to 0.3 */
  readonly grip: number
  /** Plain shank within the grip, m; told from the kind when left out */
  readonly shankLength?: number | undefined
  /** Diameter of the plain shank, m; d when left out, less for a necked one */
  readonly shankDiameter?: number | undefined
  /** Thread engaged in the block, m; 0.002 to 0.2 */
  readonly engagement: number
  /** Face under head, nut or washer, m; above d */
  readonly headDiameter: number
  readonly kind: 'bolt' | 'stud'
  readonly form?: ThreadForm | undefined
  /** Greatest diameter the cap leaves the pressure cone, m; no limit when left out */
  readonly spreadDiameter?: number | undefined
}

/** What of the joint's input fixes its stiffness; no preload, friction or fit is read. */
export interface CapStiffnessInput {
  readonly fasteners: readonly CapFastener[]
  readonly capModulus: number
  readonly blockModulus: number
  /** n: 1 = the pull enters under the heads (Shigley), less where it enters lower; 0 to 1 */
  readonly loadIntroduction?: number | undefined
}

export interface FastenerStiffness {
  /** kb, one fastener, N/m */
  readonly fastener: number
  /** km, members of one fastener, N/m */
  readonly members: number
  /** Upright clamp for each N of preload of the whole group, count × cos(lean) */
  readonly uprightShare: number
  /** Load added along one fastener for each N of pull on the cap */
  readonly loadPerPull: number
}

export interface CapJointStiffness {
  readonly groups: readonly FastenerStiffness[]
  /** n C of the whole cap: share of the pull that the fasteners feel, 0 to 1 */
  readonly loadFactor: number
  /** Upright clamp lost for each m of embedding, N/m */
  readonly lossPerEmbedding: number
  /** Upright stiffness of the clamped joint, fasteners and members side by side, N/m */
  readonly upright: number
}

/**
 * Plain shank within the grip when the drawing does not say: a bolt is plain but for half a
 * diameter above the parting face; a stud has as much thread again at its nut.
 */
function shankLengthOf(fastener: CapFastener): number {
  const { kind, grip, nominalDiameter } = fastener
  const thread = (kind === 'stud' ? 1 : 0.5) * nominalDiameter
  return fastener.shankLength ?? Math.max(0, grip - thread)
}

function requireFastener(fastener: CapFastener): void {
  const { count, lean, nominalDiameter, grip, engagement, headDiameter } = fastener
  requireWithin('fastener.count', count, 1, 12)
  requireWithin('fastener.lean', lean, 0, 0.7, 'rad')
  requireWithin('fastener.nominalDiameter', nominalDiameter, 0.004, 0.03, 'm')
  requireWithin('fastener.grip', grip, 0.002, 0.3, 'm')
  requireWithin('fastener.engagement', engagement, 0.002, 0.2, 'm')
  requireWithin('fastener.shankLength', fastener.shankLength ?? 0, 0, grip, 'm')
  if (!(headDiameter > nominalDiameter && headDiameter <= 4 * nominalDiameter)) {
    throw new DomainError('fastener.headDiameter', headDiameter, `${nominalDiameter} m to 4 times`)
  }
}

function stiffnessOf(fastener: CapFastener, input: CapStiffnessInput): [number, number] {
  requireFastener(fastener)
  const { nominalDiameter: d, grip, modulus, headDiameter } = fastener
  // Shigley's Table 8–7: half a diameter of the thread in the block still stretches.
  const inBlock = Math.min(fastener.engagement, d) / 2
  const shank = shankLengthOf(fastener)
  const shankArea = (Math.PI / 4) * (fastener.shankDiameter ?? d) ** 2
  const area = tensileStressArea(d, fastener.pitch, fastener.form)
  const kb = fastenerStiffness(modulus, shankArea, area, shank, grip - shank + inBlock)
  const layers = [
    { thickness: grip, modulus: input.capModulus },
    { thickness: inBlock, modulus: input.blockModulus },
  ]
  return [kb, memberStiffness(layers, d, headDiameter, fastener.spreadDiameter)]
}

/**
 * Stiffness of a cap's joint: fasteners and members of every group resolved upright and set
 * side by side under a cap taken as rigid. None of it depends on preload, friction or fit, so
 * it is worked once and given to {@link capJoint} for every sample.
 *
 * @param input - see {@link CapStiffnessInput}
 * @returns stiffness, load factor and load of each fastener
 * @throws {DomainError} if a value is not a finite number in its range
 * @see Shigley's Mechanical Engineering Design, 9th ed., eqs 8–17, 8–20, Table 8–7; lean
 *   resolved by statics: stiffness k cos² upright, stretch cos
 */
export function capJointStiffness(input: CapStiffnessInput): CapJointStiffness {
  const { fasteners, loadIntroduction = 1 } = input
  if (fasteners.length === 0) throw new DomainError('fasteners', 'empty', 'one group or more')
  requireWithin('loadIntroduction', loadIntroduction, 0, 1)
  const pairs = fasteners.map((fastener) => stiffnessOf(fastener, input))
  let bolts = 0
  let upright = 0
  let lossPerEmbedding = 0
  for (const [index, fastener] of fasteners.entries()) {
    const [kb, km] = pairs[index] as [number, number]
    const cosine = Math.cos(fastener.lean)
    bolts += fastener.count * kb * cosine ** 2
    upright += fastener.count * (kb + km) * cosine ** 2
    lossPerEmbedding += (fastener.count * cosine) / (1 / kb + 1 / km)
  }
  const groups = fasteners.map((fastener, index) => {
    const [kb, km] = pairs[index] as [number, number]
    const cosine = Math.cos(fastener.lean)
    const loadPerPull = (loadIntroduction * kb * cosine) / upright
    return { fastener: kb, members: km, uprightShare: fastener.count * cosine, loadPerPull }
  })
  return { groups, loadFactor: (loadIntroduction * bolts) / upright, lossPerEmbedding, upright }
}
