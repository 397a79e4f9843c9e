import { z } from 'zod'
import { choicesOf } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { MATERIAL_IDS } from '../mechanics/materials.ts'
import { id, ruleSchema, ruleSource, sentence, spread } from './schema.ts'

/** An entry for every choice of a fact, and for nothing else: a missing one shows when it loads. */
export function forEachChoice<S extends z.ZodType>(key: FactKey, entry: S) {
  return z.record(z.enum(Object.keys(choicesOf(fact(key)))), entry)
}

const given = z.strictObject({
  value: z.union([z.number(), z.string()]),
  low: z.number().optional(),
  high: z.number().optional(),
})
const basis = z.union([
  given,
  /** A share of another fact, in the usual units of both. */
  z.strictObject({
    of: z.string(),
    times: z.number().positive(),
    low: z.number().positive(),
    high: z.number().positive(),
    atMost: z.number().optional(),
  }),
  /** A value by steps of another fact; the last step has no `below`. */
  z.strictObject({
    of: z.string(),
    steps: z
      .array(
        z.strictObject({ below: z.number().optional(), value: z.union([z.number(), z.string()]) }),
      )
      .min(2)
      .refine((steps) => steps.at(-1)?.below === undefined, 'the last step has no `below`'),
  }),
  /** A formula of the mechanics, by name; `spread` is the share either way. */
  z.strictObject({
    formula: z.enum(['reciprocating-mass', 'big-end-mass', 'torque-at-proof-share']),
    at: z.number().optional(),
    spread: z.number().min(0).max(0.9),
  }),
])
export type Basis = z.infer<typeof basis>

/** A basis, or one for each value of another fact. */
export type Take =
  | Basis
  | {
      readonly by: string
      readonly cases: Readonly<Record<string, Take>>
      readonly otherwise: Take
    }
  | {
      /** The first figure that was said and is more than nothing decides. */
      readonly given: readonly { readonly fact: string; readonly take: Take }[]
      readonly otherwise: Take
    }
const take: z.ZodType<Take> = z.lazy(() =>
  z.union([
    basis,
    z.strictObject({ by: z.string(), cases: z.record(z.string(), take), otherwise: take }),
    z.strictObject({
      given: z.array(z.strictObject({ fact: z.string(), take })).min(1),
      otherwise: take,
    }),
  ]),
)

/** What stands in for a fact that nobody gave. */
export const assumptionSchema = z.strictObject({
  take,
  /** Values that are plausible, for choices; all of them when left out. */
  couldBe: z.array(z.string()).optional(),
  because: sentence,
  source: ruleSource,
})
export type AssumptionRule = z.infer<typeof assumptionSchema>

/** When a fact counts at all, and what the mechanics take when it does not. */
export const relevanceSchema = z.strictObject({
  when: z.array(z.strictObject({ fact: z.string(), in: z.array(z.string()).min(1) })).min(1),
  otherwise: z.union([z.number(), z.string()]),
})
export type Relevance = z.infer<typeof relevanceSchema>

/** Figures of the model that scatter: the mechanics ask for them by name. */
export const SCATTER_IDS = [
  'gasForce',
  'inertiaForce',
  'preload',
  'faceFriction',
  'registerInterference',
  'embedding',
  'capStrength',
  'threadStrength',
] as const

/** A figure of the model that scatters and that nobody can say exactly. */
export const scatterSchema = z.strictObject({
  id: z.enum(SCATTER_IDS),
  /** A word or three, for pictures. */
  short: z.string().min(3),
  label: sentence,
  unit: z.string(),
  take: z.union([spread, z.strictObject({ by: z.string(), cases: z.record(z.string(), spread) })]),
  source: ruleSource,
})
export type ScatterRule = z.infer<typeof scatterSchema>

/** At which speeds and cases the loads are worked out. */
export const loadCasesSchema = z.strictObject({
  /** Lowest full-load speed while the torque peak is not known, rpm. */
  fullLoadFrom: z.number().positive(),
  fullLoadSpeeds: z.int().min(3).max(12),
  /** Closed-throttle overspeed over the highest speed. */
  overspeed: z.number().min(1).max(1.3),
  /** Share of the highest speed at which a stated power is taken to be made. */
  powerPeak: z.number().min(0.5).max(1),
  samples: z.int().min(32).max(1024),
  seed: z.int(),
  because: sentence,
  source: ruleSource,
})
export type LoadCases = z.infer<typeof loadCasesSchema>

