import type { Answer, Answers } from '../../shared/answers.ts'
import { fromSi, toSi } from '../../shared/units.ts'
import { candidateFor, type MoneyContext } from './candidates.ts'
import type { Findings, Reading } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import { roundAway } from './numbers.ts'
import type { Figure } from './plain-figure.ts'
import type { Token } from './tokens.ts'

/** An oversize and the standard bore that it is counted from. */
export interface OverFrom {
  readonly over: Figure
  readonly base: Figure
  readonly answer: Answer
}

/** Between an oversize and what it is counted from. */
const FROM = new Set(['from', 'on', 'of', 'a', 'an', 'the'])

/** "Thirty over from 4.000", ".030 over a standard 4.125": each with its finished bore. */
export function overFromIn(
  figures: readonly Figure[],
  tokens: readonly Token[],
  lexicon: Lexicon,
  money: MoneyContext,
): OverFrom[] {
  const { standard: asMade } = lexicon.words.engines
  return figures.flatMap((over, i) => {
    const plus = plusAt(over, figures[i + 1], tokens)
    const sum = plus && finishedFrom(over, plus, money)
    if (sum) return [{ over: figures[i + 1] as Figure, base: over, answer: sum }]
    const base = figures[i + 1]
    const by = oversize(over)
    const standard = figures[i - 1]
    if (by !== undefined && standard && isStandard(standard, over, tokens, lexicon)) {
      const answer = finishedFrom(standard, by, money)
      if (answer) return [{ over, base: standard, answer }]
    }
    const beside = base?.from === over.to && over.value >= 0.13
    if (by === undefined || !base || beside || base.from > over.to + 4) return []
    const link = tokens.slice(over.to, base.from)
    if (!link.every(({ text }) => FROM.has(text) || asMade.has(text))) return []
    const answer = finishedFrom(base, by, money)
    return answer ? [{ over, base, answer }] : []
  })
}

/** "The standard bore was 4.000 and the shop took it thirty over". */
function isStandard(
  base: Figure,
  over: Figure,
  tokens: readonly Token[],
  { words: { engines } }: Lexicon,
): boolean {
  if (over.from - base.to > 10) return false
  const near = [
    ...tokens.slice(Math.max(0, base.from - 5), base.from),
    ...tokens.slice(base.to, base.to + 3),
  ]
  const words = near.map(({ text }) => text)
  // "Stock was 3.74 and it's forty over now".
  const bore = words.includes('bore') || (over.unit?.kind === 'over' && !words.includes('stroke'))
  return bore && words.some((word) => engines.standard.has(word) || engines.began.has(word))
}

function finishedFrom(base: Figure, by: number, money: MoneyContext): Answer | undefined {
  const bore = candidateFor('bore', base, money)
  const known = bore && 'answer' in bore ? lengthOf(bore.answer) : undefined
  return known && grown(known, by)
}

/** '4" + .030': in metres what is added, when it is an oversize. */
function plusAt(
  base: Figure,
  added: Figure | undefined,
  tokens: readonly Token[],
): number | undefined {
  if (!added || tokens[base.to]?.text !== '+' || added.from !== base.to + 1) return undefined
  return added.value < 0.2
    ? oversize({ ...added, unit: { kind: 'over', unit: 'in', to: added.to } })
    : undefined
}

const UNSURE = 'oversize without a sure standard bore: give the finished bore'

/**
 * "Thirty over": a finished bore, if the bore before it is known from the message
 * or from the answers. "4.030, thirty over" already counts it: 4.030 − 0.030 is a
 * plain sixteenth of an inch and 4.030 is none.
 */
export function readOverbore(figure: Figure, answers: Answers, into: Findings): void {
  const by = oversize(figure)
  const said = into.readings.filter(({ key }) => key === 'bore')
  const bore = said.length > 0 ? said[0]?.answer : answers.bore
  const known = lengthOf(bore)
  const finished = by === undefined || !known ? undefined : finishedBore(known, by)
  if (finished === undefined || said.length > 1) {
    for (const reading of said) into.readings.splice(into.readings.indexOf(reading), 1)
    const words = [figure, ...said]
    for (const { from, to } of words) into.doubts.push({ from, to, why: UNSURE })
    return
  }
  if (finished === 'counted') {
    // Already in the said bore: the words belong to it.
    if (said.length === 0) into.doubts.push({ from: figure.from, to: figure.to, why: UNSURE })
    return
  }
  const [first] = said
  if (first) into.readings.splice(into.readings.indexOf(first), 1)
  into.readings.push(boreReading(finished, figure, first))
}

function lengthOf(answer: Answer | undefined): { value: number; unit: string } | undefined {
  if (typeof answer !== 'object' || !('unit' in answer)) return undefined
  return { value: answer.value, unit: String(answer.unit) }
}

function boreReading(answer: Answer, figure: Figure, said: Reading | undefined): Reading {
  const from = Math.min(figure.from, said?.from ?? figure.from)
  const to = Math.max(figure.to, said?.to ?? figure.to)
  return { key: 'bore', answer, from, to, strength: 3 }
}

/** In metres; undefined when it is no oversize that a block could take. */
function oversize({ value, unit, low }: Figure): number | undefined {
  if (unit?.kind !== 'over' || low !== undefined) return undefined
  if (unit.unit === 'mm') return value > 0 && value <= 4 ? toSi(value, 'mm') : undefined
  const inches = value < 1 ? value : value / 1000
  return inches >= 0.005 && inches <= 0.2 ? toSi(inches, 'in') : undefined
}

function finishedBore(bore: { value: number; unit: string }, by: number): Answer | 'counted' {
  const before = toSi(bore.value, bore.unit)
  const metric = bore.unit !== 'in'
  if (!isPlain(before, metric) && isPlain(before - by, metric)) return 'counted'
  return grown(bore, by)
}

function grown(bore: { value: number; unit: string }, by: number): Answer {
  const value = fromSi(toSi(bore.value, bore.unit) + by, bore.unit)
  return { value: roundAway(Number(value.toFixed(4))), unit: bore.unit }
}

/** A standard bore is a whole sixteenth of an inch, or a whole millimetre. */
function isPlain(metres: number, metric: boolean): boolean {
  const steps = metric ? fromSi(metres, 'mm') : fromSi(metres, 'in') * 16
  return Math.abs(steps - Math.round(steps)) < 1e-6
}
