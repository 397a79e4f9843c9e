import type { RouteId } from '../../shared/assessment.ts'
import { fromSi } from '../../shared/units.ts'
import type { Build } from '../build/build.ts'
import type { FactValue } from '../rulebook/evaluate.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Route } from '../rulebook/schema.ts'
import { buildFacts } from './build-facts.ts'
import { likelyRouteCost } from './cost.ts'
import { type EngineLoads, engineLoads, loadsKey } from './engine-loads.ts'
import { jointModel } from './joint-model.ts'
import { type RouteTrial, tryRoute } from './route-facts.ts'
import { drawSamples, type Samples } from './samples.ts'

/** A build with its loads, and every route tried on it when it is asked for. */
export interface Trials {
  readonly build: Build
  readonly loads: EngineLoads
  /** Computed facts of the build itself. */
  readonly facts: ReadonlyMap<string, FactValue>
  trial(id: RouteId): RouteTrial
  /** What a route would likely cost; much cheaper than trying it. */
  likelyCost(id: RouteId): number
}

/** Loads by {@link loadsKey}: sweeps change one answer at a time, and most leave the loads alone. */
export interface LoadsMemory {
  get(key: string): EngineLoads | undefined
  set(key: string, loads: EngineLoads): unknown
}

/**
 * Work out a build. Routes are tried on demand, since a sweep seldom needs all.
 *
 * @param memory - keeps loads from build to build; a fresh map when left out
 */
export function trialsOf(
  build: Build,
  rulebook: Rulebook,
  memory: LoadsMemory = new Map<string, EngineLoads>(),
): Trials {
  const key = loadsKey(build)
  let loads = memory.get(key)
  if (!loads) {
    loads = engineLoads(build, rulebook)
    memory.set(key, loads)
  }
  return trialsWith(build, loads, rulebook)
}

/** The trials of a build whose loads are known already. */
export function trialsWith(before: Build, loads: EngineLoads, rulebook: Rulebook): Trials {
  const build = loads.boostFromTarget ? withBoost(before, loads.boost) : before
  const tried = new Map<RouteId, RouteTrial>()
  const samples = new Map<string, Samples>()
  const samplesFor = (changed: Build): Samples => {
    const key = [changed.facts.registerFit.value, changed.facts.tightening.value].join()
    let drawn = samples.get(key)
    if (!drawn) {
      const first = samples.values().next().value
      drawn = drawSamples(changed, loads, rulebook, first)
      samples.set(key, drawn)
    }
    return drawn
  }
  return {
    build,
    loads,
    facts: buildFacts(build, loads, jointModel(build, rulebook), rulebook),
    likelyCost: (id) => likelyRouteCost(routeOf(rulebook, id), build, rulebook),
    trial(id) {
      let found = tried.get(id)
      if (!found) {
        found = tryRoute(routeOf(rulebook, id), build, rulebook, samplesFor)
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

function withBoost(build: Build, gauge: number): Build {
  const boost = {
    key: 'boost' as const,
    state: 'derived' as const,
    value: fromSi(gauge, 'psi'),
    because: 'From the target power.',
    source: { kind: 'computed' as const, cite: '' },
  }
  return { ...build, facts: { ...build.facts, boost } }
}
