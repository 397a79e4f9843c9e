import {
  type BoreMachining,
  type BoreMachiningInput,
  boreMachining,
  finishedLimits,
} from '../mechanics/bore-machining.ts'
import { axisFollowers } from './axis-followers.ts'
import { type BoreMachiningInputs, boreMachiningFields } from './bore-machining-fields.ts'
import { boreSteps, leastCut } from './bore-machining-steps.ts'
import { buildInputs } from './from-build.ts'
import type { BoresPicture } from './picture.ts'
import type { Print } from './print.ts'
import { type BuildSource, present, type Result, type Worked, worksheet } from './worksheet.ts'

/** Two half bores that do not match, bored and honed round, and what the moved axis does. */
export const boreMachiningSheet = worksheet({
  name: 'bore-machining',
  title: 'Line boring and honing',
  summary:
    'What boring takes and leaves, how far the crank axis moves, and what follows from that.',
  fields: boreMachiningFields,
  groups: [
    {
      title: 'Bores',
      fields: ['blockBore', 'capBore', 'capFaceCut', 'finishedLow', 'finishedHigh', 'honeLimit'],
    },
    { title: 'The cut', fields: ['honingStock', 'cleanUp', 'axisShift'] },
    {
      title: 'Block faces, walked cap, oversize',
      fields: [
        'blockFaceCut',
        'capSideOffset',
        'oversize',
        'aim',
        'honeBlockShare',
        'mostAxisShift',
      ],
      folded: true,
    },
    {
      title: 'Timing chain',
      fields: [
        'camDistance',
        'camAngle',
        'chainPitch',
        'crankTeeth',
        'camTeeth',
        'slackBefore',
        'setShortening',
        'mostSlack',
      ],
      folded: true,
    },
    {
      title: 'Timing gears in place of a chain, and timing warm',
      fields: [
        'pressureAngle',
        'helix',
        'backlashBefore',
        'standardCentreDistance',
        'leastBacklash',
        'blockMaterial',
        'blockRise',
        'driveRise',
      ],
      folded: true,
    },
    {
      title: 'Deck height and compression',
      fields: [
        'bore',
        'stroke',
        'rodLength',
        'compressionRatio',
        'deckClearance',
        'bankAngle',
        'deckCut',
      ],
      folded: true,
    },
    { title: 'Gearbox alignment', fields: ['inputShaft', 'gearboxX', 'gearboxY'], folded: true },
  ],
  example: {
    blockBore: '2.641 in',
    capBore: '2.626 in',
    finishedLow: '2.6406 in',
    finishedHigh: '2.6415 in',
    honingStock: '0.003 in',
    cleanUp: '0.001 in',
    honeLimit: '0.003 in',
    camDistance: '4.52 in',
    chainPitch: '0.375 in',
    crankTeeth: 21,
    camTeeth: 42,
  },
  names: {
    'finished.low': 'finishedLow',
    'finished.high': 'finishedHigh',
    'standard.low': 'finishedLow',
    'standard.high': 'finishedHigh',
    finishedBore: 'finishedHigh',
    centreDistance: 'camDistance',
    'centreDistance after the shift': 'camDistance',
    'centre distance': 'camDistance',
    'centre distance wanted': 'camAngle',
    pitch: 'chainPitch',
    teeth: ['crankTeeth', 'camTeeth'],
    strand: 'camDistance',
    normalAngle: 'pressureAngle',
    least: 'leastBacklash',
    rise: ['blockRise', 'driveRise'],
    length: 'camDistance',
    'clearance volume left': 'deckCut',
    'before.x': 'gearboxX',
    'before.y': 'gearboxY',
  },
  work,
  fromBuild,
})

function work(input: BoreMachiningInputs, print: Print): Worked {
  const full = machiningInput(input)
  const machined = boreMachining(full)
  const followers = axisFollowers(input, machined.axisShift, print)
  const least = leastCut(input, machined, print)
  return {
    results: [...boreResults(machined, print), ...least.results, ...followers.results],
    steps: [...boreSteps(full, machined, print), ...least.steps, ...followers.steps],
    notes: notes(machined, full, print),
    picture: picture(machined, print),
  }
}

