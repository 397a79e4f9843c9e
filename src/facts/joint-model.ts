import { type Build, choiceOf, siOf, threadOf } from '../build/build.ts'
import { type CapFastener, capJointStiffness } from '../mechanics/cap-joint-stiffness.ts'
import { crossBoltCapacity } from '../mechanics/cross-bolts.ts'
import { type FastenerGrade, fastenerStrength } from '../mechanics/fastener-grades.ts'
import { LUBRICANTS, type Lubricant } from '../mechanics/lubricant-friction.ts'
import { type MaterialId, materialOf } from '../mechanics/materials.ts'
import {
  preloadForTorque,
  proofLoad,
  shareOfProof,
  torqueForPreload,
} from '../mechanics/preload.ts'
import { threadLimits } from '../mechanics/thread-limits.ts'
import { shearAreas, strippingLoad } from '../mechanics/thread-strip.ts'
import { type ThreadForm, tensileStressArea } from '../mechanics/threads.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { crownOf } from './crown.ts'

/**
 * A cap's joint boiled down to what does not change from sample to sample: every
 * margin is then a line in pull, side push, preload, friction and strength.
 */
export interface JointModel {
  /** Upright clamp of all fasteners at nominal preload, before settling, N. */
  readonly clamp: number
  /** Clamp lost for each m of settling, N/m. */
  readonly lossPerEmbedding: number
  /** Share of the pull that the fasteners feel. */
  readonly loadFactor: number
  /** Share of pull and side push that the cap's own joint sees; less than 1 with a girdle. */
  readonly loadLeft: number
  /** Size of one register wall, m, and the pressure it bears, Pa. */
  readonly registerHeight: number
  readonly registerLength: number
  readonly registerPressure: number
  /** N */
  readonly crossCapacity: number
  /** Goodman margin × pull, N: the pull at which the crown's endurance is used up. */
  readonly endurablePull: number
  /** d ln(endurablePull) for each d ln of a cap size, by fact key. */
  readonly strengthExponents: ReadonlyMap<string, number>
  /** Per kind of fastener. */
  readonly groups: readonly JointGroup[]
  /** Inner fastener: nominal preload, N, and torque, N m: what sets it, or what would come to it. */
  readonly preload: number
  readonly torque: number
  readonly shareOfProof: number
  readonly nutFactor: number
}

/** Fasteners of one kind in the joint of a cap. */
export interface JointGroup {
  readonly preload: number
  readonly proofLoad: number
  readonly strippingLoad: number
  /** Load along one fastener for each N of pull. */
  readonly loadPerPull: number
}

/**
 * The joint of one main cap of a build.
 *
 * @throws {DomainError} if a size is outside the range of the mechanics
 */
export function jointModel(build: Build, rulebook: Rulebook): JointModel {
  const { joint, fastenings } = rulebook
  const fastening = fastenings[choiceOf(build, 'capFastening')] as Rulebook['fastenings'][string]
  const cap = materialOf(joint.capMaterial[choiceOf(build, 'capMaterial')] as MaterialId)
  const block = materialOf(joint.blockMaterial[choiceOf(build, 'blockMaterial')] as MaterialId)
  const used = fastenersOf(build, rulebook, fastening)
  const inner = used[0] as Fastener
  const stiffness = capJointStiffness({
    fasteners: used.map(({ spec }) => spec),
    capModulus: cap.modulus,
    blockModulus: block.modulus,
  })
  const loadLeft = 1 - (fastening.girdle ? joint.girdle.stiffnessShare : 0)
  const pressure = Math.min(
    wallPressure(rulebook, choiceOf(build, 'capMaterial'), cap.compressive),
    wallPressure(rulebook, choiceOf(build, 'blockMaterial'), block.compressive),
  )
  const strength = crownOf(build, rulebook, cap)
  return {
    clamp: used.reduce(
      (sum, { spec }, index) => sum + spec.preload * (stiffness.groups[index]?.uprightShare ?? 0),
      0,
    ),
    lossPerEmbedding: stiffness.lossPerEmbedding,
    loadFactor: stiffness.loadFactor,
    loadLeft,
    registerHeight: siOf(build, 'registerHeight'),
    registerLength: siOf(build, 'capWidth'),
    registerPressure: pressure,
    crossCapacity: crossCapacity(build, rulebook, fastening.crossBolts),
    endurablePull: strength.pull,
    strengthExponents: strength.exponents,
    groups: used.map(({ spec, proof, strip }, index) => ({
      preload: spec.preload,
      proofLoad: proof,
      strippingLoad: strip,
      loadPerPull: (stiffness.groups[index]?.loadPerPull ?? 0) * loadLeft,
    })),
    preload: inner.spec.preload,
    torque: inner.torque,
    shareOfProof: inner.share,
    nutFactor: nutFactorOf(build),
  }
}

