import type { Answers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { type FactKey, isFactKey } from '../../shared/fact-keys.ts'
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

/** Facts that a call needs and that are assumed in it, because nobody knows them: it is a first guess. */
export function neededButAssumed(
  { questions }: Pick<Rulebook, 'questions'>,
  { build }: Pick<Assessment, 'build'>,
): FactKey[] {
  return questions.flatMap(({ fact, essential }) =>
    essential && isFactKey(fact) && build[fact]?.state === 'assumed' ? [fact] : [],
  )
}
