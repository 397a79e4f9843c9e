import { type CapJoint, capJoint } from '../mechanics/cap-joint.ts'
import type { CapJointStiffness } from '../mechanics/cap-joint-stiffness.ts'
import { materialOf } from '../mechanics/materials.ts'
import { FACE_FRICTION } from '../mechanics/parting-face.ts'
import { fastenerFactors } from './cap-joint-factors.ts'
import { type CapJointInputs, capJointFields } from './cap-joint-fields.ts'
import { capJointFromBuild } from './cap-joint-from-build.ts'
import { jointInput } from './cap-joint-input.ts'
import { jointPicture } from './cap-joint-picture.ts'
import { capacitySteps, clampSteps } from './cap-joint-steps.ts'
import { jointStiffness } from './cap-joint-stiffness.ts'
import type { Print } from './print.ts'
import { type Result, type Worked, worksheet } from './worksheet.ts'

/** A main cap clamped to its block: what separates it, what makes it slip, what makes it walk. */
export const capJointSheet = worksheet({
  name: 'cap-joint',
  title: 'Clamp of a main cap',
  summary:
    'How much clamp the faces keep under load, and what friction and register hold sideways.',
  fields: capJointFields,
  groups: [
    { title: 'Fasteners', fields: ['fasteners', 'grade'] },
    { title: 'Loads on the cap', fields: ['pull', 'side'] },
    { title: 'Faces and materials', fields: ['faces', 'capMaterial', 'blockMaterial'] },
    { title: 'Register', fields: ['registerHeight', 'registerLength', 'interference'] },
    {
      title: 'Cross bolts and girdle',
      fields: [
        'crossBoltCount',
        'crossBoltPreload',
        'crossBoltShear',
        'girdleClamp',
        'girdleShare',
      ],
      folded: true,
    },
    {
      title: 'Settling and warmth',
      fields: ['embedding', 'warmRise', 'fastenerExpansion', 'thermalStretch'],
      folded: true,
    },
    {
      title: 'Friction, strength and stiffness as figures',
      fields: [
        'friction',
        'proofStrength',
        'allowablePressure',
        'registerSpan',
        'capModulus',
        'blockModulus',
        'loadIntroduction',
        'layers',
      ],
      folded: true,
    },
  ],
  example: {
    fasteners: [{ count: 2, thread: '1/2-13', preload: '12000 lbf', grip: '2 in', kind: 'bolt' }],
    grade: 'sae-8',
    pull: '9000 lbf',
    side: '4000 lbf',
    faces: 'oiled',
    capMaterial: 'gray-iron-30',
    blockMaterial: 'gray-iron-30',
    registerHeight: '0.2 in',
    registerLength: '0.9 in',
    interference: '0.001 in',
  },
  names: {
    'fastener.count': 'fasteners.0.count',
    'fastener.lean': 'fasteners.0.lean',
    'fastener.nominalDiameter': 'fasteners.0.thread',
    'fastener.grip': 'fasteners.0.grip',
    'fastener.engagement': 'fasteners.0.engagement',
    'fastener.shankLength': 'fasteners.0.shankLength',
    'fastener.headDiameter': 'fasteners.0.headDiameter',
    'fastener.preload': 'fasteners.0.preload',
    shankArea: 'fasteners.0.shankDiameter',
    stressArea: 'fasteners.0.thread',
    shankLength: 'fasteners.0.shankLength',
    threadLength: 'fasteners.0.grip',
    'effective length': 'fasteners.0.grip',
    modulus: 'fasteners.0.modulus',
    nominalDiameter: 'fasteners.0.thread',
    pitch: 'fasteners.0.thread',
    holeDiameter: 'fasteners.0.thread',
    smallDiameter: 'fasteners.0.headDiameter',
    widestDiameter: 'fasteners.0.spreadDiameter',
    thickness: 'fasteners.0.grip',
    preload: 'fasteners.0.preload',
    factor: 'fasteners.0.stiffness',
    load: 'pull',
    added: 'pull',
    mean: 'pull',
    embeddingLoss: 'embedding',
    rise: 'warmRise',
    'register.height': 'registerHeight',
    'register.length': 'registerLength',
    'register.allowablePressure': 'allowablePressure',
    span: 'registerSpan',
    'crossBolts.count': 'crossBoltCount',
    'crossBolts.preload': 'crossBoltPreload',
    'crossBolts.shearCapacity': 'crossBoltShear',
    'girdle.clampAdded': 'girdleClamp',
    'girdle.stiffnessShare': 'girdleShare',
  },
  work,
  fromBuild: capJointFromBuild,
})

