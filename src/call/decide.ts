import { ROUTE_IDS, type RouteId } from '../../shared/route-ids.ts'
import { buildTable, buildValues, type FactTable } from '../facts/live-facts.ts'
import { once } from '../facts/memory.ts'
import { layered } from '../rulebook/layered-facts.ts'
import type { Rule } from '../rulebook/schema.ts'
import { firstThatHolds, leastStrength, routesByCost } from './ladder.ts'
import { type DecideInput, type FactLayer, looker, type RouteVerdict } from './look.ts'
import { tableOf } from './tables.ts'
import { weigh } from './weigh.ts'

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
