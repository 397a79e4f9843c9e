import type { RouteId } from '../../shared/route-ids.ts'
import type { Build } from '../build/build.ts'
import type { FlatFacts } from '../rulebook/evaluate.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Route } from '../rulebook/schema.ts'
import { buildFacts } from './build-facts.ts'
import { likelyRouteCost } from './cost.ts'
import type { Calibration } from './engine-gas.ts'
import { type EngineLoads, engineLoads, withBoost } from './engine-loads.ts'
import { jointOf } from './joint.ts'
import { type Memory, newMemory, once, remembered } from './memory.ts'
import { type RouteTrial, tryRoute } from './route-facts.ts'

/** A build with its loads, and every route tried on it when it is asked for. */
export interface Trials {
  readonly build: Build
  /** Where the engine is known already, worked out when they are first read. */
  readonly loads: EngineLoads
  /** Computed facts of the build itself. */
  readonly facts: FlatFacts
  trial(id: RouteId): RouteTrial
  /** What a route would likely cost; much cheaper than trying it. */
  likelyCost(id: RouteId): number
}

/**
 * Work out a build. Routes are tried on demand, since a sweep seldom needs all.
 *
 * @param memory - keeps what was worked out from build to build; a fresh one when left out
 * @param calibration - when the engine is known already: its target is changed, it is not
 */
export function trialsOf(
  before: Build,
  rulebook: Rulebook,
  memory: Memory = newMemory(),
  calibration?: Calibration,
): Trials {
  const loads = once(() => engineLoads(before, rulebook, memory, calibration))
  // Only a target power that is yet to be met sets the boost.
  const build = calibration ? before : withBoost(before, loads())
  const { model: present } = jointOf(build, rulebook, memory)
  const worked = {
    build,
    present,
    rulebook,
    get loads() {
      return loads()
    },
  }
  const tried = new Map<RouteId, RouteTrial>()
  const costs = new Map<string, number>()
  const likelyCost = (id: RouteId): number =>
    remembered(costs, id, () => likelyRouteCost(routeOf(rulebook, id), build, rulebook))
  return {
    build,
    get loads() {
      return loads()
    },
    facts: buildFacts(worked, calibration ? undefined : loads().reachable),
    likelyCost,
    trial(id) {
      let found = tried.get(id)
      if (!found) {
        const standing = { build, loads: loads(), rulebook, memory }
        found = tryRoute(routeOf(rulebook, id), likelyCost(id), standing)
        tried.set(id, found)
      }
      return found
    },
  }
}

function routeOf({ routes }: Rulebook, id: RouteId): Route {
  const route = routes.find((one) => one.id === id)
  if (!route) throw new RangeError(`no route is called ${id}`)
  return route
}
