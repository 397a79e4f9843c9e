import type { RouteId } from '../../shared/route-ids.ts'
import { type Build, figureOf, has } from '../build/build.ts'
import { type FactTable, over } from '../facts/live-facts.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import { breakEvenChance } from '../mechanics/stake.ts'
import type { FactValue } from '../rulebook/evaluate.ts'
import { layered } from '../rulebook/layered-facts.ts'
import type { Rule } from '../rulebook/schema.ts'
import { firstThatHolds } from './ladder.ts'
import type { DecideInput, RouteVerdict } from './look.ts'
import { tableOf } from './tables.ts'

/** A budget of nothing is missed by any sum; the sentence needs a figure. */
const MOST_OVER_BUDGET = 1e6

/** What money made of the cheapest route that holds. */
interface Weighed {
  route: RouteId
  table?: () => FactTable
  rules: readonly Rule[]
  steppedUp: boolean
}

/** Money: insurance one step up, a budget missed, a budget that cannot meet it. */
export async function weigh(
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
  const table = (): FactTable => mergeTables(second.table(), first.table())
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

const OF_INSURANCE = ['holdsInSpare', 'stepUpTitle', 'stepUpCost', 'stepUpGain', 'breakEvenChance']

/** The insurance sentence speaks of the cheaper route's figures; they stand beside the others. */
function mergeTables(of: FactTable, insured: FactTable): FactTable {
  const speaks: FactTable = {
    get: (name) => (OF_INSURANCE.includes(name) ? insured.get(name) : undefined),
    value: (name) => (OF_INSURANCE.includes(name) ? insured.value(name) : undefined),
  }
  return over(speaks, of)
}

async function weighOne(
  { rulebook, run, trials, system }: DecideInput,
  { trial, facts }: RouteVerdict,
  next: RouteVerdict | undefined,
): Promise<{ table: () => FactTable; rules: readonly Rule[] }> {
  const values = choiceFacts(trials.build, trial, next?.trial)
  const table = (): FactTable =>
    tableOf(rulebook, values, facts.table(), trials.build.currency, system)
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
    facts.set('stepUpGain', next.result.holdsIn - trial.result.holdsIn)
    facts.set('breakEvenChance', stake > 0 ? 100 * Math.min(1, breakEvenChance(extra, stake)) : 100)
    facts.set('stepUpAffordable', budget === undefined || next.likelyCost <= budget)
  }
  return facts
}
