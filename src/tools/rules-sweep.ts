import type { Answers } from '../../shared/answers.ts'
import { ROUTE_IDS, type RouteId } from '../../shared/route-ids.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import { type Decision, decide } from '../call/decide.ts'
import { followOnRules, followOnTable, mustDoIds } from '../call/follow-on.ts'
import type { DecideInput } from '../call/look.ts'
import { lowerTarget } from '../call/lower-target.ts'
import { trialsOf } from '../facts/trials.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { runRulesNow } from '../rulebook/run.ts'
import type { Rule } from '../rulebook/schema.ts'

/** One build judged whole: the decision, and what must be done for the called route. */
export interface Judged {
  readonly answers: Answers
  readonly decision: Decision
  readonly followOn: readonly Rule[]
  readonly mustDo: readonly string[]
}

/** What a sweep over many builds saw. */
export interface Sweep {
  /** Builds that were judged. */
  readonly builds: number
  /** Builds whose figures the mechanics refused, by message: slips that no rule needs to name. */
  readonly refused: number
  /** How often each rule fired. */
  readonly fired: ReadonlyMap<string, number>
  /** How often each route was called, or would have been but for a contradiction. */
  readonly called: ReadonlyMap<RouteId, number>
  readonly withheld: number
  readonly steppedUp: number
  /** Outcomes that fight each other, each with the first build that showed it. */
  readonly conflicts: ReadonlyMap<string, { readonly count: number; readonly example: Answers }>
}

/** Judge one build by the synchronous evaluator; undefined when the mechanics refuse its figures. */
export async function judge(rulebook: Rulebook, answers: Answers): Promise<Judged | undefined> {
  try {
    const trials = trialsOf(buildFromAnswers(rulebook, answers), rulebook)
    const input: DecideInput = {
      answers,
      trials,
      rulebook,
      run: runRulesNow,
      system: 'us',
      everyRoute: true,
    }
    const decision = await decide(input)
    const lowered =
      decision.wouldBe === 'lower-the-target' ? lowerTarget(trials, rulebook) : { found: true }
    const followOn = await followOnRules(input, followOnTable(input, decision, lowered))
    return { answers, decision, followOn, mustDo: mustDoIds(followOn) }
  } catch (error) {
    if (error instanceof DomainError) return undefined
    throw error
  }
}

/**
 * Judge builds and count which rules fire, which routes are called and which
 * outcomes fight.
 *
 * @param builds - answers of each build
 * @param conflictsOf - names the outcomes of one build that cannot both be meant
 */
export async function sweepRules(
  rulebook: Rulebook,
  builds: Iterable<Answers>,
  conflictsOf: (judged: Judged, rulebook: Rulebook) => readonly string[],
): Promise<Sweep> {
  const fired = new Map(rulebook.rules.map(({ id }) => [id, 0]))
  const called = new Map<RouteId, number>(ROUTE_IDS.map((id) => [id, 0]))
  const conflicts = new Map<string, { count: number; example: Answers }>()
  let [count, refused, withheld, steppedUp] = [0, 0, 0, 0]
  for (const answers of builds) {
    const judged = await judge(rulebook, answers)
    if (!judged) {
      refused++
      continue
    }
    count++
    const { decision } = judged
    for (const id of firedIn(judged)) fired.set(id, (fired.get(id) ?? 0) + 1)
    called.set(decision.wouldBe, (called.get(decision.wouldBe) ?? 0) + 1)
    if (decision.route === null) withheld++
    if (decision.steppedUp) steppedUp++
    for (const conflict of conflictsOf(judged, rulebook)) {
      const seen = conflicts.get(conflict)
      conflicts.set(conflict, { count: (seen?.count ?? 0) + 1, example: seen?.example ?? answers })
    }
  }
  return { builds: count, refused, fired, called, withheld, steppedUp, conflicts }
}

/** Every rule that fired for a build, each once. */
function firedIn({ decision, followOn }: Judged): Set<string> {
  const ofRoutes = [...decision.verdicts.values()].flatMap((verdict) => verdict.fired)
  const all = [...decision.buildRules, ...ofRoutes, ...decision.choiceRules, ...followOn]
  return new Set(all.map(({ id }) => id))
}
