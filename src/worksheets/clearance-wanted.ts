import {
  type ClearanceInput,
  clearance,
  partsForClearance,
  targetClearance,
} from '../mechanics/clearance.ts'
import { clearanceRange } from '../mechanics/clearance-range.ts'
import type { ClearanceInputs } from './clearance-fields.ts'
import { InputError } from './input.ts'
import type { Print } from './print.ts'
import { geometry, practice, published, type Result, type Step } from './worksheet.ts'

interface Part {
  readonly results: readonly Result[]
  readonly steps: readonly Step[]
}

/** Parts that would give the wanted clearance, and what a rule of so much for each unit asks for. */
export function wantedParts(input: ClearanceInputs, measures: ClearanceInput, print: Print): Part {
  const parts = [byRule(input, print), forWanted(input, measures, print)]
  return {
    results: parts.flatMap(({ results }) => results),
    steps: parts.flatMap(({ steps }) => steps),
  }
}

const NONE: Part = { results: [], steps: [] }

function byRule(input: ClearanceInputs, print: Print): Part {
  const { perDiameterLow: low, perDiameterHigh: high, journal } = input
  if (low === undefined && high === undefined) return NONE
  if (low === undefined || high === undefined) {
    throw new InputError(low === undefined ? 'perDiameterLow' : 'perDiameterHigh', 'give both')
  }
  const target = targetClearance(journal, { low, high })
  const step: Step = {
    title: 'Clearance by the rule',
    formula: 'c = rule × journal',
    withNumbers: `c = ${low} to ${high} × ${print.figure(journal, 'length')}`,
    result: `${print.figure(target.low, 'fine')} to ${print.figure(target.high, 'fine')}`,
    source: practice('So much for each unit of diameter; the rule is yours'),
  }
  const results = [
    print.result('targetLow', 'By the rule, least', target.low, 'fine'),
    print.result('targetHigh', 'By the rule, most', target.high, 'fine'),
  ]
  return { results, steps: [step] }
}

function forWanted({ wanted }: ClearanceInputs, measures: ClearanceInput, print: Print): Part {
  if (wanted === undefined) return NONE
  const { shellCrown, journal, housing } = partsForClearance(measures, wanted)
  const at = (one: number): string => print.figure(one, 'length')
  const step: Step = {
    title: 'Parts for the wanted clearance',
    formula: 'excess = c − wanted; wall + excess/2, or journal + excess, or housing − excess',
    withNumbers: `excess = ${print.figure(clearance(measures).vertical, 'fine')} − ${print.figure(wanted, 'fine')}`,
    result: `wall ${at(shellCrown)}, or journal ${at(journal)}, or housing ${at(housing)}`,
    source: geometry('Definition'),
  }
  const results = [
    print.result('shellForWanted', 'Wall of each shell that gives it', shellCrown, 'length'),
    print.result('journalForWanted', 'or journal that gives it', journal, 'length'),
    print.result('housingForWanted', 'or housing bore that gives it', housing, 'length'),
  ]
  return { results, steps: [step] }
}

const LIMITS = [
  'housingLow',
  'housingHigh',
  'wallLow',
  'wallHigh',
  'journalLow',
  'journalHigh',
] as const

/**
 * Clearance at the ends of the limits of housing, wall and journal; nothing without any, an {@link
 * InputError} without one of the six.
 */
export function limitsRange(input: ClearanceInputs, print: Print): Part {
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
