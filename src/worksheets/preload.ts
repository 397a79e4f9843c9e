import { type FastenerStrength, fastenerStrength } from '../mechanics/fastener-grades.ts'
import { proofLoad } from '../mechanics/preload.ts'
import { tensileStressArea } from '../mechanics/threads.ts'
import { buildInputs, figureInput } from './from-build.ts'
import { type PreloadInput, preloadFields } from './preload-fields.ts'
import { nutFactorOf } from './preload-friction.ts'
import { preloadPicture } from './preload-picture.ts'
import { threadStripping } from './preload-strip.ts'
import {
  isTurned,
  type PreloadSpread,
  preloadSpread,
  type Tightened,
  tighten,
} from './preload-tighten.ts'
import { vdiPreload } from './preload-vdi.ts'
import type { Print } from './print.ts'
import {
  type BuildSource,
  published,
  type Result,
  type Step,
  type Worked,
  worksheet,
} from './worksheet.ts'

/** Any of these is what a preload comes of. */
const TIGHTENED_BY = ['preload', 'torque', 'stretch', 'turnAngle', 'shareOfProof']

/** Torque to preload and back, its scatter, and the thread that has to hold it. */
export const preload = worksheet({
  name: 'preload',
  title: 'Torque and preload',
  summary: 'What a torque clamps with, how far that scatters, and whether the thread holds it.',
  fields: preloadFields,
  groups: [
    { title: 'The fastener', fields: ['thread', 'grade', 'lubricant', 'tightening'] },
    {
      title: 'Give one of these',
      fields: ['torque', 'preload', 'shareOfProof'],
    },
    { title: 'Thread in the block', fields: ['engagement', 'blockMaterial'] },
    {
      title: 'Stretch or turn, in place of these',
      fields: ['stretch', 'turnAngle', 'fastenerStiffness', 'memberStiffness'],
      folded: true,
    },
    {
      title: 'Friction as figures',
      fields: [
        'nutFactor',
        'threadFriction',
        'collarFriction',
        'meanThreadDiameter',
        'meanCollarDiameter',
      ],
      folded: true,
    },
    {
      title: 'Strength and scatter as figures',
      fields: [
        'proofStrength',
        'yieldStrength',
        'fastenerUltimate',
        'fastenerShear',
        'stressArea',
        'scatter',
        'utilisation',
        'faceDiameter',
        'holeDiameter',
      ],
      folded: true,
    },
    {
      title: 'Thread limits and block strength as figures',
      fields: [
        'blockShear',
        'blockUltimate',
        'screwMajorMin',
        'screwPitchMin',
        'holeMinorMax',
        'holePitchMax',
      ],
      folded: true,
    },
  ],
  example: {
    thread: '1/2-13',
    torque: '85 lb ft',
    grade: 'sae-8',
    lubricant: 'oil',
    tightening: 'torque-estimated-friction',
    engagement: '0.9 in',
    blockMaterial: 'gray-iron-30',
  },
  names: {
    nominalDiameter: 'thread',
    pitch: 'thread',
    limits: 'holeMinorMax',
    'friction.thread': 'threadFriction',
    'friction.head': 'collarFriction',
    angle: 'turnAngle',
    screwShear: 'fastenerShear',
    holeShear: 'blockShear',
    screwUltimate: 'fastenerUltimate',
    holeUltimate: 'blockUltimate',
    'areas.screw': 'holeMinorMax',
    'areas.hole': 'screwMajorMin',
    load: TIGHTENED_BY,
    preload: TIGHTENED_BY,
  },
  work,
  fromBuild,
})

