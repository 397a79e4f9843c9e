import { z } from 'zod'
import { ROUTE_IDS, routeId } from '../../shared/route-ids.ts'

/** Operators of json-rules-engine that a rule may use; any other would load silently and never be true. */
export const OPERATORS = [
  'equal',
  'notEqual',
  'in',
  'notIn',
  'lessThan',
  'lessThanInclusive',
  'greaterThan',
  'greaterThanInclusive',
] as const
export type Operator = (typeof OPERATORS)[number]

const scalar = z.union([z.string().min(1), z.number(), z.boolean()])
const value = z.union([
  scalar,
  z.array(z.union([z.string().min(1), z.number()])).min(1),
  /** Compare with another fact in place of a constant. */
  z.strictObject({ fact: z.string().min(1) }),
])

export interface Leaf {
  readonly fact: string
  readonly operator: Operator
  readonly value:
    | string
    | number
    | boolean
    | readonly (string | number)[]
    | { readonly fact: string }
}
export type Condition =
  | Leaf
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition }

const leaf = z.strictObject({ fact: z.string().min(1), operator: z.enum(OPERATORS), value })

// strictObject refuses `path`, `params`, `priority` and a root with two operators; min(1) refuses
// `all: []` and `any: []`, which json-rules-engine takes for true.
const condition: z.ZodType<Condition> = z.lazy(() =>
  z.union([
    leaf as z.ZodType<Leaf>,
    z.strictObject({ all: z.array(condition).min(1) }),
    z.strictObject({ any: z.array(condition).min(1) }),
    z.strictObject({ not: condition }),
  ]),
)

const rootCondition = z.union([
  z.strictObject({ all: z.array(condition).min(1) }),
  z.strictObject({ any: z.array(condition).min(1) }),
])

export const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'write it in kebab-case')
export const sentence = z.string().min(10)

export const ruleSource = z
  .strictObject({
    kind: z.enum(['published', 'practice', 'memory']),
    cite: z.string().min(5).optional(),
  })
  .refine((source) => source.kind !== 'published' || source.cite, 'a published source needs a cite')
export type RuleSource = z.infer<typeof ruleSource>

const buildEffect = z.discriminatedUnion('effect', [
  z.strictObject({ effect: z.literal('caution') }),
  z.strictObject({ effect: z.literal('at-least'), route: routeId }),
  z.strictObject({
    effect: z.literal('contradiction'),
    between: z.array(z.string()).min(2),
    likelierSlip: z.string().nullable(),
    call: z.enum(['withhold', 'hedge']),
  }),
])
const routeEffect = z.strictObject({
  effect: z.enum(['impossible', 'does-not-hold', 'for', 'against']),
})
const choiceEffect = z.strictObject({
  effect: z.enum(['step-up', 'say', 'cannot-afford']),
})
const followOnEffect = z.strictObject({ effect: z.literal('must-do'), id })

const common = {
  id,
  title: sentence,
  conditions: rootCondition,
  because: sentence,
  instead: sentence.optional(),
  except: sentence.optional(),
  source: ruleSource,
  severity: z.enum(['note', 'caution', 'danger']).default('note'),
}

/**
 * A rule: json-rules-engine conditions over flat facts, and our own text around
 * them. `scope` says which facts it sees and how often it runs: `build` once,
 * `route` once for each route, `choice` for the route that would be called,
 * `follow-on` for the one that is.
 */
export const ruleSchema = z.discriminatedUnion('scope', [
  z.strictObject({ ...common, scope: z.literal('build'), outcome: buildEffect }),
  z.strictObject({ ...common, scope: z.literal('route'), outcome: routeEffect }),
  z.strictObject({ ...common, scope: z.literal('choice'), outcome: choiceEffect }),
  z.strictObject({ ...common, scope: z.literal('follow-on'), outcome: followOnEffect }),
])
export type Rule = z.infer<typeof ruleSchema>
export type Scope = Rule['scope']

export const spread = z
  .strictObject({ low: z.number(), likely: z.number(), high: z.number() })
  .refine(({ low, likely, high }) => low <= likely && likely <= high, 'low ≤ likely ≤ high')

const oneOf = z.strictObject({ fact: z.string(), in: z.array(z.string()).min(1) })
const change = z.union([
  z.string(),
  /** A choice, but not for builds of some kinds. */
  z.strictObject({ to: z.string(), unless: oneOf }),
  z.strictObject({ times: z.number().positive(), unless: oneOf.optional() }),
  z.strictObject({ atLeast: z.number() }),
  /** A formula of the mechanics over the changed build, as in assumptions.json. */
  z.strictObject({ formula: z.enum(['torque-at-proof-share']), at: z.number() }),
])

const itemWhen = z.union([
  oneOf,
  z.strictObject({ all: z.array(oneOf).min(2) }),
  z.strictObject({ any: z.array(oneOf).min(2) }),
])
/** When a part or a piece of work applies to a build as it stands. */
export type ItemWhen = z.infer<typeof itemWhen>

const routeItem = z.union([id, z.strictObject({ item: id, when: itemWhen })])
export type RouteItem = z.infer<typeof routeItem>

const routeSchema = z.strictObject({
  id: routeId,
  title: sentence,
  /** Rank of how much it changes; ties in cost go to the lower. */
  strength: z.int().min(0),
  /** The call in one sentence, live numbers in {{places}}. */
  call: sentence,
  /** Title and call where not even this route holds anything. */
  none: z.strictObject({ title: sentence, call: sentence }).optional(),
  /** The same where it would hold, but a rule of practice asks for more whatever the target. */
  practice: z.strictObject({ title: sentence, call: sentence }).optional(),
  /** Title and call where the crank is held between two halves of a case. */
  splitCase: z.strictObject({ title: sentence, call: sentence }).optional(),
  /** The same where the plan as it is would hold, but the work that it needs is beyond the budget. */
  unpaid: z.strictObject({ title: sentence, call: sentence }).optional(),
  /** What it changes in the build, by fact key. */
  changes: z.record(z.string(), change),
  /** Items of the route, by id in cost.json; some only when a fact has one of some values. */
  parts: z.array(routeItem),
  work: z.array(routeItem),
})
export type Route = z.infer<typeof routeSchema>

export const routesSchema = z
  .array(routeSchema)
  .refine(
    (routes) => ROUTE_IDS.every((wanted) => routes.filter(({ id }) => id === wanted).length === 1),
    `each of ${ROUTE_IDS.join(', ')} once`,
  )
