import type { Answers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { isFactKey } from '../../shared/fact-keys.ts'
import type { Rulebook } from '../rulebook/load.ts'

/**
 * Whether the call may be shown yet: never before the answers that it rests on, though
 * "I don't know" is an answer; and always when contradictory answers withhold it.
 */
export function callMayShow(
  { questions }: Pick<Rulebook, 'questions'>,
  answers: Answers,
  { build, call }: Pick<Assessment, 'build' | 'call'>,
): boolean {
  if (call.confidence === 'withheld') return true
  return questions
    .filter(({ fact, essential }) => essential && build[fact]?.state !== 'not-needed')
    .every(({ fact }) => !isFactKey(fact) || answers[fact] !== undefined)
}
