import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { candidateFor, type MoneyContext } from './candidates.ts'
import type { Doubt, Findings, Reading } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import { mentionsIn } from './mentions.ts'
import { longestAt } from './phrases.ts'
import type { Figure } from './plain-figure.ts'
import type { Token } from './tokens.ts'

/** Longest answer, in words, that a bare choice word is looked for in. */
const SHORT = 12

/** An answer that is, word for word, a choice of the question: a quick reply, an id, a label. */
export function wholeAnswer(
  asking: FactKey,
  tokens: readonly Token[],
  lexicon: Lexicon,
): Reading | undefined {
  const tree = lexicon.asked.get(asking)
  const last = tokens.at(-1)
  const length =
    last?.kind === 'mark' && ['.', '!'].includes(last.text) ? tokens.length - 1 : tokens.length
  const match = tree && longestAt(tree, tokens, 0)
  const [value, other] = new Set(match?.meanings)
  if (!match || match.to < length || value === undefined || other !== undefined) return undefined
  return { key: asking, answer: value, from: 0, to: length, strength: 3 }
}

/** A choice of the question somewhere in a short answer: "I think they're nodular". */
export function askedChoice(
  asking: FactKey,
  tokens: readonly Token[],
  lexicon: Lexicon,
  free: (stretch: { from: number; to: number }) => boolean,
): { reading?: Reading; doubts: Doubt[] } {
  const tree = lexicon.asked.get(asking)
  if (!tree || tokens.length > SHORT) return { doubts: [] }
  const found = mentionsIn(tree, tokens).filter(free)
  const values = new Set(found.flatMap(({ meanings }) => meanings))
  const [first] = found
  const [value] = values
  if (!first || value === undefined) return { doubts: [] }
  if (values.size > 1) {
    const why = `two answers to ${fact(asking).short}: say which`
    return { doubts: found.map(({ from, to }) => ({ from, to, why })) }
  }
  return {
    reading: { key: asking, answer: value, from: first.from, to: first.to, strength: 3 },
    doubts: [],
  }
}

/**
 * Figures that no words name, taken for the fact that was asked, in its usual unit.
 *
 * @returns the figures that are left
 */
export function askedFigure(
  asking: FactKey,
  loose: readonly Figure[],
  money: MoneyContext,
  into: Findings,
): Figure[] {
  const fits = loose.flatMap((figure) => {
    const candidate = candidateFor(asking, figure, money)
    return candidate ? [{ figure, candidate }] : []
  })
  const good = fits.filter(({ candidate }) => 'answer' in candidate)
  const [only, second] = good.length > 0 ? good : fits
  if (!only) return [...loose]
  const { figure, candidate } = only
  const { from, to } = figure
  if (second) {
    for (const other of good.length > 0 ? good : fits) {
      const why = `more than one figure for ${fact(asking).short}: say which`
      into.doubts.push({ from: other.figure.from, to: other.figure.to, why })
    }
    return loose.filter((other) => !fits.some((fit) => fit.figure === other))
  }
  if ('answer' in candidate) {
    into.readings.push({ key: asking, answer: candidate.answer, from, to, strength: 3 })
  } else {
    into.doubts.push({ from, to, why: `${fact(asking).short}: ${candidate.why}` })
  }
  return loose.filter((other) => other !== figure)
}
