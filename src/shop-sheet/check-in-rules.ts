import { z } from 'zod'
import { phrase, wording } from '../rulebook/places.ts'
import { ruleSource, sentence } from '../rulebook/schema.ts'

const sourced = z.strictObject({ text: sentence, source: ruleSource })

/** What a verdict is called, in full and where there is little room. */
const named = z.strictObject({ words: phrase(), short: phrase() })
/** The same of a verdict on one measure, with what it means. */
const told = z.strictObject({ ...named.shape, means: wording() })

/** Computations that readings may be beyond, each with what it is called. */
const parts = z.strictObject({
  alignment: phrase(),
  axis: phrase('end'),
  chain: phrase(),
  clearance: phrase('main'),
  crush: phrase('main'),
  deck: phrase(),
  gearbox: phrase(),
  gears: phrase(),
  housing: phrase('main'),
  straightedge: phrase(),
})
/** What each figure that is worked out is called. */
const figures = z.strictObject({
  angle: phrase(),
  backlashChange: phrase(),
  backlashWarm: phrase(),
  bow: phrase(),
  boxMisread: phrase(),
  boxOff: phrase(),
  camLate: phrase(),
  chainFreed: phrase(),
  chainSlack: phrase(),
  clearance: phrase(),
  clearancePerDiameter: phrase(),
  clearanceReadLess: phrase(),
  clearanceSideways: phrase(),
  compression: phrase(),
  crush: phrase(),
  crushGrowth: phrase(),
  housing: phrase(),
  housingFitted: phrase(),
  housingOval: phrase(),
  housingTaper: phrase(),
  measuredBy: phrase(),
  offAxis: phrase('main'),
  pairOfLines: phrase(),
  rise: phrase(),
  shift: phrase(),
  shortening: phrase(),
  shorteningToBind: phrase(),
  spacing: phrase(),
  straightness: phrase(),
  wall: phrase(),
})
/** A figure that is worked out for the whole, or for the main that is spoken of. */
export type FigureId = Exclude<keyof z.infer<typeof figures>, 'offAxis'>

const MEASURES = ['clearance', 'housing', 'journal', 'shell'] as const
/** What of one main is measured. */
export type MainMeasure = (typeof MEASURES)[number]

const reason = wording('title', 'found', 'limit', 'uncertainty', 'off', 'side')

const SLIP_KINDS = [
  'decimal-point',
  'digit-doubled',
  'digit-dropped',
  'digit-wrong',
  'digits-swapped',
  'inch-for-mm',
  'mm-for-inch',
  'thimble-turn',
] as const

/** What rules/check-in.json has to look like: how the check-in judges, and all that it says. */
export const checkInFile = z.strictObject({
  /** Of a main that stands apart from its fellows by one measure. */
  apart: z.strictObject({
    again: sentence,
    found: phrase('off', 'side'),
    foundAgain: phrase('off', 'side'),
    says: wording('measure', 'off', 'side', 'middle'),
    source: ruleSource,
    stands: sentence,
    title: phrase('measure'),
    /** Of a measure that follows from the odd one. */
    waits: z.strictObject({ advice: sentence, reason: sentence }),
  }),
  beyond: z.strictObject({ parts, says: wording('part') }),
  figures,
  /** Below the fields of the gauges. */
  gaugesUnsaid: wording('gauges'),
  /** How the readings of each table are taken. */
  how: z.record(z.enum(['axis', 'housing', 'journal', 'line', 'shell']), sourced),
  judged: z.strictObject({
    /** What to do where the limit lies within what the readings may be off. */
    near: z.strictObject({
      again: sentence,
      coarse: z.strictObject({
        /** Share of a limit that the gauges may be off by before measuring again decides nothing. */
        share: z.number().positive().max(1),
        advice: sentence,
        because: sentence,
        source: ruleSource,
      }),
      /** Of a clearance worked out from other readings; how far off it would be, read directly. */
      directClearance: z.strictObject({ text: wording('uncertainty'), source: ruleSource }),
    }),
    noLimit: wording('title', 'found'),
    /** `off` is how far the measure lies from its nearer limit. */
    reasons: z.strictObject({
      'near-inside': reason,
      'near-outside': reason,
      pass: reason,
      'send-back': reason,
    }),
    sides: z.strictObject({ high: phrase(), low: phrase() }),
    /** Which of several places a measure is of. */
    where: z.strictObject({ end: phrase('end'), step: phrase('main', 'next') }),
  }),
  main: z.strictObject({
    asked: wording('reading', 'typed', 'question'),
    missing: wording('missing'),
    noLimit: wording('measures'),
    passed: wording('count'),
    passedOne: wording(),
    unmeasured: wording('missing'),
  }),
  measures: z.record(z.enum(MEASURES), phrase()),
  /** How it is judged, below the verdicts; `source` is that of the verdicts' meaning. */
  method: z.strictObject({
    limits: sentence,
    outside: sourced,
    source: ruleSource,
    warm: wording('blockRise', 'journalRise', 'because'),
  }),
  overall: z.strictObject({
    apart: wording('title', 'mains'),
    apartSome: wording('title', 'mains'),
    beyond: wording(),
    both: phrase('verdict', 'parts', 'journals'),
    crank: phrase('verdict', 'journals'),
    journals: phrase('mains'),
    mains: phrase('mains'),
    noLimit: wording(),
    nothing: wording(),
    open: wording('mains'),
    parts: phrase('verdict', 'parts'),
    pass: wording(),
    passNoLimit: wording('measures'),
    passSoFar: wording('mains'),
    reason: phrase('main', 'reason'),
  }),
  /** Of readings that are likelier a slip than a part. */
  slips: z.strictObject({
    farOff: wording('readings', 'middle', 'expected'),
    kinds: z.record(z.enum(SLIP_KINDS), phrase()),
    leftOut: sentence,
    looksLike: wording('away', 'slip', 'meant'),
    otherColumn: wording('away', 'readings'),
    otherUnit: wording('readings', 'other', 'unit'),
    readings: z.record(z.enum(['housing', 'journal']), phrase()),
    swapped: wording('away', 'readings', 'meant'),
    unexplained: wording('away'),
    units: z.strictObject({ in: phrase(), mm: phrase() }),
  }),
  /** Of an entry that is no figure, or none that can be. */
  unread: wording('reading', 'text'),
  values: z.strictObject({
    centres: phrase(),
    centresUpright: phrase(),
    feelers: phrase(),
    shiftUnknown: phrase(),
    spacingEven: phrase(),
    spacingGiven: phrase(),
    tight: phrase('slack'),
    wallTold: phrase(),
  }),
  verdicts: z.strictObject({
    both: named,
    crank: named,
    'look-again': told,
    none: named,
    pass: told,
    'send-back': told,
    sizeOpen: named,
    'too-near': told,
  }),
  whole: z.strictObject({
    alignment: phrase(),
    axis: phrase(),
    deck: phrase(),
    gearbox: phrase(),
    thrust: phrase(),
    timing: phrase(),
  }),
})
/** How the check-in judges and what it says, as rules/check-in.json has it. */
export type CheckInRules = z.infer<typeof checkInFile>
