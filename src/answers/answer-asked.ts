import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { type Candidate, candidateFor, type MoneyContext, sameAnswer } from './candidates.ts'
import type { Doubt, Findings, Reading } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import { mentionsIn } from './mentions.ts'
import { roundAway } from './numbers.ts'
import { longestAt } from './phrases.ts'
import type { Figure } from './plain-figure.ts'
import type { Token } from './tokens.ts'

/** Longest answer, in words, that a bare choice word is looked for in. */
const SHORT = 15

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
  // "12.9 bolts" says what they are, too.
  if (asking === 'fastenerGrade' && length > 1 && tokens[0]?.kind === 'number') return undefined
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
  if (values.has('street-strip')) {
    const both = found.find(({ meanings }) => meanings.includes('street-strip')) ?? first
    const reading = { key: asking, answer: 'street-strip', from: both.from, to: both.to }
    return { reading: { ...reading, strength: 3 }, doubts: [] }
  }
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
  tokens: readonly Token[],
  lexicon: Lexicon,
  money: MoneyContext,
  corrections: readonly number[],
  into: Findings,
): Figure[] {
  const fits = loose.flatMap((figure) => {
    // "300 each way", to the question what both ways cost.
    if (fact(asking).kind === 'money' && longestAt(lexicon.inPart, tokens, figure.to)) return []
    const spoken = inThousands(spelledOut(figure, asking, tokens), asking)
    const candidate = candidateFor(asking, spoken, money)
    return candidate ? [{ figure, candidate }] : []
  })
  const usable = fits.filter(({ candidate }) => 'answer' in candidate)
  const good = withoutRepeats(afterCorrection(usable, corrections))
  const [only, second] = good.length > 0 ? good : fits
  if (!only) return [...loose]
  const { figure, candidate } = only
  const { from, to } = figure
  const opening = second && opensAnswer(figure, second.figure, tokens, lexicon)
  if (second && !opening) {
    const range = rangeOf(asking, good, tokens, lexicon, money)
    if (range) {
      into.readings.push(range)
      return loose.filter((other) => !fits.some((fit) => fit.figure === other))
    }
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

/** "80, the old bolts were 65 tho": an answer stands first, and what follows is about something. */
function opensAnswer(
  first: Figure,
  second: Figure,
  tokens: readonly Token[],
  { fillers, words }: Lexicon,
): boolean {
  const small = ({ text }: Token): boolean => fillers.has(text)
  if (!tokens.slice(0, first.from).every(small)) return false
  // "4 mm or so, all 5 caps the same", "110 on the mains, rods get 45".
  let end = first.to
  while (end < second.from && tokens[end]?.kind !== 'mark' && end - first.to <= 3) end += 1
  if (tokens[end]?.kind !== 'mark') return false
  const between = tokens.slice(end + 1, second.from)
  return (
    between.some((token) => !small(token) && !words.figures.guesses.has(token.text)) &&
    between.length >= 2
  )
}

/** "10… wait no, 9.4": only what follows the correction. */
function afterCorrection<T extends { readonly figure: Figure }>(
  fits: readonly T[],
  corrections: readonly number[],
): readonly T[] {
  const last = fits.at(-1)
  const cut = corrections.filter((at) => last && at < last.figure.from).at(-1)
  return cut === undefined ? fits : fits.filter(({ figure }) => figure.from > cut)
}

/** "A couple thousand, so 2000 dollars": the same figure twice is one. */
function withoutRepeats<T extends { readonly candidate: Candidate }>(
  fits: readonly T[],
): readonly T[] {
  const last = fits.at(-1)
  const same = ({ candidate }: T): boolean =>
    'answer' in candidate &&
    last !== undefined &&
    'answer' in last.candidate &&
    sameAnswer(candidate.answer, last.candidate.answer)
  return last && fits.length > 1 && fits.every(same) ? [last] : fits
}

/** "6.8" to the question of a speed is 6,800. */
function inThousands(figure: Figure, asking: FactKey): Figure {
  const short =
    fact(asking).kind === 'speed' && !figure.unit && figure.value < 20 && figure.value > 2
  return short ? { ...figure, value: roundAway(figure.value * 1000), scaled: true } : figure
}

const DIGITS = 'zero one two three four five six seven eight nine'.split(' ')

/** "Six one two five" to the question of a length in inches is 6.125. */
export function spelledOut(figure: Figure, asking: FactKey, tokens: readonly Token[]): Figure {
  if (!figure.unusable || fact(asking).kind !== 'length') return figure
  const words = tokens
    .slice(figure.from, figure.to)
    .map(({ text }) => (text === 'oh' ? 'zero' : text))
  const digits = words.map((word) => DIGITS.indexOf(word))
  // "Five seven" is a rod of 5.7.
  const least = asking === 'rodLength' ? 2 : 3
  if (digits.length < least || digits.length > 5 || digits.includes(-1)) return figure
  const value = Number(`${digits[0]}.${digits.slice(1).join('')}`)
  return { ...figure, value, unusable: false, decimal: true }
}

/** "14, maybe 16 on a cold night": two figures close together are the ends of a guess. */
function rangeOf(
  asking: FactKey,
  good: readonly { readonly figure: Figure }[],
  tokens: readonly Token[],
  lexicon: Lexicon,
  money: MoneyContext,
): Reading | undefined {
  const [first, second, third] = good.map(({ figure }) => figure)
  if (!first || !second || third || first.low !== undefined || second.low !== undefined)
    return undefined
  const between = tokens.slice(first.to, second.from)
  const guessed =
    between.length <= 3 && between.every(({ text }) => lexicon.words.figures.guesses.has(text))
  if (!guessed || second.value <= first.value || second.value > 1.6 * first.value) return undefined
  const value = roundAway((first.value + second.value) / 2)
  const spread = { ...second, value, low: first.value, high: second.value }
  const candidate = candidateFor(asking, spread, money)
  if (!candidate || !('answer' in candidate)) return undefined
  return { key: asking, answer: candidate.answer, from: first.from, to: second.to, strength: 3 }
}

/** "The fella who sold it said nodular", to the question what the caps are: an answer at second hand. */
export function isReported(tokens: readonly Token[], { words }: Lexicon): boolean {
  if (tokens.length > SHORT + 3) return false
  const measured = tokens.some(({ text }) => words.persons.measures.has(text))
  const other = tokens.some(
    ({ text }) => words.persons.notReported.has(text) && !(measured && text === 'last'),
  )
  return !other && tokens.some(({ text }) => words.persons.reported.has(text))
}
