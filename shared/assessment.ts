import { z } from 'zod'
import { loadReport } from './load-report.ts'
import { marginId, routeId } from './route-ids.ts'

/**
 * What an assessment answers with: the shape of `POST /api/assess`, and all that
 * the pages draw from. Figures carry their unit; angles are degrees of crank after
 * firing dead centre of cylinder 1 unless said otherwise.
 */

export const figure = z.object({ value: z.number(), unit: z.string() })
export type Figure = z.infer<typeof figure>

export const spread = z.object({ low: z.number(), likely: z.number(), high: z.number() })
export type Spread = z.infer<typeof spread>

export const source = z.object({
  kind: z.enum(['published', 'practice', 'memory', 'computed', 'said']),
  /** Author, title, edition, place; empty for practice, memory, computed and said. */
  cite: z.string(),
})
export type Source = z.infer<typeof source>

/** One live value that a sentence or a rule rests on. */
const liveFact = z.object({
  key: z.string(),
  label: z.string(),
  value: z.union([z.number(), z.string(), z.boolean()]),
  unit: z.string(),
  /** As a person reads it. */
  text: z.string(),
  state: z.enum(['said', 'derived', 'assumed', 'computed']),
})
export type LiveFact = z.infer<typeof liveFact>

/** A rule that fired, with its sentence filled in. */
export const finding = z.object({
  rule: z.string(),
  title: z.string(),
  /** Markdown, live numbers in place. */
  text: z.string(),
  severity: z.enum(['note', 'caution', 'danger']),
  facts: z.array(liveFact),
  source,
})
export type Finding = z.infer<typeof finding>

export const contradiction = finding.extend({
  /** The pair (or more) of facts that cannot be true together: those said, and the likelier slip though it was taken. */
  between: z.array(z.string()),
  /** The fact that is likelier the slip, when there is one. */
  likelierSlip: z.string().nullable(),
  /** Slips of the pen that would explain it: the fact, and the answer that was then meant. */
  slips: z
    .array(
      z.object({ fact: z.string(), kind: z.enum(['decimal-point', 'unit']), meant: z.string() }),
    )
    .optional(),
  /** Whether the call is withheld or only hedged while it stands. */
  effect: z.enum(['withhold', 'hedge']),
})
export type Contradiction = z.infer<typeof contradiction>

const buildEntry = z.object({
  state: z.enum(['said', 'derived', 'assumed', 'not-needed']),
  /** In the fact's usual unit; choices and threads as text; null when not needed. */
  value: z.union([z.number(), z.string()]).nullable(),
  unit: z.string(),
  low: z.number().optional(),
  high: z.number().optional(),
  text: z.string(),
  /** Why this value stands in, when the person did not say it. */
  because: z.string().optional(),
  source: source.optional(),
})
export type BuildEntry = z.infer<typeof buildEntry>

export const margins = z.object({
  hold: spread,
  grip: spread,
  separation: spread,
  capFatigue: spread,
  fastenerProof: spread,
  threadStrip: spread,
})
export type Margins = z.infer<typeof margins>

const costItem = spread.extend({
  id: z.string(),
  label: z.string(),
  kind: z.enum(['part', 'work']),
  /** `listed`: the shop's own price, from its list. */
  state: z.enum(['said', 'assumed', 'listed']),
  source,
  /** Of a listed price in another currency: that currency, and what one of it was taken to be worth. */
  converted: z.object({ from: z.string(), rate: z.number(), source }).optional(),
})
export type CostItem = z.infer<typeof costItem>

export const routeCost = spread.extend({
  currency: z.string(),
  items: z.array(costItem),
})
export type RouteCost = z.infer<typeof routeCost>

export const routeReport = z.object({
  id: routeId,
  title: z.string(),
  possible: z.boolean(),
  whyNot: z.string().optional(),
  margins,
  /** Of 100 sampled cases, how many hold. Not a failure probability. */
  holdsIn: z.number(),
  neededHoldsIn: z.number(),
  holds: z.boolean(),
  cost: routeCost,
  work: z.array(z.string()),
  parts: z.array(z.string()),
  for: z.array(finding),
  against: z.array(finding),
  /** What the route changes in the build, as a person reads it. */
  changes: z.array(z.object({ label: z.string(), from: z.string(), to: z.string() })),
  /** Numbers that the drawing of the cap needs. */
  joint: z.object({
    /** Clamp of all vertical fasteners of one cap after settling, kN. */
    clamp: z.number(),
    preload: z.number(),
    friction: z.number(),
    registerCapacity: z.number(),
    crossCapacity: z.number(),
    loadFactor: z.number(),
    shareOfProof: z.number(),
    /** Left out where an angle or a stretch sets the preload. */
    torque: figure.optional(),
  }),
  /** What lower-the-target comes down to; only on that route. */
  lowered: z.object({ boost: figure, rpm: z.number(), power: figure }).optional(),
})
export type RouteReport = z.infer<typeof routeReport>

