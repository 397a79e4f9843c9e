import type { Answers } from '../../shared/answers.ts'
import { ROUTE_IDS, type RouteId } from '../../shared/route-ids.ts'
import { type Build, figureOf, has } from '../build/build.ts'
import {
  buildTable,
  buildValues,
  computed,
  type FactTable,
  type UnitSystem,
} from '../facts/live-facts.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import type { Trials } from '../facts/trials.ts'
import { breakEvenChance } from '../mechanics/stake.ts'
import type { FactValue, FlatFacts } from '../rulebook/evaluate.ts'
import { layered } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Rule, Scope } from '../rulebook/schema.ts'
import { tableOf } from './tables.ts'

/** Runs the rules of one scope: json-rules-engine for a call, the synchronous evaluator in sweeps. */
export type RunRules = (
  rules: readonly Rule[],
  scope: Scope,
  facts: FlatFacts,
) => readonly Rule[] | Promise<readonly Rule[]>

/** Facts as rules read them, and as people do; a sweep asks for the first alone. */
interface FactLayer {
  readonly values: FlatFacts
  readonly table: () => FactTable
}

function once<T>(make: () => T): () => T {
  let made: T | undefined
  return () => {
    made ??= make()
    return made
  }
}

/** What the rules said of one route. */
export interface RouteVerdict {
  readonly trial: RouteTrial
  readonly facts: FactLayer
  /** Of its facts; made when it is first read. */
  readonly table: FactTable
  readonly fired: readonly Rule[]
  readonly possible: boolean
  readonly holds: boolean
}

/** Which route is called, and every rule that had a say. */
export interface Decision {
  readonly route: RouteId | null
  /** The route that would be called if no contradiction stood. */
  readonly wouldBe: RouteId
  readonly buildTable: FactTable
  readonly buildRules: readonly Rule[]
  /** Verdicts of the routes that were looked at. */
  readonly verdicts: ReadonlyMap<RouteId, RouteVerdict>
  /** Facts and rules of the choice, for the route that was weighed last. */
  readonly choiceTable: FactTable
  readonly choiceRules: readonly Rule[]
  /** The route that would do by the numbers, when insurance or practice asks for another. */
  readonly byNumbers: RouteId | null
  readonly steppedUp: boolean
}

export interface DecideInput {
  readonly answers: Answers
  readonly trials: Trials
  readonly rulebook: Rulebook
  readonly run: RunRules
  readonly system: UnitSystem
  /** Look at every route, also those that cannot change the call. */
  readonly everyRoute: boolean
}

/**
 * Choose a route: the cheapest possible one that holds in enough sampled cases,
 * then what practice asks for, then money. Every limit is a rule; this only keeps
 * their order.
 */
export async function decide(input: DecideInput): Promise<Decision> {
  const { rulebook, run, trials, system, answers } = input
  const { build } = trials
  const said = (): FactTable => buildTable(build, answers, system)
  const facts: FactLayer = {
    values: layered(trials.facts, buildValues(build)),
    table: once(() => tableOf(rulebook, trials.facts, said(), build.currency, system)),
  }
  const buildRules = await run(rulebook.rules, 'build', facts.values)
  const look = looker(input, facts)
  if (input.everyRoute) for (const id of ROUTE_IDS) await look.at(id)

  const least = leastStrength(rulebook, buildRules)
  const ladder = routesByCost(input)
  const byNumbers = input.everyRoute ? await firstThatHolds(input, ladder, look.at, 0) : undefined
  const candidate = await firstThatHolds(input, ladder, look.at, least)
  const weighed = await weigh(input, candidate, ladder, look.at)
  const wouldBe = weighed.route
  const withheld = buildRules.some(
    ({ outcome }) => outcome.effect === 'contradiction' && outcome.call === 'withhold',
  )
  return {
    route: withheld ? null : wouldBe,
    wouldBe,
    get buildTable() {
      return facts.table()
    },
    buildRules,
    verdicts: look.seen,
    get choiceTable() {
      return (weighed.table ?? facts.table)()
    },
    choiceRules: weighed.rules,
    byNumbers: byNumbers?.trial.route.id ?? null,
    steppedUp: weighed.steppedUp,
  }
}

/** Tries routes and runs their rules, each once. */
function looker({ rulebook, run, trials, system }: DecideInput, build: FactLayer) {
  const seen = new Map<RouteId, RouteVerdict>()
  const at = async (id: RouteId): Promise<RouteVerdict> => {
    const known = seen.get(id)
    if (known) return known
    const trial = trials.trial(id)
    const { currency } = trials.build
    const table = once(() => tableOf(rulebook, trial.facts, build.table(), currency, system))
    const facts = { values: layered(trial.facts, build.values), table }
    const fired = await run(rulebook.rules, 'route', facts.values)
    const verdict = {
      trial,
      facts,
      get table() {
        return table()
      },
      fired,
      possible: !fired.some(({ outcome }) => outcome.effect === 'impossible'),
      holds: !fired.some(({ outcome }) => outcome.effect === 'does-not-hold'),
    }
    seen.set(id, verdict)
    return verdict
  }
  return { at, seen }
}

/** All routes that could be called on their own merit, cheapest first, then the smaller change. */
function routesByCost({ rulebook, trials }: DecideInput): RouteId[] {
  const cost = (id: RouteId): number => trials.likelyCost(id)
  const strength = (id: RouteId): number => strengthOf(rulebook, id)
  return ROUTE_IDS.filter((id) => id !== 'lower-the-target').sort(
    (a, b) => cost(a) - cost(b) || strength(a) - strength(b),
  )
}

