import type { Answers } from '../../shared/answers.ts'
import type { Finding, RouteReport } from '../../shared/assessment.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { convert } from '../../shared/print.ts'
import { fromSi, preferredUnit } from '../../shared/units.ts'
import { type Build, isByTorque } from '../build/build.ts'
import {
  buildFactText,
  buildTable,
  type FactTable,
  flat,
  type UnitSystem,
} from '../facts/live-facts.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import { findingOf, inOrder } from '../findings/collect.ts'
import { layered } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { runRulesNow } from '../rulebook/run.ts'
import type { RouteVerdict } from './look.ts'
import type { LoweredTarget } from './lower-target.ts'
import { loweredWords } from './lowered-text.ts'
import { tableOf } from './tables.ts'

/** What of the routes' report does not come from the verdict. */
export interface ReportContext {
  readonly build: Build
  readonly answers: Answers
  readonly system: UnitSystem
  readonly rulebook: Rulebook
}

/** What of a route's trial its report is made from. */
type Reported = Pick<
  RouteTrial,
  'route' | 'build' | 'model' | 'result' | 'needed' | 'cost' | 'work' | 'parts'
>

/** One route as the API and the pages show it. */
export function routeReport(
  verdict: Omit<RouteVerdict, 'trial' | 'facts'> & { readonly trial: Reported },
  context: ReportContext,
): RouteReport {
  const { trial, table, fired, possible, holds } = verdict
  const findings = (effects: readonly string[]): Finding[] =>
    inOrder(
      fired
        .filter(({ outcome }) => effects.includes(outcome.effect))
        .map((rule) => findingOf(rule, table)),
    )
  const impossible = findings(['impossible'])[0]
  return {
    id: trial.route.id,
    title: trial.route.title,
    possible,
    ...(impossible ? { whyNot: impossible.text } : {}),
    margins: trial.result.margins(),
    holdsIn: trial.result.holdsIn,
    neededHoldsIn: trial.needed,
    holds: possible && holds,
    cost: trial.cost(),
    work: [...trial.work],
    parts: [...trial.parts()],
    for: findings(['for']),
    against: findings(['impossible', 'does-not-hold', 'against']),
    changes: changesOf(trial, context),
    joint: jointReport(trial, context.system),
  }
}

function changesOf({ route, build: after }: Reported, context: ReportContext) {
  return Object.keys(route.changes).flatMap((name) => {
    const key = name as FactKey
    const text = (build: Build): string =>
      buildFactText(build.facts[key], build, context.answers, context.system)
    const [from, to] = [text(context.build), text(after)]
    return from === to ? [] : [{ label: fact(key).label, from, to }]
  })
}

function jointReport({ model, result, build }: Reported, system: UnitSystem): RouteReport['joint'] {
  const unit = preferredUnit('lb ft', system)
  return {
    clamp: result.clamp / 1000,
    preload: model.preload / 1000,
    friction: result.friction / 1000,
    registerCapacity: result.registerCapacity / 1000,
    crossCapacity: model.crossCapacity / 1000,
    loadFactor: model.loadFactor,
    shareOfProof: model.shareOfProof,
    ...(isByTorque(build) ? { torque: { value: fromSi(model.torque, unit), unit } } : {}),
  }
}

/**
 * The route that lowers the target: the present hardware, judged by the rules at the lowered target.
 *
 * @param isCalled - whether it is the route that is called
 */
export function loweredReport(
  verdict: RouteVerdict,
  lowered: LoweredTarget,
  context: ReportContext,
  isCalled: boolean,
): RouteReport {
  const table = loweredTable(lowered, context)
  const all = runRulesNow(context.rulebook.rules, 'route', flat(table))
  // Of a target that nobody should set only what stands in its way is said.
  const fired = lowered.found
    ? all
    : all.filter(({ outcome }) => outcome.effect === 'does-not-hold')
  const { possible, holds, trial } = verdict
  const { build, model, result, needed, parts } = lowered.trial
  const { route, cost, work } = trial
  const asLowered = { route, build, model, result, needed, cost, work, parts }
  const judged = routeReport({ trial: asLowered, table, fired, possible, holds }, context)
  const system = context.system
  const [pressure, power] = [preferredUnit('psi', system), preferredUnit('hp', system)]
  return {
    ...judged,
    title: loweredWords(trial.route, lowered, isCalled).title,
    holds: lowered.found,
    ...(lowered.asks ? { against: [findingOf(lowered.asks, table)] } : {}),
    lowered: {
      boost: { value: convert(lowered.boost, 'psi', pressure), unit: pressure },
      rpm: lowered.rpm,
      power: { value: fromSi(lowered.power, power), unit: power },
    },
  }
}

/** Facts of the lowered build and of the present hardware in it. */
export function loweredTable(
  { build, facts, trial }: LoweredTarget,
  { rulebook, answers, system }: ReportContext,
): FactTable {
  const said = buildTable(build, answers, system)
  const base = tableOf(rulebook, facts, said, build.currency, system)
  const judged = layered(new Map([['route', 'lower-the-target']]), trial.facts)
  return tableOf(rulebook, judged, base, build.currency, system)
}
