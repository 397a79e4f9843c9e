import type { Finding, RouteReport } from '../../shared/assessment.ts'
import { buildValues, type FactTable } from '../facts/live-facts.ts'
import { findingOf, gravestFirst, inOrder } from '../findings/collect.ts'
import { layered } from '../rulebook/layered-facts.ts'
import { runRulesNow } from '../rulebook/run.ts'
import type { Rule } from '../rulebook/schema.ts'
import type { Decision } from './decide.ts'
import type { LoweredTarget } from './lower-target.ts'
import { loweredTable, type ReportContext } from './routes-report.ts'

/**
 * What to take care of: the cautions about the build, and what speaks against the called route
 * where it is more than a note. A drawback of the route that was chosen is a caution of the call;
 * one of a route that was left stays with that route. Where the target is lowered, they are of the
 * engine as it is then run.
 *
 * @param routes - reports of all routes, the called one as the call means it (a target lowered)
 */
export function cautionsOf(
  decision: Decision,
  lowered: LoweredTarget,
  routes: readonly RouteReport[],
  context: ReportContext,
): Finding[] {
  const { route } = decision
  const { rules } = context.rulebook
  const [buildRules, buildTable] =
    route === 'lower-the-target' && lowered.found
      ? asLowered(lowered, context)
      : [decision.buildRules, decision.buildTable]
  const ofBuild = buildRules
    .filter(({ outcome }) => outcome.effect === 'caution')
    .map((rule) => findingOf(rule, buildTable))
  const speaksAgainst = new Set(
    rules.filter(({ outcome }) => outcome.effect === 'against').map(({ id }) => id),
  )
  const called = routes.find(({ id }) => id === route)
  const ofRoute = (called?.against ?? []).filter(
    ({ rule, severity }) => severity !== 'note' && speaksAgainst.has(rule),
  )
  return gravestFirst([...inOrder(ofBuild), ...inOrder(ofRoute)])
}

function asLowered(
  lowered: LoweredTarget,
  context: ReportContext,
): [rules: readonly Rule[], table: FactTable] {
  const known = layered(lowered.facts, buildValues(lowered.build))
  return [runRulesNow(context.rulebook.rules, 'build', known), loweredTable(lowered, context)]
}
