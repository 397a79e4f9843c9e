import type { Finding, RouteReport } from '../../shared/assessment.ts'
import { findingOf, gravestFirst, inOrder } from '../findings/collect.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Decision } from './decide.ts'

/**
 * What to take care of: the cautions about the build, and what speaks against the called route
 * where it is more than a note. A drawback of the route that was chosen is a caution of the call;
 * one of a route that was left stays with that route.
 *
 * @param routes - reports of all routes, the called one as the call means it (a target lowered)
 */
export function cautionsOf(
  { buildRules, buildTable, route }: Decision,
  routes: readonly RouteReport[],
  { rules }: Rulebook,
): Finding[] {
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