export const call = z.object({
  route: routeId.nullable(),
  title: z.string(),
  /** The call in one sentence. */
  sentence: z.string(),
  confidence: z.enum(['settled', 'likely', 'withheld']),
  /** The open fact to find out first: what is asked next, or of what nobody knows the weightiest. */
  settledBy: z.string().nullable(),
  /** Of a lowered target: which open answers move its figures most, though the route may be settled. */
  targetMoves: z.string().optional(),
  reasons: z.array(finding),
  mustDo: z.array(z.string()),
  followOn: z.array(z.object({ id: z.string(), title: z.string(), text: z.string(), source })),
  insteadOf: z.array(z.object({ route: routeId, why: z.string() })),
})
export type Call = z.infer<typeof call>

const turningPoint = z.object({
  fact: z.string(),
  label: z.string(),
  now: z.string(),
  /** The nearest value that changes the call. */
  at: z.string(),
  direction: z.enum(['below', 'above', 'is']),
  route: routeId.nullable(),
  text: z.string(),
})
export type TurningPoint = z.infer<typeof turningPoint>

export const assumption = z.object({
  fact: z.string(),
  label: z.string(),
  text: z.string(),
  because: z.string(),
  source,
  /** Calls that stay open while this is not known. */
  calls: z.array(routeId),
  /** Whether an answer could change the call; null when that was not tried. */
  matters: z.enum(['alone', 'with-others', 'no']).nullable(),
  measure: z.string(),
})
export type Assumption = z.infer<typeof assumption>

/** The assumptions whose answer could still change the call, those that could alone first. */
export function stillOpen(assumptions: readonly Assumption[]): Assumption[] {
  return (['alone', 'with-others'] as const).flatMap((how) =>
    assumptions.filter(({ matters }) => matters === how),
  )
}

/** What to find out first, then all else that could still change the call. */
export function toFindOut({
  assumptions,
  call: { settledBy },
}: Pick<Assessment, 'assumptions' | 'call'>): Assumption[] {
  const first = assumptions.filter((one) => one.fact === settledBy)
  return [...new Set([...first, ...stillOpen(assumptions)])]
}

export const nextQuestion = z.object({
  fact: z.string(),
  label: z.string(),
  why: z.string(),
  /** Calls that the answer can still separate. */
  separates: z.array(routeId),
  /** Questions, this one included, that are needed before a call may show. */
  needed: z.number().int(),
  /** Questions, this one included, that can still change the call; while some are needed, at most so many. */
  left: z.number().int(),
})
export type NextQuestion = z.infer<typeof nextQuestion>

export const costReport = spread.extend({
  currency: z.string(),
  route: routeId.nullable(),
  items: z.array(costItem),
  stake: z.number(),
  stakeState: z.enum(['said', 'assumed']),
  breakEvenChance: z.number().nullable(),
  budget: z.number().nullable(),
  beforeTax: z.boolean(),
})
export type CostReport = z.infer<typeof costReport>

/** One equation of the working, in words and with this build's numbers. */
export const workingStep = z.object({
  title: z.string(),
  formula: z.string(),
  withNumbers: z.string(),
  result: z.string(),
  source,
})
export type WorkingStep = z.infer<typeof workingStep>

/** How much of the spread of the called route's weakest margin each doubtful figure accounts for. */
export const uncertainty = z.object({
  margin: marginId,
  label: z.string(),
  /** Share of the spread that all of them together explain, 0 to 1. */
  explained: z.number(),
  shares: z.array(z.object({ id: z.string(), label: z.string(), share: z.number() })),
})
export type Uncertainty = z.infer<typeof uncertainty>

export const assessment = z.object({
  version: z.string().describe('Version of the rulebook.'),
  /** The canonical link query of these answers. */
  link: z.string().describe('The canonical link query of these answers.'),
  build: z
    .record(z.string(), buildEntry)
    .describe('Every fact: said, derived or assumed, and why that value stands.'),
  loads: loadReport.describe('Pressure, power, and the load on every main over two turns.'),
  routes: z.array(routeReport).describe('Every route with margins, share of cases held, and cost.'),
  call: call.describe('The recommendation, its reasons, and what must be done with it.'),
  cautions: z.array(finding).describe('What to take care of, with the rule and its source.'),
  contradictions: z.array(contradiction).describe('Answers that cannot be true together.'),
  turningPoints: z.array(turningPoint).describe('The nearest changes that change the call.'),
  assumptions: z.array(assumption).describe('What stands in for each fact that was not said.'),
  next: nextQuestion.nullable().describe('The question that could change the call most.'),
  cost: costReport.describe('Cost of the called route against the money at stake.'),
  working: z
    .array(workingStep)
    .describe('The likely case of the called route, equation by equation.'),
  uncertainty: uncertainty.describe('What makes the estimate of the called route unsure.'),
})
export type Assessment = z.infer<typeof assessment>
