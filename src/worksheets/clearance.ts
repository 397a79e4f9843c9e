import {
  type Clearance,
  type ClearanceInput,
  clearance,
  partsForClearance,
  targetClearance,
  warmClearance,
} from '../mechanics/clearance.ts'
import { clearanceRange } from '../mechanics/clearance-range.ts'
import { EXPANSION } from '../mechanics/thermal-growth.ts'
import { type ClearanceInputs, clearanceFields } from './clearance-fields.ts'
import { crushAndLoad } from './crush-and-load.ts'
import { buildInputs, figureInput } from './from-build.ts'
import { InputError } from './input.ts'
import type { FitPicture } from './picture.ts'
import type { Print } from './print.ts'
import {
  type BuildSource,
  geometry,
  practice,
  present,
  published,
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
    rise: 'blockRise',
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
    picture: picture(cold, warm, print),
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

interface Part {
  readonly results: readonly Result[]
  readonly steps: readonly Step[]
}

/** Parts that would give the wanted clearance, and what a rule of so much for each unit asks for. */
function wantedParts(input: ClearanceInputs, measures: ClearanceInput, print: Print): Part {
  const { wanted, perDiameterLow: low, perDiameterHigh: high, journal } = input
  const results: Result[] = []
  const steps: Step[] = []
  if ((low === undefined) !== (high === undefined)) {
    throw new InputError(low === undefined ? 'perDiameterLow' : 'perDiameterHigh', 'give both')
  }
  if (low !== undefined && high !== undefined) {
    const target = targetClearance(journal, { low, high })
    results.push(print.result('targetLow', 'By the rule, least', target.low, 'fine'))
    results.push(print.result('targetHigh', 'By the rule, most', target.high, 'fine'))
    steps.push({
      title: 'Clearance by the rule',
      formula: 'c = rule × journal',
      withNumbers: `c = ${low} to ${high} × ${print.figure(journal, 'length')}`,
      result: `${print.figure(target.low, 'fine')} to ${print.figure(target.high, 'fine')}`,
      source: practice('So much for each unit of diameter; the rule is yours'),
    })
  }
  if (wanted !== undefined) {
    const parts = partsForClearance(measures, wanted)
    results.push(
      print.result(
        'shellForWanted',
        'Wall of each shell that gives it',
        parts.shellCrown,
        'length',
      ),
      print.result('journalForWanted', 'or journal that gives it', parts.journal, 'length'),
      print.result('housingForWanted', 'or housing bore that gives it', parts.housing, 'length'),
    )
    steps.push({
      title: 'Parts for the wanted clearance',
      formula: 'excess = c − wanted; wall + excess/2, or journal + excess, or housing − excess',
      withNumbers: `excess = ${print.figure(clearance(measures).vertical, 'fine')} − ${print.figure(wanted, 'fine')}`,
      result: `wall ${print.figure(parts.shellCrown, 'length')}, or journal ${print.figure(parts.journal, 'length')}, or housing ${print.figure(parts.housing, 'length')}`,
      source: geometry('Definition'),
    })
  }
  return { results, steps }
}

const LIMITS = [
  'housingLow',
  'housingHigh',
  'wallLow',
  'wallHigh',
  'journalLow',
  'journalHigh',
] as const

function limitsRange(input: ClearanceInputs, print: Print): Part {
  if (LIMITS.every((key) => input[key] === undefined)) return { results: [], steps: [] }
  const [hl, hh, wl, wh, jl, jh] = LIMITS.map((key) => {
    const limit = input[key]
    if (limit === undefined) throw new InputError(key, 'give all six limits')
    return limit
  }) as [number, number, number, number, number, number]
  const range = clearanceRange({
    housing: { low: hl, high: hh },
    wall: { low: wl, high: wh },
    journal: { low: jl, high: jh },
  })
  const at = (one: number): string => print.figure(one, 'length')
  const fine = (id: string, label: string, one: number): Result =>
    print.result(id, label, one, 'fine')
  return {
    results: [
      fine('rangeLow', 'Tightest that the limits allow', range.low),
      fine('rangeHigh', 'Loosest that the limits allow', range.high),
      fine('statisticalLow', 'Seldom tighter than', range.statistical.low),
      fine('statisticalHigh', 'Seldom looser than', range.statistical.high),
    ],
    steps: [
      {
        title: 'Range of the limits',
        formula:
          'least = housing low − 2 wall high − journal high; most the other way about; seldom outside middle ± √(Σ width²)/2',
        withNumbers: `least = ${at(hl)} − 2 × ${at(wh)} − ${at(jh)}; most = ${at(hh)} − 2 × ${at(wl)} − ${at(jl)}`,
        result: `${print.figure(range.low, 'fine')} to ${print.figure(range.high, 'fine')}`,
        source: published('Shigley’s Mechanical Engineering Design, 9th ed., section 1–13'),
      },
    ],
  }
}

function picture(cold: Clearance, warm: Clearance | undefined, print: Print): FitPicture {
  const fine = (one: number): string => print.figure(one, 'fine')
  const words = ({ vertical, horizontal }: Clearance): string =>
    `${fine(vertical)} up and down, ${fine(horizontal)} side to side`
  const rows = [['As measured', fine(cold.vertical), fine(cold.horizontal)]]
  if (warm) rows.push(['Warm', fine(warm.vertical), fine(warm.horizontal)])
  return {
    kind: 'fit',
    title: 'The journal in its shells',
    text: `As measured: ${words(cold)}.${warm ? ` Warm: ${words(warm)}.` : ''}`,
    caption: `Blue: the shells as measured.${warm ? ' Red, dashed: warm.' : ''} The clearance is magnified, the journal is not; it stands in the middle, which an oil film never lets it.`,
    cold,
    ...(warm ? { warm } : {}),
    labels: [
      `as measured ${fine(cold.vertical)}`,
      ...(warm ? [`warm ${fine(warm.vertical)}`] : []),
    ],
    table: { caption: 'Clearance', head: ['', 'Up and down', 'Side to side'], rows },
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