/** How a kind of cap fastening is built. */
export const fasteningSchema = z.strictObject({
  inner: z.int().min(2),
  outer: z.int().min(0),
  /** Lean of the outer fasteners from the vertical, degrees. */
  outerLean: z.number().min(0).max(45),
  /** Diameter of the outer fasteners over that of the inner ones: any thread that is taken fits. */
  outerSize: z.number().min(0.8).max(1.5),
  crossBolts: z.int().min(0),
  girdle: z.boolean(),
  /** How far the feet of the cap count as built in: 0 free, 1 built in. */
  footFixity: z.number().min(0).max(1),
  source: ruleSource,
})
export type Fastening = z.infer<typeof fasteningSchema>

/** What counts as holding: least margins, and in how many of 100 sampled cases by use. */
export const holdingSchema = z.strictObject({
  margins: z.strictObject({
    hold: z.number(),
    grip: z.number(),
    separation: z.number(),
    capFatigue: z.number(),
    fastenerProof: z.number(),
    threadStrip: z.number(),
  }),
  needed: z.record(z.string(), z.number().min(0).max(100)),
  /** Hardest last. */
  hardness: z.array(z.string()),
  because: sentence,
  source: ruleSource,
})
export type Holding = z.infer<typeof holdingSchema>

export const questionSchema = z.strictObject({
  fact: z.string(),
  ask: sentence,
  why: sentence,
  /** Asked before any call is shown. */
  essential: z.boolean().default(false),
  /** False for what nobody changes to change the call: no turning point is looked for. */
  turns: z.boolean().default(true),
})
export type Question = z.infer<typeof questionSchema>

export const presetSchema = z.strictObject({
  id,
  title: z.string().min(3),
  summary: sentence,
  answers: z.record(z.string(), z.unknown()),
})
export type Preset = z.infer<typeof presetSchema>

export const changeSchema = z.strictObject({
  version: z.string().regex(/^\d+\.\d+\.\d+$/),
  date: z.string().regex(/^\d{4}-\d{2}-\d{2}$/),
  area: z.string().min(3),
  effect: sentence,
  /**
   * The rules that it changed, by id, as they were before; null for a rule that is
   * new. With it an old link is told whether, and by which rule, its call changed.
   */
  was: z.record(z.string(), z.lazy(() => ruleSchema).nullable()).optional(),
})
export type Change = z.infer<typeof changeSchema>

/** A computed fact that rules may use. */
export const computedFactSchema = z.strictObject({
  label: z.string().min(3),
  unit: z.string(),
  decimals: z.int().min(0).max(6),
  scope: z.enum(['build', 'route', 'choice', 'follow-on']),
  kind: z.enum(['number', 'choice', 'flag']).default('number'),
})
export type ComputedFact = z.infer<typeof computedFactSchema>

/** Follow-on work: what a `must-do` id means. */
export const followOnSchema = z.strictObject({
  title: sentence,
  text: sentence,
  source: ruleSource,
  /** Place in the order of work; lower first. Absent: not a step. */
  step: z.number().optional(),
  /** A step of every route, whatever the rules say. */
  always: z.boolean().default(false),
  at: z.enum(['home', 'shop']).optional(),
  /** A question to a shop: an enquiry to it is that step. */
  asksShop: z.boolean().default(false),
})
export type FollowOn = z.infer<typeof followOnSchema>

const constant = z.strictObject({
  value: z.number().positive(),
  because: sentence,
  source: ruleSource,
})
const why = { because: sentence, source: ruleSource }

/** What the joint's model takes for sizes that no builder is asked for. */
export const jointSchema = z.strictObject({
  gripOverCapHeight: constant,
  headOverDiameter: constant,
  /** m */
  shellThickness: constant,
  engagementOverDiameter: z.strictObject({
    'gray-iron': z.number(),
    'compacted-iron': z.number(),
    aluminium: z.number(),
    ...why,
  }),
  /** Of compressive strength: crushing for gray iron, yield for others. */
  registerPressureShare: z.strictObject({ 'gray-iron': z.number(), other: z.number(), ...why }),
  /** Share of proof load where something else than torque sets the preload. */
  turnedTo: z.strictObject({
    'torque-angle': z.number().positive().max(1),
    stretch: z.number().positive().max(1),
    ...why,
  }),
  girdle: z.strictObject({ stiffnessShare: z.number().min(0).max(0.6), ...why }),
  crossBolt: z.strictObject({
    sizeOverInner: z.number().min(0.6).max(1.5),
    proofShare: z.number(),
    ...why,
  }),
  crossBoltGrade: z.string(),
  intercoolerEffectiveness: z.strictObject({ none: z.number(), intercooler: z.number(), ...why }),
  /** Choice → material of the mechanics. */
  capMaterial: forEachChoice('capMaterial', z.enum(MATERIAL_IDS)),
  blockMaterial: forEachChoice('blockMaterial', z.enum(MATERIAL_IDS)),
})
export type JointConstants = z.infer<typeof jointSchema>
