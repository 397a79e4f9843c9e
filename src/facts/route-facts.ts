import type { RouteCost } from '../../shared/assessment.ts'
import { MARGIN_IDS, type MarginId } from '../../shared/route-ids.ts'
import { fromSi } from '../../shared/units.ts'
import { type Build, choiceOf } from '../build/build.ts'
import { withRoute } from '../build/with-route.ts'
import type { FactValue } from '../rulebook/evaluate.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Route } from '../rulebook/schema.ts'
import { itemsOf, routeCost } from './cost.ts'
import type { EngineLoads } from './engine-loads.ts'
import { jointOf, marginsOf } from './joint.ts'
import type { JointModel } from './joint-model.ts'
import type { JointMargins } from './margins.ts'
import type { Memory } from './memory.ts'
import type { Samples } from './samples.ts'

/** One route tried on a build: what it changes, how it holds, what it costs. */
export interface RouteTrial {
  readonly route: Route
  readonly build: Build
  readonly model: JointModel
  /** Everything that was drawn; gathered when it is read. */
  readonly samples: Samples
  readonly result: JointMargins
  readonly likelyCost: number
  /** With its spread; worked out when it is read. */
  readonly cost: RouteCost
  readonly work: readonly string[]
  /** Listed when they are read. */
  readonly parts: readonly string[]
  readonly needed: number
  /** In the units of rules/computed-facts.json. */
  readonly facts: ReadonlyMap<string, FactValue>
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
  const trial = { route, build, model, result, likelyCost, work, needed }
  return {
    ...trial,
    facts: routeFacts(trial, before),
    get samples() {
      return { count: loads.cases.count, of: new Map([...loads.scales.of, ...joint.of]) }
    },
    get parts() {
      return itemsOf(route.parts, before)
    },
    get cost() {
      return routeCost(route, before, rulebook)
    },
  }
}

function routeFacts(
  {
    route,
    build,
    model,
    result,
    likelyCost,
    work,
    needed,
  }: Omit<RouteTrial, 'facts' | 'cost' | 'parts' | 'samples'>,
  before: Build,
): Map<string, FactValue> {
  const { weakest } = result
  const likely = (id: MarginId): number => result.cases[id][0] as number
  return new Map<string, FactValue>([
    ['route', route.id],
    ['holdsIn', result.holdsIn],
    ['neededHoldsIn', needed],
    ['holdsInSpare', result.holdsIn - needed],
    ...MARGIN_IDS.map((id): [string, FactValue] => [`${id}Margin`, likely(id)]),
    ['weakestMargin', weakest],
    ['weakestMarginValue', likely(weakest)],
    ['clamp', result.clamp / 1000],
    ['shareOfProof', model.shareOfProof * 100],
    ['torqueAfter', fromSi(model.torque, 'lb ft')],
    ['costLikely', likelyCost],
    ['needsLineBore', work.includes('line-bore')],
    ['needsLineHone', work.includes('line-hone')],
    ['newCaps', Object.hasOwn(route.changes, 'capMaterial')],
    [
      'newStuds',
      choiceOf(before, 'fastenerKind') === 'bolt' && choiceOf(build, 'fastenerKind') === 'stud',
    ],
    ['capMaterialAfter', choiceOf(build, 'capMaterial')],
    ['fastenerKindAfter', choiceOf(build, 'fastenerKind')],
  ])
}