function work(input: PreloadInput, print: Print): Worked {
  const { thread } = input
  const area = input.stressArea ?? tensileStressArea(thread.diameter, thread.pitch, thread.form)
  const strength = input.grade && fastenerStrength(input.grade, thread.diameter)
  const proof = input.proofStrength ?? strength?.proof
  const proofForce = proof === undefined ? undefined : proofLoad(area, proof)
  const friction = nutFactorOf(input, print)
  const tightened = tighten(input, friction.factor, proofForce, print)
  const spread = preloadSpread(input, tightened.preload, print)
  const vdi = vdiPreload(input, friction, input.yieldStrength ?? strength?.yield, print)
  const stripping = threadStripping(input, area, tightened.preload, strength, print)
  const proofStep = proof !== undefined && proofForce !== undefined
  return {
    results: [
      print.result('preload', 'Preload', tightened.preload, 'force'),
      ...(isTurned(input) ? [] : [print.result('torque', 'Torque', tightened.torque, 'torque')]),
      print.ratio('nutFactor', 'Nut factor K', friction.factor),
      ...spreadResults(spread, print),
      print.result('stressArea', 'Tensile stress area', area, 'area'),
      ...proofResults(proofForce, tightened.preload, print),
      ...vdi.results,
      ...stripping.results,
    ],
    steps: [
      ...(input.stressArea === undefined ? [areaStep(input, area, print)] : []),
      ...(proofStep ? [proofLoadStep(area, proof, proofForce, strength, print)] : []),
      ...(friction.step ? [friction.step] : []),
      ...tightened.steps,
      ...(spread ? [spread.step] : []),
      ...vdi.steps,
      ...stripping.steps,
    ],
    notes: notes(tightened, vdi.atYield, print),
    picture: preloadPicture(tightened, spread, proofForce, vdi.atYield, print),
  }
}

function spreadResults(spread: PreloadSpread | undefined, print: Print): Result[] {
  if (!spread) return []
  return [
    print.result('preloadLow', 'Least preload', spread.low, 'force'),
    print.result('preloadHigh', 'Greatest preload', spread.high, 'force'),
    print.ratio('tighteningFactor', 'Tightening factor αA', spread.factor),
  ]
}

function proofResults(proofForce: number | undefined, force: number, print: Print): Result[] {
  if (proofForce === undefined) return []
  return [
    print.result('proofLoad', 'Proof load', proofForce, 'force'),
    print.result('shareOfProof', 'Preload as a share of proof load', force / proofForce, 'share'),
  ]
}

function areaStep({ thread }: PreloadInput, area: number, print: Print): Step {
  const metric = thread.form === 'iso'
  const [d, p] = [thread.diameter, thread.pitch].map((length) => print.figure(length, 'length'))
  return {
    title: 'Tensile stress area',
    formula: metric ? 'At = π/4 (d − 0.9382 P)²' : 'At = π/4 (d − 0.9743 P)²',
    withNumbers: `At = π/4 (${d} − ${metric ? '0.9382' : '0.9743'} × ${p})²`,
    result: `At = ${print.figure(area, 'area')}`,
    source: published(metric ? 'ISO 898-1, nominal stress area' : 'ASME B1.1, tensile stress area'),
  }
}

function proofLoadStep(
  area: number,
  proof: number,
  force: number,
  strength: FastenerStrength | undefined,
  print: Print,
): Step {
  return {
    title: 'Proof load',
    formula: 'Fp = At Sp',
    withNumbers: `Fp = ${print.figure(area, 'area')} × ${print.figure(proof, 'stress')}`,
    result: `Fp = ${print.figure(force, 'force')}`,
    source: {
      kind: strength?.fromMemory ? 'memory' : 'published',
      cite: strength?.source ?? 'Shigley’s Mechanical Engineering Design, 9th ed., eq 8–31',
    },
  }
}

function notes({ preload: force }: Tightened, atYield: number | undefined, print: Print): string[] {
  const always =
    'The fastener supplier’s torque, for the supplier’s lubricant, comes before any of this.'
  if (atYield === undefined || force <= atYield) return [always]
  return [
    `By this arithmetic the fastener yields on the way: tension and twist together reach its yield strength at ${print.figure(atYield, 'force')}.`,
    always,
  ]
}

/** The guide's ways of tightening in the words of the scatter table. */
const WAYS: Readonly<Record<string, string>> = {
  'torque-wrench': 'torque-estimated-friction',
  'torque-angle': 'torque-angle',
  stretch: 'stretch-measured',
}

function fromBuild({ assessment }: BuildSource): Record<string, unknown> {
  const way = WAYS[String(assessment.build.tightening?.value)]
  const keep = assessment.routes.find(({ id }) => id === 'keep-caps-and-bolts')
  // By angle or by stretch a torque says nothing of the preload.
  const set = keep?.joint.torque
    ? buildInputs(assessment, { torque: 'fastenerTorque' })
    : { shareOfProof: figureInput(100 * (keep?.joint.shareOfProof ?? 0.75), '%') }
  return {
    ...buildInputs(assessment, {
      thread: 'fastenerThread',
      grade: 'fastenerGrade',
      lubricant: 'fastenerLubricant',
    }),
    ...set,
    ...(way === undefined ? {} : { tightening: way }),
  }
}
