import { z } from 'zod'
import { ruleSource } from '../rulebook/schema.ts'
import { price } from '../rulebook/schema-cost.ts'

/**
 * What the shop sheet and the check-in decide by: limits of measures, gauges, and the parts, work
 * and questions that are often forgotten. All of it is data in rules/limits.json and
 * rules/parts.json, each entry with its source.
 */

const sentence = z.string().min(10)
const title = z.string().min(3)
const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'write it in kebab-case')
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

const limitsFile = z.strictObject({
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

/** Shown when the called route has one of these works or parts; always when it is missing. */
const when = z
  .strictObject({
    work: z.array(z.string()).min(1).optional(),
    parts: z.array(z.string()).min(1).optional(),
  })
  .optional()

const partRule = z.strictObject({
  id,
  title,
  kind: z.enum(['part', 'work', 'check']),
  per: z.enum(['engine', 'set', 'pair']),
  when,
  price: price.optional(),
  because: sentence,
  source: ruleSource,
})
/** A part, a work or a check that is often forgotten. */
export type PartRule = z.infer<typeof partRule>

const askRule = z.strictObject({ id, text: sentence, when })
/** A sentence of the sheet with when it is on it. */
export type AskRule = z.infer<typeof askRule>

const partsFile = z.strictObject({
  currency: z.string().regex(/^[A-Z]{3}$/),
  parts: z.array(partRule).min(1),
  questions: z.array(askRule).min(1),
  before: z.array(askRule).min(1),
  after: z.array(askRule).min(1),
})

/** rules/limits.json and rules/parts.json, read and checked. */
export type ShopRules = z.infer<typeof limitsFile> & { readonly often: z.infer<typeof partsFile> }

/** A fault in rules/limits.json or rules/parts.json: file, field and what is wrong. */
export class ShopRulesError extends Error {
  constructor(readonly faults: readonly string[]) {
    super(`the shop's rules cannot be used:\n  ${faults.join('\n  ')}`)
    this.name = 'ShopRulesError'
  }
}

/**
 * Read limits and parts from the texts of rules/.
 *
 * @param files - path below rules/ → text, as `readFolder` gives it
 * @throws {ShopRulesError} naming file and field of every fault found
 */
export function loadShopRules(files: ReadonlyMap<string, string>): ShopRules {
  const faults: string[] = []
  const limits = readFile(files, 'limits.json', limitsFile, faults)
  const often = readFile(files, 'parts.json', partsFile, faults)
  if (!limits || !often) throw new ShopRulesError(faults)
  return { ...limits, often }
}

function readFile<S extends z.ZodType>(
  files: ReadonlyMap<string, string>,
  name: string,
  schema: S,
  faults: string[],
): z.output<S> | undefined {
  const text = files.get(name)
  if (text === undefined) return void faults.push(`${name}: the file is missing`)
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch (error) {
    return void faults.push(`${name}: is not JSON: ${(error as Error).message}`)
  }
  const parsed = schema.safeParse(json)
  if (parsed.success) return parsed.data
  for (const { path, message } of parsed.error.issues) {
    faults.push(`${name}: ${path.join('.') || 'file'}: ${message}`)
  }
  return undefined
}
