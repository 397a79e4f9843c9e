import { ROUTE_IDS, type RouteId } from '../../shared/route-ids.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Rule } from '../rulebook/schema.ts'
import type { DecideInput, RouteVerdict } from './look.ts'

/** All routes that could be called on their own merit, cheapest first, then the smaller change. */
export function routesByCost({ rulebook, trials }: DecideInput): RouteId[] {
  const cost = (id: RouteId): number => trials.likelyCost(id)
  const strength = (id: RouteId): number => strengthOf(rulebook, id)
  return ROUTE_IDS.filter((id) => id !== 'lower-the-target').sort(
    (a, b) => cost(a) - cost(b) || strength(a) - strength(b),
  )
}

/** How much a route changes, as the rulebook ranks it; 0 for one it does not know. */
export function strengthOf({ routes }: Rulebook, id: RouteId): number {
  return routes.find((route) => route.id === id)?.strength ?? 0
}

/** The least strength that rules of practice ask for. */
export function leastStrength(rulebook: Rulebook, fired: readonly Rule[]): number {
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
export async function firstThatHolds(
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
