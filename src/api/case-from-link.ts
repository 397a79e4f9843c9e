import { type Answers, readAnswers } from '../../shared/answers.ts'
import { presetOfLink, queryOfLink } from '../../shared/case-link.ts'
import { describeFound, type Problem } from '../../shared/problem.ts'
import { fromQuery } from '../../shared/share-link.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { without } from './accept-answers.ts'
import { currencyProblems } from './currency.ts'

/**
 * The answers of a link that a person pastes: of a case, or of a preset by its address.
 *
 * @param text - a whole address, its query, or `/preset/<id>`
 * @returns the answers that could be read, and a problem for each part that could not
 */
export function caseFromLink(
  rulebook: Rulebook,
  text: string,
): { answers: Answers; problems: readonly Problem[] } {
  const preset = presetOfLink(text)
  const found = rulebook.presets.find(({ id }) => id === preset)
  if (found) return readAnswers(found.answers)
  const { answers, problems } = fromQuery(queryOfLink(text))
  const money = currencyProblems(rulebook, answers)
  const all = [...problems, ...money]
  if (Object.keys(answers).length > 0 || all.length > 0) {
    return { answers: without(answers, money), problems: all }
  }
  const fits = 'paste the link of a case, or of a preset'
  return {
    answers: {},
    problems: [{ field: 'link', code: 'wrong-shape', found: describeFound(text), fits }],
  }
}
