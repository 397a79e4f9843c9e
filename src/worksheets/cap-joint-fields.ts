import { choice, optional, pure, quantity, type Values } from './fields.ts'
import { GRADES, MATERIAL_WORDS } from './preload-fields.ts'
import { list } from './read-record.ts'
import { thread } from './thread-field.ts'

const fastenerFields = {
  count: pure('How many', 'Leaning ones stand in mirrored pairs.'),
  thread: thread('Thread'),
  preload: quantity('force', 'Preload of each'),
  grip: quantity('length', 'Clamped length', 'In the cap, head or washer to parting face.'),
  kind: optional(
    choice('Kind', {
      bolt: 'Bolt in a tapped hole',
      stud: 'Stud in a tapped hole',
      through: 'Bolt and nut, right through',
    }),
    'Left out: bolt in a tapped hole.',
  ),
  engagement: optional(
    quantity('length', 'Thread engaged in the block'),
    'Left out: 1.5 times the thread.',
  ),
  headDiameter: optional(
    quantity('length', 'Face under head, nut or washer'),
    'Left out: 1.5 times the thread.',
  ),
  lean: optional(quantity('angle', 'Lean from upright'), 'Left out: upright.'),
  shankLength: optional(
    quantity('length', 'Plain shank within the clamped length'),
    'Left out: by the kind.',
  ),
  shankDiameter: optional(quantity('length', 'Diameter of the shank'), 'Left out: the thread’s.'),
  modulus: optional(quantity('modulus', 'Elastic modulus of the fastener'), 'Left out: steel.'),
  spreadDiameter: optional(
    quantity('length', 'Greatest width the cap leaves the pressure cone'),
    'Left out: no limit.',
  ),
  stiffness: optional(quantity('stiffness', 'Stiffness of each fastener, as a figure')),
  memberStiffness: optional(quantity('stiffness', 'Stiffness of its clamped parts, as a figure')),
}
export type FastenerInput = Values<typeof fastenerFields>

export const capJointFields = {
  fasteners: list('Fasteners of the cap', fastenerFields, {
    least: 1,
    most: 3,
    row: 'Fasteners of one kind',
    open: ['count', 'thread', 'preload', 'grip', 'kind'],
  }),
  pull: optional(quantity('force', 'Pull on the cap', 'Away from the parting face.')),
  side: optional(quantity('force', 'Side push on the cap', 'Along the parting face.')),
  faces: optional(
    choice('Parting faces', { dry: 'Clean and dry', oiled: 'Oiled' }),
    'Left out: dry.',
  ),
  friction: optional(pure('Friction of the parting faces', 'Comes before the state of the faces.')),
  capMaterial: optional(choice('Material of the cap', MATERIAL_WORDS), 'Left out: gray iron 30.'),
  blockMaterial: optional(
    choice('Material of the block', MATERIAL_WORDS),
    'Left out: gray iron 30.',
  ),
  registerHeight: optional(quantity('length', 'Height of the register'), 'Left out: none.'),
  registerLength: optional(quantity('length', 'Length of the register along the crank')),
  interference: optional(
    quantity('fine', 'Fit of the register', 'Cap wider than its seat; negative when loose.'),
    'Left out: 0.',
  ),
  allowablePressure: optional(
    quantity('stress', 'Pressure the register’s wall bears'),
    'Left out: of the softer material.',
  ),
  registerSpan: optional(
    quantity('length', 'Distance between the register’s walls'),
    'Left out: the fit’s own pressure is not counted.',
  ),
  grade: optional(choice('Grade of the fasteners', GRADES)),
  proofStrength: optional(quantity('stress', 'Proof strength', 'Comes before the grade’s.')),
  embedding: optional(
    quantity('fine', 'Settling of the faces, summed for one fastener'),
    'Left out: none.',
  ),
  warmRise: optional(quantity('rise', 'Warmer than at assembly by'), 'Left out: as cold.'),
  fastenerExpansion: optional(
    quantity('expansion', 'Expansion of the fastener'),
    'Left out: alloy steel.',
  ),
  thermalStretch: optional(
    quantity('fine', 'Parts outgrow the fasteners by', 'Comes before the temperature.'),
  ),
  capModulus: optional(
    quantity('modulus', 'Elastic modulus of the cap'),
    'Left out: the material’s.',
  ),
  blockModulus: optional(
    quantity('modulus', 'Elastic modulus of the block'),
    'Left out: the material’s.',
  ),
  layers: optional(
    list(
      'Clamped layers, from the head down',
      { thickness: quantity('length', 'Thickness'), modulus: quantity('modulus', 'Modulus') },
      { least: 1, most: 4, row: 'Layer' },
      'In place of cap and half a diameter of block.',
    ),
  ),
  loadIntroduction: optional(
    pure('Where the pull enters, n', '1 under the heads, less where it enters lower.'),
    'Left out: 1.',
  ),
  crossBoltCount: optional(pure('Cross bolts, both sides'), 'Left out: none.'),
  crossBoltPreload: optional(quantity('force', 'Preload of each cross bolt')),
  crossBoltShear: optional(
    quantity('force', 'Most that each cross bolt’s thread bears'),
    'Left out: no limit.',
  ),
  girdleClamp: optional(quantity('force', 'Clamp that a girdle adds'), 'Left out: no girdle.'),
  girdleShare: optional(
    quantity('share', 'Share of the loads through a girdle'),
    'Left out: none.',
  ),
}
export type CapJointInputs = Values<typeof capJointFields>
