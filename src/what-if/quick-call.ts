import type { Answers } from '../../shared/answers.ts'
import type { RouteId } from '../../shared/assessment.ts'
import type { Build } from '../build/build.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import { decide } from '../call/decide.ts'
import { type Memory, newMemory } from '../facts/memory.ts'
import { trialsOf } from '../facts/trials.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { runRulesNow } from '../rulebook/run.ts'

/** The call of one set of answers, without its words. */
export interface QuickCall {
  readonly route: RouteId | null
  readonly wouldBe: RouteId
  readonly build: Build
  /** How well the present hardware does: its least margin, likely case. Lower is harder. */
  readonly ease: number
}

/** Asks "and if this were the answer?"; loads and calls are remembered from question to question. */
export type AskWhatIf = (answers: Answers) => Promise<QuickCall>

/**
 * @param memory - of what was worked out already
 * @returns a function that answers what-ifs against one rulebook, and forgets when it is dropped
 */
export function whatIf(rulebook: Rulebook, memory: Memory = newMemory()): AskWhatIf {
  return async (answers) => {
    const trials = trialsOf(buildFromAnswers(rulebook, answers), rulebook, memory)
    const decision = await decide({
      answers,
      trials,
      rulebook,
      run: runRulesNow,
      system: 'us',
      everyRoute: false,
    })
    const keep = trials.trial('keep-caps-and-bolts')
    const ease = keep.result.holdsIn + Number(keep.facts.get('weakestMarginValue')) / 100
    return { route: decision.route, wouldBe: decision.wouldBe, build: trials.build, ease }
  }
}
