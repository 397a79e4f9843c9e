import type { Answer } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { candidateFor, type MoneyContext } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import { coverage } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'

/** Facts that the trade writes bare in a list, and what such a figure looks like. */
const LISTED: readonly { key: FactKey; like: (figure: Figure, lexicon: Lexicon) => boolean }[] = [
  { key: 'peakRpm', like: isEngineSpeed },
  { key: 'compressionRatio', like: isRatio },
  { key: 'boost', like: isPounds },
  { key: 'displacement', like: isSize },
  { key: 'fuel', like: isOctane },
]

/** So many other things said of the engine make a message a list of its figures. */
const LEAST_SAID = 2

/**
 * "10:1, 2 bolt, e85, 6800": in a list of what an engine is, the one bare figure of
 * the size of an engine speed is how far it revs, and the one bare figure like 10.75
 * is its compression, and pounds from 4 to 40 are of boost. With two such figures, or with prices about, neither is read.
 *
 * @param unnamed - figures that no words and no unit name
 * @returns the figures that are left
 */
export function readSpecList(
  unnamed: readonly Figure[],
  parts: Parts,
  into: Findings,
): readonly Figure[] {
  let left = unnamed
  const { money, whatIf, negations } = parts.input
  const said = thingsSaid(parts, into)
  const listed = whatIf || said >= LEAST_SAID
  // "10.5:1. 4.56 gear. 7200.": a speed that is a sentence needs less beside it.
  // "Two bolt 6500 pump gas 5k invested": what is money there is read already.
  const paid = into.readings.some(({ key }) => key === 'invested' || key === 'budget')
  if ((money.said && !paid) || !(listed || said >= 1)) return left
  for (const { key, like } of LISTED) {
    const alike = parts.figures.filter(
      (figure) =>
        like(figure, parts.lexicon) && !negations.denies(figure) && !isMoney(figure, into),
    )
    const [only] = alike
    if (key !== 'peakRpm' && (!listed || money.said)) continue
    if (only && !listed && !isSentence(only, parts)) continue
    if (!only || alike.length > 1 || !left.includes(only) || !isItem(only, parts)) continue
    if (into.readings.some((reading) => reading.key === key)) continue
    const answer = key === 'fuel' ? 'pump-gasoline' : answerOf(key, only, money)
    if (answer === undefined) continue
    const { from, to } = only
    into.readings.push({ key, answer, from, to, strength: 1 })
    left = left.filter((figure) => figure !== only)
  }
  return left
}

/** The 5k of "5k invested" is no speed. */
function isMoney({ from, to }: Figure, { readings }: Findings): boolean {
  return readings.some((one) => fact(one.key).kind === 'money' && one.from < to && from < one.to)
}

function answerOf(key: FactKey, figure: Figure, money: MoneyContext): Answer | undefined {
  const found = candidateFor(key, figure, money)
  return found && 'answer' in found ? found.answer : undefined
}

/** "Street driven, 93": the octane of the pump. */
function isOctane(figure: Figure, { vocabulary }: Lexicon): boolean {
  const whole = isBare(figure) && !figure.decimal && !figure.inWords
  return whole && vocabulary.octane.pump.includes(figure.value)
}

function thingsSaid({ choiceMentions, scopes }: Parts, { readings }: Findings): number {
  const facts = new Set(readings.filter(({ key }) => fact(key).kind !== 'money').map((r) => r.key))
  for (const { from, meanings } of choiceMentions) {
    for (const meaning of meanings)
      if (meaning.kind === 'choice' && !scopes.outside[from]) facts.add(meaning.fact)
  }
  return facts.size
}

function isBare({ unit, ratio, unusable }: Figure): boolean {
  return !unit && !ratio && !unusable
}

/** "383, 4 bolt, 11:1": it opens the message. */
function isSize(figure: Figure): boolean {
  const { value, decimal, from, inWords } = figure
  return isBare(figure) && !decimal && !inWords && from === 0 && value >= 230 && value <= 620
}

function isPounds({ value, unit }: Figure): boolean {
  return unit?.kind === 'unit' && unit.symbol === 'lb' && value >= 4 && value <= 40
}

function isEngineSpeed(figure: Figure): boolean {
  const { value, decimal, scaled } = figure
  return (
    isBare(figure) && (!decimal || scaled) && value >= 4000 && value <= 9500 && value % 50 === 0
  )
}

/** Strength classes of bolts look alike and are none. */
const CLASSES = new Set([8.8, 10.9, 12.9])

function isRatio(figure: Figure): boolean {
  const { value, decimal, scaled } = figure
  const hundredths = Math.abs(value * 100 - Math.round(value * 100)) < 1e-6
  return (
    isBare(figure) &&
    decimal &&
    !scaled &&
    hundredths &&
    value >= 7.5 &&
    value <= 15.5 &&
    !CLASSES.has(value)
  )
}

function isSentence({ from, to }: Figure, { tokens }: Parts): boolean {
  const [before, after] = [tokens[from - 1], tokens[to]]
  return before?.text === '.' && (!after || after.text === '.')
}

const BEFORE = new Set(['out', 'at', 'and', 'to', 'with'])
const AFTER = new Set(['and', 'with', 'on', 'or', 'w', 'in', 'through', 'instead'])

/** Whether a figure is an item of its own: between commas, other figures and choices. */
function isItem({ from, to }: Figure, parts: Parts) {
  const { tokens, figures, choiceMentions, figureMentions, lexicon } = parts
  const { about, most } = lexicon.words.figures
  const opens = (word: string): boolean => BEFORE.has(word) || about.has(word)
  const closes = (word: string): boolean => AFTER.has(word) || most.has(word)
  const named = coverage(tokens.length, [...figures, ...choiceMentions, ...figureMentions])
  const [before, after] = [tokens[from - 1], tokens[to]]
  const open = !before || before.kind === 'mark' || named[from - 1] || opens(before.text)
  const closed = !after || after.kind === 'mark' || named[to] || closes(after.text)
  return (open || tokens[from]?.gap === 'dash') && (closed || after?.gap === 'dash')
}