/** The inner fasteners, and the outer ones where there are any. */
function fastenersOf(
  build: Build,
  rulebook: Rulebook,
  { inner, outer, outerSize, outerLean }: Rulebook['fastenings'][string],
): Fastener[] {
  const used = [fastener(build, rulebook, 1, 0, inner)]
  const lean = (outerLean * Math.PI) / 180
  return outer > 0 ? [...used, fastener(build, rulebook, outerSize, lean, outer)] : used
}

function wallPressure({ joint }: Rulebook, material: string, compressive: number): number {
  const share = joint.registerPressureShare
  return compressive * (material === 'gray-iron' ? share['gray-iron'] : share.other)
}

function nutFactorOf(build: Build): number {
  return LUBRICANTS[choiceOf(build, 'fastenerLubricant') as Lubricant].nutFactor.likely
}

/** Share of proof load where an angle or a stretch sets the preload, and torque does not. */
function turnedToOf(build: Build, { turnedTo }: Rulebook['joint']): number | undefined {
  const way = choiceOf(build, 'tightening')
  return way === 'torque-angle' || way === 'stretch' ? turnedTo[way] : undefined
}

type BlockMaterial = 'gray-iron' | 'compacted-iron' | 'aluminium'

interface Fastener {
  spec: CapFastener
  proof: number
  strip: number
  share: number
  torque: number
}

/** One kind of fastener: the inner ones as given, outer ones smaller, to the same share of proof. */
function fastener(
  build: Build,
  { joint }: Rulebook,
  size: number,
  lean: number,
  count: number,
): Fastener {
  const thread = threadOf(build)
  const form: ThreadForm = thread.series === 'unified' ? 'un' : 'iso'
  const [diameter, pitch] = [thread.diameter * size, thread.pitch * size]
  const grade = fastenerStrength(choiceOf(build, 'fastenerGrade') as FastenerGrade, diameter)
  const area = tensileStressArea(diameter, pitch, form)
  const innerArea = tensileStressArea(thread.diameter, thread.pitch, form)
  const turnedTo = turnedToOf(build, joint)
  const innerPreload =
    turnedTo === undefined
      ? preloadForTorque(siOf(build, 'fastenerTorque'), thread.diameter, nutFactorOf(build))
      : turnedTo * proofLoad(innerArea, grade.proof)
  const material = choiceOf(build, 'blockMaterial') as BlockMaterial
  const engagement = joint.engagementOverDiameter[material] * diameter
  return {
    spec: {
      count: Math.max(1, count),
      lean,
      nominalDiameter: diameter,
      pitch,
      preload: (innerPreload * area) / innerArea,
      modulus: FASTENER_MODULUS,
      grip: joint.gripOverCapHeight.value * siOf(build, 'capHeight'),
      engagement,
      headDiameter: joint.headOverDiameter.value * diameter,
      kind: choiceOf(build, 'fastenerKind') as 'bolt' | 'stud',
      form,
    },
    proof: proofLoad(area, grade.proof),
    strip: strippingLoad({
      areas: shearAreas(pitch, threadLimits(diameter, pitch, form)),
      engagement,
      screwShear: SHEAR_OVER_TENSILE * grade.ultimate,
      holeShear: materialOf(joint.blockMaterial[material] as MaterialId).shear,
    }).load,
    share: shareOfProof(innerPreload, innerArea, grade.proof),
    torque:
      turnedTo === undefined
        ? siOf(build, 'fastenerTorque')
        : torqueForPreload(innerPreload, thread.diameter, nutFactorOf(build)),
  }
}

/** Shear over tensile strength of steel: distortion energy, 1/√3 (Shigley, 9th ed., section 5–5). */
const SHEAR_OVER_TENSILE = 0.577
/** E of steel, Pa: Shigley, Table A–5. */
const FASTENER_MODULUS = 207e9

function crossCapacity(build: Build, { joint }: Rulebook, count: number): number {
  if (count === 0) return 0
  const { diameter, pitch, series } = threadOf(build)
  const size = joint.crossBolt.sizeOverInner
  const area = tensileStressArea(diameter * size, pitch * size, series === 'unified' ? 'un' : 'iso')
  const { proof } = fastenerStrength(joint.crossBoltGrade as FastenerGrade, diameter * size)
  return crossBoltCapacity({ count, preload: joint.crossBolt.proofShare * proofLoad(area, proof) })
}
