import type { Answers } from '../../shared/answers.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import type { FactTable, UnitSystem } from '../facts/live-facts.ts'
import { once } from '../facts/memory.ts'
import type { RouteTrial } from '../facts/route-facts.ts'
import type { Trials } from '../facts/trials.ts'
import type { FlatFacts, Readable } from '../rulebook/evaluate.ts'
import { layered } from '../rulebook/layered-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Rule, Scope } from '../rulebook/schema.ts'
import { tableOf } from './tables.ts'

/** Runs the rules of one scope: json-rules-engine for a call, the synchronous evaluator in sweeps. */
export type RunRules = (
  rules: readonly Rule[],
  scope: Scope,
  facts: Readable,
) => readonly Rule[] | Promise<readonly Rule[]>

/** Facts as rules read them, and as people do; a sweep asks for the first alone. */
export interface FactLayer {
  readonly values: FlatFacts
  readonly table: () => FactTable
}

/** One set of answers, with what is asked of it. */
export interface DecideInput {
  readonly answers: Answers
  readonly trials: Trials
  readonly rulebook: Rulebook
  readonly run: RunRules
  readonly system: UnitSystem
  /** Look at every route, also those that cannot change the call. */
  readonly everyRoute: boolean
}

/** What the rules said of one route. */
export interface RouteVerdict {
  readonly trial: RouteTrial
  readonly facts: FactLayer
  /** Of its facts; made when it is first read. */
  readonly table: FactTable
  readonly fired: readonly Rule[]
  readonly possible: boolean
  readonly holds: boolean
}

/** Tries routes and runs their rules, each once. */
export function looker({ rulebook, run, trials, system }: DecideInput, build: FactLayer) {
  const seen = new Map<RouteId, RouteVerdict>()
  const at = async (id: RouteId): Promise<RouteVerdict> => {
    const known = seen.get(id)
    if (known) return known
    const trial = trials.trial(id)
    const { currency } = trials.build
    const table = once(() => tableOf(rulebook, trial.facts, build.table(), currency, system))
    const facts = { values: layered(trial.facts, build.values), table }
    const fired = await run(rulebook.rules, 'route', facts.values)
    const verdict = {
      trial,
      facts,
      get table() {
        return table()
      },
      fired,
      possible: !fired.some(({ outcome }) => outcome.effect === 'impossible'),
      holds: !fired.some(({ outcome }) => outcome.effect === 'does-not-hold'),
    }
    seen.set(id, verdict)
    return verdict
  }
  return { at, seen }
}
