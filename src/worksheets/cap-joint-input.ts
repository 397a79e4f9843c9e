import type { CapJointInput } from '../mechanics/cap-joint.ts'
import { indentationPressure, type Material, materialOf } from '../mechanics/materials.ts'
import { FACE_FRICTION } from '../mechanics/parting-face.ts'
import { thermalStretch } from '../mechanics/thermal-preload.ts'
import type { CapJointInputs } from './cap-joint-fields.ts'
import { capFastener, type Moduli } from './cap-joint-stiffness.ts'
import { present } from './worksheet.ts'

/** Materials of both sides of the joint. */
export interface Pair {
  readonly cap: Material
  readonly block: Material
}

/** The joint as the mechanics want it, with the defaults that the fields state. */
export function jointInput(input: CapJointInputs, pair: Pair, moduli: Moduli): CapJointInput {
  const { crossBoltCount = 0, crossBoltPreload = 0, crossBoltShear } = input
  const softer = Math.min(indentationPressure(pair.cap), indentationPressure(pair.block))
  return {
    fasteners: input.fasteners.map(capFastener),
    capModulus: moduli.cap,
    blockModulus: moduli.block,
    loadIntroduction: input.loadIntroduction ?? 1,
    friction: input.friction ?? FACE_FRICTION[input.faces ?? 'dry'].likely,
    embeddingLoss: input.embedding ?? 0,
    thermalStretch: input.thermalStretch ?? warmStretch(input, pair),
    register: {
      height: input.registerHeight ?? 0,
      length: input.registerLength ?? 0,
      interference: input.interference ?? 0,
      allowablePressure: input.allowablePressure ?? softer,
      span: input.registerSpan,
    },
    crossBolts: {
      count: crossBoltCount,
      preload: crossBoltPreload,
      ...present({ shearCapacity: crossBoltShear }),
    },
    girdle: { clampAdded: input.girdleClamp, stiffnessShare: input.girdleShare },
  }
}

/** Alloy steel, when the fastener's own expansion is not given. */
const FASTENER_EXPANSION = materialOf('steel-4140-tempered-1000f').expansion

/** Growth of cap and block beyond the first kind of fastener's. */
function warmStretch(
  { warmRise, fastenerExpansion, fasteners }: CapJointInputs,
  pair: Pair,
): number {
  const first = fasteners[0]
  if (warmRise === undefined || first === undefined) return 0
  const { diameter } = first.thread
  const inBlock = Math.min(first.engagement ?? 1.5 * diameter, diameter) / 2
  const layers = [
    { thickness: first.grip, expansion: pair.cap.expansion },
    { thickness: inBlock, expansion: pair.block.expansion },
  ]
  return thermalStretch(layers, fastenerExpansion ?? FASTENER_EXPANSION, warmRise)
}
