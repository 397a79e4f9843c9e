import { type Answer, type Answers, readAnswer } from '../../shared/answers.ts'
import { type Fact, type FactKey, fact, isQuantity } from '../../shared/fact-keys.ts'
import { fromSi, toSi, UNITS } from '../../shared/units.ts'
import type { Lexicon } from './lexicon.ts'
import type { Figure } from './plain-figure.ts'
import type { Token } from './tokens.ts'
import type { NumberVocabulary } from './vocabulary.ts'

/** What a figure would be as a fact: an answer, or why it is none. */
export type Candidate =
  | { readonly answer: Answer; readonly unitSaid: boolean }
  | { readonly why: string; readonly unitSaid: boolean }

export interface MoneyContext {
  readonly currency: string
  /** Whether the message speaks of money at all. */
  readonly said: boolean
}

/**
 * Read a figure as a value of a fact.
 *
 * @returns undefined when the figure's unit cannot be that fact's; otherwise the
 * canonical answer, or why the value does not fit
 */
export function candidateFor(
  key: FactKey,
  figure: Figure,
  money: MoneyContext,
): Candidate | undefined {
  const entry = fact(key)
  if (figure.unusable || figure.unit?.kind === 'over' || figure.unit?.kind === 'wheel')
    return undefined
  if (entry.kind === 'money') return moneyCandidate(key, figure, money)
  if (figure.unit?.kind === 'money') {
    // "Spins eight grand".
    return entry.kind === 'speed' && figure.unit.grand
      ? withUnit(key, figure, 'rpm', true)
      : undefined
  }
  if (entry.kind === 'number')
    return figure.unit || figure.scaled ? undefined : checked(key, spread(figure), figure.ratio)
  if (figure.ratio || !isQuantity(entry)) return undefined
  // "6.500 rpm", as it is written where a point parts the thousands.
  const fifties = Math.round(figure.value * 1000) % 50 === 0
  if (entry.kind === 'speed' && figure.thousandths && figure.value < 20 && fifties) {
    return withUnit(key, { ...figure, value: figure.value * 1000 }, 'rpm', true)
  }
  const said = saidUnit(entry, figure)
  if (said !== undefined) return said === '' ? undefined : withUnit(key, figure, said, true)
  return bare(entry, figure)
}

/** "Main studs 89.95": as a price tag is written, where money is spoken of. */
function isPriceTag({ value }: Figure, { said }: MoneyContext): boolean {
  const cents = Math.round(value * 100) % 100
  return value >= 100 || (said && value >= 20 && (cents === 50 || cents >= 95))
}

/** Prices that are never told in thousands. */
const SMALL = new Set<FactKey>(['capsPrice', 'studsPrice'])

function moneyCandidate(key: FactKey, figure: Figure, money: MoneyContext): Candidate | undefined {
  const { unit } = figure
  if (figure.ratio || (unit && unit.kind !== 'money' && !isSterling(figure, money)))
    return undefined
  // "7.5k" beside caps is how far it revs; nobody's caps cost so much.
  const said = unit !== undefined || (figure.scaled && (money.said || !SMALL.has(key)))
  if (!said && (figure.value < 20 || (figure.decimal && !isPriceTag(figure, money))))
    return undefined
  if (figure.thousandths)
    return { why: 'thousands or decimals? write it without the point', unitSaid: said }
  const currency = unit?.kind === 'money' ? (unit.currency ?? money.currency) : money.currency
  return checked(key, { ...asObject(figure), currency }, said)
}

/** "950 pounds" is money where the person counts in pounds sterling. */
function isSterling(figure: Figure, { currency }: MoneyContext): boolean {
  return figure.unit?.kind === 'unit' && figure.unit.symbol === 'lb' && currency === 'GBP'
}

/** Fewer bare pounds than this are of boost, or of something else. */
const LEAST_POUNDS = 30

/** The unit that was said, if it suits; '' when it suits not at all; undefined when none was said. */
function saidUnit(entry: Fact, { unit, scaled, value }: Figure): string | undefined {
  if (!unit) return scaled && entry.kind !== 'speed' ? '' : undefined
  if (unit.kind === 'shot') return entry.key === 'nitrousPower' ? unit.unit : ''
  if (unit.kind !== 'unit') return ''
  if (UNITS[unit.symbol]?.dimension === entry.kind) return unit.symbol
  // The trade's "pounds": of boost, and of torque on a wrench.
  if (unit.symbol === 'lb' && entry.key === 'boost') return 'psi'
  if (unit.symbol === 'lb' && entry.kind === 'torque') return value >= LEAST_POUNDS ? 'lb ft' : ''
  return ''
}