function work(input: CapJointInputs, print: Print): Worked {
  const pair = {
    cap: materialOf(input.capMaterial ?? 'gray-iron-30'),
    block: materialOf(input.blockMaterial ?? 'gray-iron-30'),
  }
  const moduli = {
    cap: input.capModulus ?? pair.cap.modulus,
    block: input.blockModulus ?? pair.block.modulus,
  }
  const full = jointInput(input, pair, moduli)
  const { stiffness, steps } = jointStiffness(input, full.fasteners, moduli, print)
  const joint = capJoint(full, stiffness)
  const factors = fastenerFactors(input, full, stiffness, print)
  return {
    results: [
      ...loadResults(joint, input, print),
      ...jointResults(joint, print),
      ...stiffnessResults(stiffness, print),
      ...factors.results,
    ],
    steps: [
      ...steps,
      ...clampSteps(input, full, stiffness, joint, print),
      ...capacitySteps(input, full, joint, print),
      ...factors.steps,
    ],
    notes: notes(input),
    picture: jointPicture(joint, input, full.friction, print),
  }
}

function stiffnessResults({ groups, loadFactor }: CapJointStiffness, print: Print): Result[] {
  const many = groups.length > 1
  const own = groups.flatMap(({ fastener, members }, index) => {
    const [suffix, name] = many ? [`${index + 1}`, `, kind ${index + 1}`] : ['', '']
    return [
      print.result(
        `fastenerStiffness${suffix}`,
        `Stiffness of one fastener${name}`,
        fastener,
        'stiffness',
      ),
      print.result(
        `memberStiffness${suffix}`,
        `Stiffness of its clamped parts${name}`,
        members,
        'stiffness',
      ),
    ]
  })
  return [...own, print.ratio('loadFactor', 'Share of the pull the fasteners feel', loadFactor)]
}

function jointResults(joint: CapJoint, print: Print): Result[] {
  return [
    print.result('clamp', 'Clamp at the parting face', joint.clamp, 'force'),
    print.result('openingLoad', 'Pull that opens the parting face', joint.openingLoad, 'force'),
    print.result(
      'registerCapacity',
      'Side push the register holds',
      joint.registerCapacity,
      'force',
    ),
    print.result('crossCapacity', 'Side push the cross bolts hold', joint.crossCapacity, 'force'),
  ]
}

function loadResults(joint: CapJoint, { pull = 0, side }: CapJointInputs, print: Print): Result[] {
  const grip = joint.gripCapacity(pull)
  const hold = joint.holdCapacity(pull)
  const margins =
    side === undefined
      ? []
      : [
          print.ratio('holdMargin', 'Hold margin: friction, register, cross bolts', hold / side),
          print.ratio('gripMargin', 'Grip margin: friction alone', grip / side),
        ]
  return [
    ...margins,
    print.ratio('separationMargin', 'Separation margin', joint.openingLoad / pull),
    print.result('residualClamp', 'Clamp left under the pull', joint.residualClamp(pull), 'force'),
    print.result('gripCapacity', 'Side push friction holds under the pull', grip, 'force'),
    print.result('holdCapacity', 'Side push everything holds under the pull', hold, 'force'),
  ]
}

function notes({ friction, faces = 'dry' }: CapJointInputs): string[] {
  const rigid =
    'The cap is taken as rigid, so fasteners of one stiffness share alike. Bending of the cap and give of the block are outside this sheet.'
  if (friction !== undefined) return [rigid]
  const { low, likely, high, source } = FACE_FRICTION[faces]
  return [
    `Friction of ${faces} faces is taken as ${likely}; tables give ${low} to ${high} (${source}).`,
    rigid,
  ]
}
