import {
  type Clearance,
  type ClearanceInput,
  clearance,
  warmClearance,
} from '../mechanics/clearance.ts'
import { EXPANSION } from '../mechanics/thermal-growth.ts'
import { type ClearanceInputs, clearanceFields } from './clearance-fields.ts'
import { clearancePicture } from './clearance-picture.ts'
import { limitsRange, wantedParts } from './clearance-wanted.ts'
import { crushAndLoad } from './crush-and-load.ts'
import { buildInputs, figureInput } from './from-build.ts'
import { InputError } from './input.ts'
import type { Print } from './print.ts'
import {
  type BuildSource,
  geometry,
  present,
  type Result,
  type Step,
  type Worked,
  worksheet,
} from './worksheet.ts'

/** Housing, shell and journal to running clearance, cold and warm. */
export const clearanceSheet = worksheet({
  name: 'clearance',
  title: 'Bearing clearance',
  summary:
    'Housing bore, shells and journal to running clearance, cold and warm; crush and unit load.',
  fields: clearanceFields,
  groups: [
    {
      title: 'Measured',
      fields: [
        'housingVertical',
        'housingHorizontal',
        'shellCrown',
        'shellParting',
        'journal',
        'crushGrowth',
      ],
    },
    {
      title: 'Warm',
      fields: [
        'blockMaterial',
        'capMaterial',
        'journalMaterial',
        'blockRise',
        'journalRise',
        'shellRise',
      ],
    },
    { title: 'Wanted', fields: ['wanted', 'perDiameterLow', 'perDiameterHigh'] },
    {
      title: 'Limits, before anything is measured',
      fields: ['housingLow', 'housingHigh', 'wallLow', 'wallHigh', 'journalLow', 'journalHigh'],
      folded: true,
    },
    {
      title: 'Crush',
      fields: [
        'overstand',
        'checkingBore',
        'backWall',
        'bearingWidth',
        'shellModulus',
        'housingOutside',
        'housingModulus',
        'housingPoisson',
        'expansionDifference',
        'crushRise',
      ],
      folded: true,
    },
    {
      title: 'Load and oil',
      fields: ['load', 'lostWidth', 'viscosity', 'speed'],
      folded: true,
    },
  ],
  example: {
    housingVertical: '2.641 in',
    shellCrown: '0.0948 in',
    shellParting: '0.0944 in',
    journal: '2.449 in',
    wanted: '0.0024 in',
    perDiameterLow: 0.00075,
    perDiameterHigh: 0.001,
    blockMaterial: 'aluminium',
    capMaterial: 'steel',
    blockRise: '125 °F',
  },
  names: {
    'housing.vertical': 'housingVertical',
    'housing.horizontal': 'housingHorizontal',
    'shell.crown': 'shellCrown',
    'shell.parting': 'shellParting',
    'perDiameter.low': 'perDiameterLow',
    'perDiameter.high': 'perDiameterHigh',
    'housing.low': 'housingLow',
    'housing.high': 'housingHigh',
    'wall.low': 'wallLow',
    'wall.high': 'wallHigh',
    'journal.low': 'journalLow',
    'journal.high': 'journalHigh',
    rise: ['blockRise', 'journalRise', 'shellRise'],
    length: 'housingVertical',
    housingBore: 'housingVertical',
    wall: 'backWall',
    width: 'bearingWidth',
    'housing.outside': 'housingOutside',
    'housing.modulus': 'housingModulus',
    'housing.poisson': 'housingPoisson',
    'warmth.difference': 'expansionDifference',
    'warmth.rise': 'crushRise',
    force: 'load',
    lost: 'lostWidth',
    radius: 'journal',
    radialClearance: 'journal',
  },
  work,
  fromBuild,
})

function work(input: ClearanceInputs, print: Print): Worked {
  const measures = measuresOf(input)
  const cold = clearance(measures)
  const warm = warmOf(input, measures)
  const wanted = wantedParts(input, measures, print)
  const range = limitsRange(input, print)
  const more = crushAndLoad(input, cold, print)
  return {
    results: [
      ...clearanceResults('', cold, print),
      ...(warm ? clearanceResults('warm', warm, print) : []),
      ...wanted.results,
      ...range.results,
      ...more.results,
    ],
    steps: [
      coldStep(measures, cold, print),
      ...(warm ? [warmStep(input, cold, warm, print)] : []),
      ...wanted.steps,
      ...range.steps,
      ...more.steps,
    ],
    notes: [
      'The vertical clearance is the one that counts, with the caps at full torque. The service manual’s or the bearing supplier’s figure comes before any rule.',
    ],
    picture: clearancePicture(cold, warm, print),
  }
}