/** A figure without unit, in the unit that the trade means by its size. */
function bare(entry: Fact, figure: Figure): Candidate | undefined {
  const key = entry.key
  const { value } = figure
  switch (entry.kind) {
    case 'length':
      return bareLength(entry, figure)
    case 'pressure':
      return barePressure(key, figure)
    case 'speed':
      return value >= 500 ? withUnit(key, figure, 'rpm', figure.scaled) : undefined
    case 'volume':
      return withUnit(key, figure, value < 15 ? 'L' : value < 900 ? 'cu in' : 'cc', false)
    case 'mass':
      return value >= 50 ? withUnit(key, figure, 'g', false) : undefined
    case 'torque':
      return figure.decimal ? undefined : withUnit(key, figure, 'lb ft', false)
    case 'power':
      return withUnit(key, figure, 'hp', false)
    case 'percent':
      return withUnit(key, figure, '%', false)
    default:
      return undefined
  }
}

/** Inches when it fits inches, millimetres when only those fit. */
function bareLength(entry: Fact, figure: Figure): Candidate {
  // "Register's a .002 press" speaks of its fit.
  if (entry.key === 'registerHeight' && figure.value > 0 && figure.value < 0.02) {
    return { why: 'too small for a height; is it the fit?', unitSaid: false }
  }
  const inches = withUnit(entry.key, figure, 'in', false)
  if ('answer' in inches) return inches
  const metric = withUnit(entry.key, figure, 'mm', false)
  return 'answer' in metric ? metric : inches
}

function barePressure(key: FactKey, figure: Figure): Candidate {
  if (key === 'boost' && figure.value > 0 && figure.value < 3) {
    return { why: 'psi or bar? say which', unitSaid: false }
  }
  if (key !== 'boost' && figure.value < 300) {
    return { why: 'psi, bar or kPa? say which', unitSaid: false }
  }
  return withUnit(key, figure, 'psi', false)
}

function withUnit(key: FactKey, figure: Figure, unit: string, unitSaid: boolean): Candidate {
  const read = checked(key, { ...asObject(figure), unit }, unitSaid)
  if ('answer' in read || figure.otherValue === undefined) return read
  // "4,030 in": the comma was a decimal point, for only that fits.
  const other = checked(key, { value: figure.otherValue, unit }, unitSaid)
  return 'answer' in other ? other : read
}

function spread(figure: Figure): unknown {
  return figure.low === undefined ? figure.value : asObject(figure)
}

function asObject({ value, low, high }: Figure) {
  return low === undefined || high === undefined ? { value } : { value, low, high }
}

function checked(key: FactKey, raw: unknown, unitSaid: boolean): Candidate {
  const read = readAnswer(key, raw)
  if ('ok' in read) return { answer: read.ok, unitSaid }
  return { why: `${read.problem.found}: ${read.problem.fits}`, unitSaid }
}

/** The currency of the answers so far or of the message, else the usual one. */
export function currencyOf(
  answers: Answers,
  figures: readonly Figure[],
  tokens: readonly Token[],
  { vocabulary, words }: Lexicon,
): MoneyContext {
  const { usualCurrency, moneyWords } = vocabulary.units
  const said =
    figures.some(({ unit }) => unit?.kind === 'money') ||
    tokens.some(({ text }) => moneyWords.includes(text)) ||
    isPriceList(tokens, words.prices, vocabulary.numbers)
  for (const answer of Object.values(answers)) {
    if (typeof answer === 'object' && 'currency' in answer)
      return { currency: answer.currency, said }
  }
  for (const { unit } of figures) {
    if (unit?.kind === 'money' && unit.currency) return { currency: unit.currency, said }
  }
  return { currency: usualCurrency, said }
}

/** "Caps 285, studs 165, hone 250": jobs and parts each with a bare amount. */
function isPriceList(
  tokens: readonly Token[],
  { jobs, beforeJobs }: Lexicon['words']['prices'],
  { ish }: NumberVocabulary,
): boolean {
  const text = (at: number): string => tokens[at]?.text ?? ''
  const amounts = tokens.filter(({ value = 0, decimal }, at) => {
    if (value < 100 || decimal) return false
    const ends = (tokens[at + 1]?.kind ?? 'mark') !== 'word' || ish.includes(text(at + 1))
    const link = ['is', 'are', 'was', 'runs'].includes(text(at - 1))
    const before = jobs.has(text(link ? at - 2 : at - 1)) && (ends || link)
    let next = text(at + 1) === 'for' ? at + 2 : at + 1
    while (beforeJobs.has(text(next))) next += 1
    return before || jobs.has(text(next))
  })
  return amounts.length >= 2
}

/** Whether two answers say the same thing, whatever unit each is in. */
export function sameAnswer(a: Answer, b: Answer): boolean {
  if (typeof a !== 'object' || typeof b !== 'object') return a === b
  if ('currency' in a || 'currency' in b) return JSON.stringify(a) === JSON.stringify(b)
  const [left, right] = [inSi(a), inSi(b)]
  return Math.abs(left - right) <= 1e-6 * Math.max(Math.abs(left), Math.abs(right))
}

function inSi(answer: object): number {
  const { value, unit } = answer as { value: number; unit?: string }
  return unit === undefined ? value : toSi(value, unit)
}

/** A length in inches. */
export function inches(value: number, unit: string): number {
  return fromSi(toSi(value, unit), 'in')
}