function machiningInput(input: BoreMachiningInputs): BoreMachiningInput {
  const { blockFaceCut, capFaceCut, capSideOffset, aim, honingStock, cleanUp } = input
  const { axisShift, honeBlockShare, oversize = 0 } = input
  const standard = { low: input.finishedLow, high: input.finishedHigh }
  return {
    blockBore: input.blockBore,
    capBore: input.capBore,
    finished: finishedLimits(standard, oversize),
    honeLimit: input.honeLimit,
    ...present({ blockFaceCut, capFaceCut, capSideOffset, aim, honingStock, cleanUp }),
    ...present({ axisShift, honeBlockShare }),
  }
}

function boreResults({ rough, boring, finished, ...rest }: BoreMachining, print: Print): Result[] {
  const fine = (id: string, label: string, one: number): Result =>
    print.result(id, label, one, 'fine')
  return [
    fine('axisShift', 'Crank axis moves up by', rest.axisShift),
    print.result('boringDiameter', 'Boring comes to', boring.diameter, 'length'),
    print.result('finishedDiameter', 'Honing comes to', finished.diameter, 'length'),
    fine('blockCrownStock', 'Off the block’s crown, on the radius', finished.block.crown),
    fine('capCrownStock', 'Off the cap’s crown, on the radius', finished.cap.crown),
    fine('blockLeastStock', 'Least off the block’s half', finished.block.least),
    fine('capLeastStock', 'Least off the cap’s half', finished.cap.least),
    fine('outOfRound', 'Out of round before work', rough.outOfRound),
    fine('axisLow', 'Axis that cleans up the block’s crown, at least', rest.axisRange.low),
    fine('axisHigh', 'Axis that cleans up the cap’s crown, at most', rest.axisRange.high),
    fine('honeStock', 'A hone alone would take off', rest.honeAlone.stock),
    fine('honeBeyond', 'of it beyond the hone’s limit', rest.honeAlone.beyond),
    fine('honeAxis', 'and would leave the axis at', rest.honeAlone.axis),
    fine('gripChange', 'Clamped length in the cap changes by', rest.gripChange),
  ]
}

function notes(
  { finished, honeAlone }: BoreMachining,
  { honeLimit }: BoreMachiningInput,
  print: Print,
): string[] {
  const unclean = [
    ['block', finished.block.least],
    ['cap', finished.cap.least],
  ] as const
  return [
    ...unclean
      .filter(([, least]) => least < 0)
      .map(
        ([name, least]) =>
          `Part of the ${name}’s half stays untouched: the bore lies ${print.figure(-least, 'fine')} short of it there.`,
      ),
    ...(honeAlone.beyond > 0
      ? [`A hone that takes ${print.figure(honeLimit, 'fine')} cannot do this alone.`]
      : []),
    'Bores are measured with the caps torqued by the fasteners that stay. The machinist who has the block in hand decides the cut.',
  ]
}

function picture({ rough, finished, axisShift }: BoreMachining, print: Print): BoresPicture {
  const fine = (one: number): string => print.figure(one, 'fine')
  return {
    kind: 'bores',
    title: 'Half bores before work, and the bore to come',
    text: `The crank axis moves up by ${fine(axisShift)}. Off the block’s crown come ${fine(finished.block.crown)}, off the cap’s ${fine(finished.cap.crown)}.`,
    caption:
      'Plain lines: the halves as they are. Blue: the finished bore. Red cross: the new axis. Differences are magnified, the bore is not.',
    block: { y: 0, radius: rough.block.radius },
    cap: { x: rough.cap.x, y: rough.cap.y, radius: rough.cap.radius },
    finished: { y: axisShift, radius: finished.diameter / 2 },
    partingFace: rough.partingFace,
    labels: [
      `axis up ${fine(axisShift)}`,
      `block’s crown ${fine(finished.block.crown)}, cap’s ${fine(finished.cap.crown)}`,
    ],
    table: {
      caption: 'Metal off each half, on the radius',
      head: ['Half', 'Crown', 'Least', 'Most'],
      rows: [
        ['Block', ...[finished.block.crown, finished.block.least, finished.block.most].map(fine)],
        ['Cap', ...[finished.cap.crown, finished.cap.least, finished.cap.most].map(fine)],
      ],
    },
  }
}

function fromBuild({ assessment }: BuildSource): Record<string, unknown> {
  // The guide knows no bore sizes: those stay the example's until they are measured.
  return {
    ...boreMachiningSheet.example,
    ...buildInputs(assessment, {
      bore: 'bore',
      stroke: 'stroke',
      rodLength: 'rodLength',
      compressionRatio: 'compressionRatio',
    }),
  }
}
