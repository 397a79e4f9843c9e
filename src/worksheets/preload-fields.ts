import { FASTENER_GRADES, type FastenerGrade } from '../mechanics/fastener-grades.ts'
import { MATERIAL_IDS, type MaterialId } from '../mechanics/materials.ts'
import { choice, optional, pure, quantity, type Values } from './fields.ts'
import { thread } from './thread-field.ts'

const GRADE_WORDS: Readonly<Record<FastenerGrade, string>> = {
  'sae-2': 'SAE grade 2',
  'sae-5': 'SAE grade 5',
  'sae-7': 'SAE grade 7',
  'sae-8': 'SAE grade 8',
  'iso-8.8': 'ISO 8.8',
  'iso-10.9': 'ISO 10.9',
  'iso-12.9': 'ISO 12.9',
  'high-strength-stud': 'High-strength stud, 190 ksi',
}

const LUBRICANT_WORDS = {
  dry: 'Dry, black',
  oil: 'Engine oil',
  moly: 'Moly paste',
  'anti-seize': 'Anti-seize',
  'zinc-plated': 'Zinc-plated',
  'cadmium-plated': 'Cadmium-plated',
} as const

const TIGHTENING_WORDS = {
  'stretch-measured': 'Stretch measured',
  'yield-controlled': 'Yield controlled',
  'torque-angle': 'Torque, then angle',
  'torque-measured-friction': 'Torque, friction measured',
  'torque-estimated-friction': 'Torque, friction estimated',
  'power-driver': 'Power driver',
} as const

/** Materials by id, as words: `gray-iron-30` → “Gray iron 30”. */
export const MATERIAL_WORDS = Object.fromEntries(
  MATERIAL_IDS.map((id) => [id, id.replaceAll('-', ' ').replace(/^./, (a) => a.toUpperCase())]),
) as Readonly<Record<MaterialId, string>>

export const GRADES = Object.fromEntries(
  FASTENER_GRADES.map((grade) => [grade, GRADE_WORDS[grade]]),
) as Readonly<Record<FastenerGrade, string>>

export const preloadFields = {
  thread: thread('Thread', 'As it is written on a parts list: 1/2-13, 7/16-14, M11x1.25.'),
  torque: optional(quantity('torque', 'Torque on the wrench')),
  preload: optional(quantity('force', 'Preload')),
  shareOfProof: optional(quantity('share', 'Share of proof load', 'Needs a grade or a strength.')),
  stretch: optional(
    quantity('fine', 'Stretch of the fastener', 'Needs the stiffness of the fastener.'),
  ),
  turnAngle: optional(
    quantity('angle', 'Turn after snug', 'Needs the stiffness of fastener and of the members.'),
  ),
  nutFactor: optional(pure('Nut factor K', 'Comes before friction and lubricant.')),
  lubricant: optional(choice('Lubricant', LUBRICANT_WORDS), 'Left out: engine oil.'),
  threadFriction: optional(pure('Friction in the thread')),
  collarFriction: optional(pure('Friction under the head or nut')),
  meanThreadDiameter: optional(
    quantity('length', 'Mean diameter of the thread'),
    'Left out: the pitch diameter.',
  ),
  meanCollarDiameter: optional(
    quantity('length', 'Mean diameter of the turning face'),
    'Left out: 1.25 times the thread.',
  ),
  grade: optional(choice('Grade', GRADES)),
  proofStrength: optional(quantity('stress', 'Proof strength', 'Comes before the grade’s.')),
  yieldStrength: optional(quantity('stress', 'Yield strength', 'Comes before the grade’s.')),
  stressArea: optional(quantity('area', 'Tensile stress area'), 'Left out: by the thread.'),
  tightening: optional(choice('Way of tightening', TIGHTENING_WORDS)),
  scatter: optional(quantity('share', 'Scatter of preload, ±', 'Comes before the way’s.')),
  fastenerStiffness: optional(quantity('stiffness', 'Stiffness of the fastener')),
  memberStiffness: optional(quantity('stiffness', 'Stiffness of the clamped parts')),
  utilisation: optional(
    quantity('share', 'Share of yield used by tension and twist'),
    'Left out: 90%.',
  ),
  faceDiameter: optional(quantity('length', 'Outer diameter of the head’s face')),
  holeDiameter: optional(quantity('length', 'Diameter of the hole')),
  engagement: optional(quantity('length', 'Thread engaged in the block')),
  blockMaterial: optional(choice('Material of the block', MATERIAL_WORDS)),
  blockShear: optional(
    quantity('stress', 'Shear strength of the block'),
    'Left out: of the material.',
  ),
  blockUltimate: optional(
    quantity('stress', 'Tensile strength of the block'),
    'Left out: of the material.',
  ),
  fastenerUltimate: optional(
    quantity('stress', 'Tensile strength of the fastener'),
    'Left out: of the grade.',
  ),
  fastenerShear: optional(
    quantity('stress', 'Shear strength of the fastener'),
    'Left out: 0.58 of its tensile strength.',
  ),
  screwMajorMin: optional(quantity('length', 'Least major diameter of the screw')),
  screwPitchMin: optional(quantity('length', 'Least pitch diameter of the screw')),
  holeMinorMax: optional(quantity('length', 'Greatest minor diameter of the hole')),
  holePitchMax: optional(
    quantity('length', 'Greatest pitch diameter of the hole'),
    'These four left out: limits of the usual fit, 2A/2B or 6g/6H.',
  ),
}
export type PreloadInput = Values<typeof preloadFields>
