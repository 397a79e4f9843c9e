import { FACT_KEYS, type FactKey } from '../../shared/fact-keys.ts'
import { candidateFor, sameAnswer } from './candidates.ts'
import type { Findings, Reading } from './findings.ts'
import { mentionsIn } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'
import { factsIn } from './topics.ts'

/**
 * A bare figure that takes the place of another: "I quoted the bore wrongly. Please
 * alter it to 84 mm", of the one fact that was named; "I told you 4.03, I meant 4.04"
 * and "10.5 not 9.5", of the one fact that was answered with the other figure.
 */
export function readChangedFigure(parts: Parts, findings: Findings): void {
  const { requests, figures, pairs, scopes, input } = parts
  if (!requests.some(({ intent }) => intent === 'change')) return
  const taken = new Set(pairs.map(({ figure }) => figure))
  const read = ({ from, to }: Figure): boolean =>
    findings.readings.some((reading) => reading.from < to && from < reading.to)
  const loose = figures.filter((figure) => !taken.has(figure) && !read(figure))
  const open = loose.filter(
    (figure) => !input.negations.denies(figure) && scopes.outside[figure.from] === undefined,
  )
  const figure = open.at(-1)
  if (!figure) return
  const key = namedAsWrong(figure, parts) ?? answeredWith(figure, loose, parts)
  if (!key || findings.readings.some((reading) => reading.key === key)) return
  const found = candidateFor(key, figure, input.money)
  if (!found || !('answer' in found)) return
  const { from, to } = figure
  findings.readings.push({ key, answer: found.answer, from, to, strength: 2 })
  const kept = findings.doubts.filter((doubt) => doubt.to <= from || doubt.from >= to)
  findings.doubts.splice(0, findings.doubts.length, ...kept)
}

/** The only fact named before "alter it to", if it is one. */
function namedAsWrong({ from }: Figure, { tokens, lexicon }: Parts): FactKey | undefined {
  const changes = mentionsIn(lexicon.questions.changesTo, tokens).find(({ to }) => to === from)
  if (!changes) return undefined
  const named = new Set(factsIn(tokens, 0, changes.from, lexicon).map(({ key }) => key))
  return named.size === 1 ? [...named][0] : undefined
}

/** The only fact that was answered with the one other figure of the message. */
function answeredWith(
  figure: Figure,
  loose: readonly Figure[],
  { input: { answers, money } }: Parts,
): FactKey | undefined {
  const [other, another] = loose.filter((one) => one !== figure)
  if (!other || another) return undefined
  const keys = FACT_KEYS.filter((key) => {
    const answer = answers[key]
    const found = answer === undefined ? undefined : candidateFor(key, other, money)
    return answer !== undefined && found && 'answer' in found && sameAnswer(found.answer, answer)
  })
  return keys.length === 1 ? keys[0] : undefined
}

/** "The redline should be 6500 not 6800", where 6800 was the answer: asks for a change. */
export function takesPlace(
  readings: readonly Reading[],
  { figures, input: { answers, money, negations } }: Parts,
): boolean {
  return readings.some(({ key, answer }) => {
    const before = answers[key]
    if (before === undefined || sameAnswer(before, answer)) return false
    return figures.some((figure) => {
      const found = negations.denies(figure) ? candidateFor(key, figure, money) : undefined
      return found && 'answer' in found && sameAnswer(found.answer, before)
    })
  })
}
