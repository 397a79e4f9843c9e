import type { CapJointInput } from '../../src/mechanics/cap-joint.ts'
import type { CapFastener } from '../../src/mechanics/cap-joint-stiffness.ts'

/** A half-inch bolt of an iron cap; made up. */
export const bolt: CapFastener = {
  count: 2,
  lean: 0,
  nominalDiameter: 0.0127,
  pitch: 0.0254 / 13,
  preload: 45e3,
  modulus: 207e9,
  grip: 0.055,
  engagement: 0.025,
  headDiameter: 0.019,
  kind: 'bolt',
}

/** A cap on two of them, with a register; made up. */
export const twoBolt: CapJointInput = {
  fasteners: [bolt],
  capModulus: 101e9,
  blockModulus: 101e9,
  friction: 0.15,
  embeddingLoss: 8e-6,
  register: { height: 0.005, length: 0.025, interference: 0.02e-3, allowablePressure: 150e6 },
}
