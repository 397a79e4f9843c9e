import { type Answers, readAnswers, withAnswer } from '../../shared/answers.ts'
import { type FactKey, isFactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { currencyProblems } from './currency.ts'

/**
 * Answers from outside, with the problems of reading them and of their currencies.
 *
 * @param place - put before each problem's field, such as `parked.`
 * @returns the good answers, and a problem for each bad one
 */
export function acceptAnswers(
  rulebook: Rulebook,
  raw: unknown,
  place = '',
): { answers: Answers; problems: Problem[] } {
  const read = readAnswers(raw)
  const money = currencyProblems(rulebook, read.answers)
  const problems = [...read.problems, ...money].map((problem) => ({
    ...problem,
    field: `${place}${problem.field}`,
  }))
  return { answers: without(read.answers, money), problems }
}

/** The answers without those that a problem names. */
export function without(answers: Answers, problems: readonly Problem[]): Answers {
  return problems
    .map(({ field }) => field)
    .filter((field): field is FactKey => isFactKey(field))
    .reduce((kept, key) => withAnswer(kept, key, undefined), answers)
}