function measuresOf(input: ClearanceInputs): ClearanceInput {
  const { housingVertical, shellCrown, crushGrowth } = input
  return {
    housing: {
      vertical: housingVertical,
      horizontal: input.housingHorizontal ?? housingVertical,
    },
    shell: { crown: shellCrown, parting: input.shellParting ?? shellCrown },
    journal: input.journal,
    ...present({ crushGrowth }),
  }
}

function warmOf(input: ClearanceInputs, measures: ClearanceInput): Clearance | undefined {
  const { blockMaterial, capMaterial, journalMaterial, blockRise, journalRise, shellRise } = input
  if (blockMaterial === undefined && blockRise === undefined) return undefined
  if (blockMaterial === undefined || blockRise === undefined) {
    const missing = blockMaterial === undefined ? 'blockMaterial' : 'blockRise'
    throw new InputError(missing, 'give both material and rise of the block')
  }
  return warmClearance(measures, {
    block: blockMaterial,
    cap: capMaterial ?? blockMaterial,
    blockRise,
    journalRise: journalRise ?? blockRise,
    ...present({ journal: journalMaterial, shellRise }),
  })
}

function clearanceResults(when: '' | 'warm', found: Clearance, print: Print): Result[] {
  const id = (name: string): string =>
    when === '' ? name : `warm${name.charAt(0).toUpperCase()}${name.slice(1)}`
  const words = when === '' ? '' : ', warm'
  return [
    print.result(id('vertical'), `Clearance, up and down${words}`, found.vertical, 'fine'),
    print.result(id('horizontal'), `Clearance, side to side${words}`, found.horizontal, 'fine'),
    print.result(id('eccentricity'), `Wider side to side by${words}`, found.eccentricity, 'fine'),
    print.ratio(id('perDiameter'), `For each unit of journal${words}`, found.perDiameter),
  ]
}

function coldStep(
  { housing, shell, journal, crushGrowth = 0 }: ClearanceInput,
  cold: Clearance,
  print: Print,
): Step {
  const at = (one: number): string => print.figure(one, 'length')
  return {
    title: 'Clearance as measured',
    formula: 'c = housing + crush growth − 2 × wall − journal',
    withNumbers: `c = ${at(housing.vertical)} + ${print.figure(crushGrowth, 'fine')} − 2 × ${at(shell.crown)} − ${at(journal)}`,
    result: `c = ${print.figure(cold.vertical, 'fine')} up and down, ${print.figure(cold.horizontal, 'fine')} side to side`,
    source: geometry('Definition'),
  }
}

function warmStep(input: ClearanceInputs, cold: Clearance, warm: Clearance, print: Print): Step {
  const block = EXPANSION[input.blockMaterial ?? 'gray-iron']
  const cap = EXPANSION[input.capMaterial ?? input.blockMaterial ?? 'gray-iron']
  const journal = EXPANSION[input.journalMaterial ?? 'steel']
  const rise = input.blockRise ?? 0
  const per = (one: number): string => print.figure(one, 'expansion')
  const memory = [block, cap, journal].some(({ source }) => source.includes('memory'))
  return {
    title: 'Clearance warm',
    formula: 'c = c0 + (α_block + α_cap)/2 · D ΔT − 2 α_steel t ΔT − α_crank d ΔT',
    withNumbers: `c = ${print.figure(cold.vertical, 'fine')} + (${per(block.perKelvin)} + ${per(cap.perKelvin)})/2 × ${print.figure(input.housingVertical, 'length')} × ${print.figure(rise, 'rise')} − 2 × ${per(EXPANSION.steel.perKelvin)} × ${print.figure(input.shellCrown, 'length')} × ${print.figure(input.shellRise ?? rise, 'rise')} − ${per(journal.perKelvin)} × ${print.figure(input.journal, 'length')} × ${print.figure(input.journalRise ?? rise, 'rise')}`,
    result: `c = ${print.figure(warm.vertical, 'fine')}, a change of ${print.figure(warm.vertical - cold.vertical, 'fine')}`,
    source: {
      kind: memory ? 'memory' : 'published',
      cite: 'Callister, Materials Science and Engineering, Table B.6',
    },
  }
}

function fromBuild({ assessment }: BuildSource): Record<string, unknown> {
  const journal = assessment.build.mainJournalDiameter
  const { shellCrown, wanted } = clearanceSheet.example
  const parts = 2 * Number.parseFloat(String(shellCrown)) + Number.parseFloat(String(wanted))
  return {
    ...clearanceSheet.example,
    ...buildInputs(assessment, {
      journal: 'mainJournalDiameter',
      blockMaterial: 'blockMaterial',
      capMaterial: 'capMaterial',
      bearingWidth: 'mainBearingWidth',
    }),
    // The guide knows neither housing nor shell: a bore that fits the example's shells stands in.
    housingVertical: figureInput(Number(journal?.value) + parts, 'in'),
  }
}
