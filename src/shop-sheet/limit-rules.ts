import { z } from 'zod'
import { ruleSource, sentence } from '../rulebook/schema.ts'

const title = z.string().min(3)
const lengthUnit = z.enum(['in', 'mm'])
const ends = { low: z.number().optional(), high: z.number().optional() }
const ordered = (range: { low?: number | undefined; high?: number | undefined }) =>
  range.low === undefined || range.high === undefined || range.low <= range.high

const limit = z
  .strictObject({
    title,
    /** A length, so much for each unit of journal diameter, or a difference of ratios. */
    kind: z.enum(['length', 'per-diameter', 'ratio']),
    unit: z.enum(['in', 'mm', '', 'to one']),
    ...ends,
    /** Other ends for a use. */
    uses: z.record(z.string(), z.strictObject(ends).refine(ordered, 'low exceeds high')).optional(),
    /** Fields of the person's service data that go before these ends. */
    service: z.strictObject({ low: z.string().optional(), high: z.string().optional() }).optional(),
    ifLow: sentence.optional(),
    ifHigh: sentence.optional(),
    /**
     * What goes back to be mended when it is not kept. A measure between two parts is the fault of
     * whichever of them is outside its own limits, and the block's where neither is.
     */
    goesBack: z.enum(['block', 'crank', 'whose-fault']).default('block'),
    because: sentence,
    source: ruleSource,
  })
  .refine(ordered, 'low exceeds high')
  .refine(
    ({ kind, unit }) => (kind === 'length') === (unit === 'in' || unit === 'mm'),
    'a length has in or mm as its unit',
  )
/** A limit as rules/limits.json has it. */
export type LimitRule = z.infer<typeof limit>

const gauge = z.strictObject({
  title,
  unit: lengthUnit,
  /** Expanded uncertainty of a size. */
  size: z.number().positive(),
  /** The same of a difference read with one gauge, whose setting drops out. */
  repeat: z.number().positive(),
  source: ruleSource,
})
/** A gauge as rules/limits.json has it. */
export type GaugeRule = z.infer<typeof gauge>

/** Every measure that has a limit. */
export const LIMIT_IDS = [
  'axis-shift',
  'backlash',
  'bore-step',
  'bore-straightness',
  'chain-throw',
  'clearance',
  'clearance-warm',
  'compression-change',
  'deck-clearance',
  'eccentricity',
  'end-float',
  'gearbox',
  'housing-out-of-round',
  'housing-size',
  'housing-taper',
  'journal-out-of-round',
  'journal-size',
  'journal-taper',
  'overstand',
] as const
/** Id of a limit. */
export type LimitId = (typeof LIMIT_IDS)[number]

const GAUGE_IDS = ['bore', 'depth', 'feeler', 'indicator', 'micrometer', 'offset', 'shell'] as const
/** Id of a gauge. */
export type GaugeId = (typeof GAUGE_IDS)[number]

/** What rules/limits.json has to look like. */
export const limitsFile = z.strictObject({
  limits: z.record(z.enum(LIMIT_IDS), limit),
  gauges: z.record(z.enum(GAUGE_IDS), gauge),
  warmth: z.strictObject({
    /** K above the temperature of measuring. */
    blockRise: z.number().min(0).max(200),
    journalRise: z.number().min(0).max(200),
    because: sentence,
    source: ruleSource,
  }),
  slips: z.strictObject({
    unit: lengthUnit,
    /** How near a reading must come to its like, once a slip is undone. */
    near: z.number().positive(),
    /** How far a reading must stand off before it is asked about. */
    far: z.number().positive(),
    /** Share of the expected size by which a whole table may be off before its unit is asked about. */
    wholeTable: z.number().positive().max(0.5),
    /** Fewest other readings of its own main that a reading is held against; all mains below. */
    ownMain: z.number().int().min(2),
    because: sentence,
    source: ruleSource,
  }),
  fellows: z.strictObject({
    unit: lengthUnit,
    /** How far a main's measure may stand from the middle of all mains. */
    away: z.number().positive(),
    /** Nor is one asked about within so many times the median distance from the middle. */
    spreads: z.number().min(1),
    /** Fewest mains that can tell. */
    least: z.number().int().min(3),
    /** What is asked of the person. */
    ask: sentence,
    because: sentence,
    source: ruleSource,
  }),
  machining: z.strictObject({
    unit: lengthUnit,
    honingStock: z.strictObject({ low: z.number().min(0), high: z.number().positive() }),
    honeLimit: z.number().positive(),
    because: sentence,
    source: ruleSource,
  }),
})
