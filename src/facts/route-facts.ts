import type { RouteCost } from '../../shared/assessment.ts'
import { MARGIN_IDS, type MarginId } from '../../shared/route-ids.ts'
import { fromSi } from '../../shared/units.ts'
import { type Build, choiceOf } from '../build/build.ts'
import { withRoute } from '../build/with-route.ts'
import type { FactValue, FlatFacts } from '../rulebook/evaluate.ts'
import { type Readers, readOff } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Route } from '../rulebook/schema.ts'
import { itemsOf, routeCost } from './cost.ts'
import type { EngineLoads } from './engine-loads.ts'
import type { Draws } from './held.ts'
import { jointOf, marginsOf } from './joint.ts'
import type { JointModel } from './joint-model.ts'
import type { JointMargins } from './margins.ts'
import { type Memory, once } from './memory.ts'

/**
 * One route tried on a build: what it changes, how it holds, what it costs. What only reports ask
 * for is worked out when they ask.
 */
export interface RouteTrial {
  readonly route: Route
  readonly build: Build
  readonly model: JointModel
  /** Everything that was drawn, by scatter id and fact key. */
  readonly samples: () => Draws
  readonly result: JointMargins
  readonly likelyCost: number
  /** With its spread. */
  readonly cost: () => RouteCost
  readonly work: readonly string[]
  readonly parts: () => readonly string[]
  readonly needed: number
  /** In the units of rules/computed-facts.json. */
  readonly facts: FlatFacts
}

/** A build as it stands, what its crank does, and what was worked out already. */
export interface Standing {
  readonly build: Build
  readonly loads: EngineLoads
  readonly rulebook: Rulebook
  readonly memory: Memory
}

/** Try one route, which likely costs so much, on a build; only the joint differs between routes. */
export function tryRoute(route: Route, likelyCost: number, standing: Standing): RouteTrial {
  const { build: before, loads, rulebook, memory } = standing
  const build = withRoute(before, route)
  const joint = jointOf(build, rulebook, memory)
  const { model } = joint
  const result = marginsOf(joint, loads.cases, rulebook)
  const work = itemsOf(route.work, before)
  const needed = rulebook.holding.needed[choiceOf(before, 'use')] ?? 100
  // Written out rather than spread, which is slow: a turn tries hundreds of routes.
  return {
    route,
    build,
    model,
    result,
    likelyCost,
    work,
    needed,
    facts: readOff(FACTS, { route, build, before, model, result, likelyCost, work, needed }),
    samples: () => new Map([...loads.scales.of, ...joint.of]),
    parts: () => itemsOf(route.parts, before),
    cost: once(() => routeCost(route, before, rulebook)),
  }
}

/** What the facts of a route are read off. */
interface Tried extends Omit<RouteTrial, 'facts' | 'cost' | 'parts' | 'samples'> {
  /** The build without the route. */
  readonly before: Build
}

const likely = ({ result }: Tried, id: MarginId): number => result.cases[id][0] as number

const FACTS: Readers<Tried> = new Map<string, (tried: Tried) => FactValue>([
  ['route', ({ route }) => route.id],
  ['holdsIn', ({ result }) => result.holdsIn],
  ['neededHoldsIn', ({ needed }) => needed],
  ['holdsInSpare', ({ result, needed }) => result.holdsIn - needed],
  ...MARGIN_IDS.map((id) => [`${id}Margin`, (tried: Tried) => likely(tried, id)] as const),
  ['weakestMargin', ({ result }) => result.weakest],
  ['weakestMarginValue', (tried) => likely(tried, tried.result.weakest)],
  ['clamp', ({ result }) => result.clamp / 1000],
  ['shareOfProof', ({ model }) => model.shareOfProof * 100],
  ['torqueAfter', ({ model }) => fromSi(model.torque, 'lb ft')],
  ['costLikely', ({ likelyCost }) => likelyCost],
  ['needsLineBore', ({ work }) => work.includes('line-bore')],
  ['needsLineHone', ({ work }) => work.includes('line-hone')],
  ['newCaps', ({ route }) => Object.hasOwn(route.changes, 'capMaterial')],
  [
    'newStuds',
    ({ before, build }) =>
      choiceOf(before, 'fastenerKind') === 'bolt' && choiceOf(build, 'fastenerKind') === 'stud',
  ],
  ['capMaterialAfter', ({ build }) => choiceOf(build, 'capMaterial')],
  ['fastenerKindAfter', ({ build }) => choiceOf(build, 'fastenerKind')],
])