export function strengthOf({ routes }: Rulebook, id: RouteId): number {
  return routes.find((route) => route.id === id)?.strength ?? 0
}

/** The least strength that rules of practice ask for. */
function leastStrength(rulebook: Rulebook, fired: readonly Rule[]): number {
  return fired.reduce(
    (least, { outcome }) =>
      outcome.effect === 'at-least' ? Math.max(least, strengthOf(rulebook, outcome.route)) : least,
    0,
  )
}

/**
 * The first route of the ladder that is possible, holds and is strong enough. A
 * dearer route that changes less than one that was refused for not holding is passed
 * over: more load would otherwise lead from a stronger route back to a weaker one.
 */
async function firstThatHolds(
  { rulebook }: DecideInput,
  ladder: readonly RouteId[],
  look: (id: RouteId) => Promise<RouteVerdict>,
  leastRank: number,
): Promise<RouteVerdict | undefined> {
  let least = leastRank
  for (const id of ladder) {
    const strength = strengthOf(rulebook, id)
    // Neither called nor able to raise the least, whatever comes of it.
    if (strength < least) continue
    const verdict = await look(id)
    if (!verdict.possible) continue
    if (verdict.holds) return verdict
    least = strength + 1
  }
  return undefined
}

interface Weighed {
  route: RouteId
  table?: () => FactTable
  rules: readonly Rule[]
  steppedUp: boolean
}

/** Money: insurance one step up, a budget missed, a budget that cannot meet it. */
async function weigh(
  input: DecideInput,
  candidate: RouteVerdict | undefined,
  ladder: readonly RouteId[],
  look: (id: RouteId) => Promise<RouteVerdict>,
): Promise<Weighed> {
  if (!candidate) return { route: 'lower-the-target', rules: [], steppedUp: false }
  const dearer = ladder.slice(ladder.indexOf(candidate.trial.route.id) + 1)
  const next = await firstThatHolds(input, dearer, look, candidate.trial.route.strength + 1)
  const first = await weighOne(input, candidate, next)
  const stepUp = next !== undefined && hasEffect(first.rules, 'step-up')
  if (!stepUp || !next) return settled(candidate, first, false)
  // Both the insurance rule and what the dearer route's own money says are kept.
  const second = await weighOne(input, next, undefined)
  const rules = [...first.rules.filter(isStepUp), ...second.rules]
  const table = once(() => mergeTables(second.table(), first.table()))
  return settled(next, { table, rules }, true)
}

function settled(
  verdict: RouteVerdict,
  { table, rules }: Pick<Weighed, 'rules'> & { table: () => FactTable },
  steppedUp: boolean,
): Weighed {
  const unaffordable = hasEffect(rules, 'cannot-afford')
  const route = unaffordable ? 'lower-the-target' : verdict.trial.route.id
  return { route, table, rules, steppedUp: steppedUp && !unaffordable }
}

function isStepUp({ outcome }: Rule): boolean {
  return outcome.effect === 'step-up'
}

function hasEffect(rules: readonly Rule[], effect: string): boolean {
  return rules.some(({ outcome }) => outcome.effect === effect)
}

/** The insurance sentence speaks of the cheaper route's figures; they stand beside the others. */
function mergeTables(of: FactTable, insured: FactTable): FactTable {
  const merged = new Map(of)
  for (const name of ['holdsInSpare', 'stepUpTitle', 'stepUpCost', 'breakEvenChance']) {
    const found = insured.get(name)
    if (found) merged.set(name, found)
  }
  return merged
}

async function weighOne(
  { rulebook, run, trials, system }: DecideInput,
  { trial, facts }: RouteVerdict,
  next: RouteVerdict | undefined,
): Promise<{ table: () => FactTable; rules: readonly Rule[] }> {
  const values = choiceFacts(trials.build, trial, next?.trial)
  const context = { currency: trials.build.currency, system }
  const table = once(() => {
    const choice = new Map(facts.table())
    for (const [name, value] of values) choice.set(name, computed(rulebook, name, value, context))
    return choice
  })
  return { table, rules: await run(rulebook.rules, 'choice', layered(values, facts.values)) }
}

function choiceFacts(
  build: Build,
  trial: RouteTrial,
  next: RouteTrial | undefined,
): Map<string, FactValue> {
  const facts = new Map<string, FactValue>()
  const budget = has(build, 'budget') ? figureOf(build, 'budget') : undefined
  if (budget !== undefined) {
    const over = (100 * (trial.likelyCost - budget)) / Math.max(budget, 1)
    facts.set('costOverBudget', Math.min(over, MOST_OVER_BUDGET))
  }
  if (next) {
    const extra = Math.max(0, next.likelyCost - trial.likelyCost)
    const stake = figureOf(build, 'invested')
    facts.set('stepUpTitle', next.route.title)
    facts.set('stepUpCost', extra)
    facts.set('breakEvenChance', stake > 0 ? 100 * Math.min(1, breakEvenChance(extra, stake)) : 100)
    facts.set('stepUpAffordable', budget === undefined || next.likelyCost <= budget)
  }
  return facts
}

/** A budget of nothing is missed by any sum; the sentence needs a figure. */
const MOST_OVER_BUDGET = 1e6
