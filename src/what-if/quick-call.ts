import type { Answers } from '../../shared/answers.ts'
import { MARGIN_IDS, type RouteId } from '../../shared/route-ids.ts'
import type { Build } from '../build/build.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import { type Decision, decide } from '../call/decide.ts'
import { type Memory, newMemory, once } from '../facts/memory.ts'
import { type Trials, trialsOf } from '../facts/trials.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import { decidingRules } from '../rulebook/deciding-rules.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { runRulesNow } from '../rulebook/run.ts'

/** The call of one set of answers, without its words. */
export interface QuickCall {
  readonly route: RouteId | null
  readonly wouldBe: RouteId
  readonly build: Build
  /**
   * How well the present hardware does: its least margin, likely case. Lower is harder. It and the
   * figures are worked out when they are first read: often only the route is asked for.
   */
  readonly ease: number
  /**
   * What the call turns on: each margin of the present hardware in the likely case, in
   * how many cases it holds, and what it and the called route cost.
   */
  readonly figures: readonly number[]
  /** Ids of the contradictions that stand, sorted. */
  readonly contradictions: readonly string[]
}

/**
 * Asks "and if this were the answer?"; loads and calls are remembered from question to question.
 * Undefined where that would be no engine that the equations cover: what cannot be, changes nothing.
 */
export type AskWhatIf = (answers: Answers) => Promise<QuickCall | undefined>

/** After so many what-ifs others are let in. */
const AT_A_STRETCH = 4

/**
 * @param memory - of what was worked out already
 * @param giveWay - called now and then before a what-if
 * @returns a function that answers what-ifs against one rulebook, and forgets when it is dropped
 */
export function whatIf(
  rulebook: Rulebook,
  memory: Memory = newMemory(),
  giveWay?: () => Promise<void>,
): AskWhatIf {
  let asked = 0
  const deciding = { ...rulebook, rules: decidingRules(rulebook.rules) }
  return async (answers) => {
    if (giveWay && ++asked % AT_A_STRETCH === 0) await giveWay()
    try {
      const trials = trialsOf(buildFromAnswers(rulebook, answers), rulebook, memory)
      const decision = await decide({
        answers,
        trials,
        rulebook: deciding,
        run: runRulesNow,
        system: 'us',
        everyRoute: false,
      })
      return quickCallOf(decision, trials)
    } catch (error) {
      if (error instanceof DomainError) return undefined
      throw error
    }
  }
}

/** What a decision comes to in short. */
export function quickCallOf(decision: Decision, trials: Trials): QuickCall {
  const { route, wouldBe, buildRules } = decision
  const figures = once(() => figuresOf(trials, wouldBe))
  return {
    route,
    wouldBe,
    build: trials.build,
    get ease() {
      return figures().ease
    },
    get figures() {
      return figures().all
    },
    contradictions: buildRules.flatMap(({ id, outcome }) =>
      outcome.effect === 'contradiction' ? [id] : [],
    ),
  }
}

function figuresOf(trials: Trials, wouldBe: RouteId): { ease: number; all: number[] } {
  const keep = trials.trial('keep-caps-and-bolts')
  const ease = keep.result.holdsIn + Number(keep.facts.get('weakestMarginValue')) / 100
  const margins = MARGIN_IDS.map((id) => Number(keep.facts.get(`${id}Margin`)))
  return { ease, all: [...margins, ease, keep.likelyCost, trials.likelyCost(wouldBe)] }
}
