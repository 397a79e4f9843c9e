import { type Answer, UNKNOWN } from './answers.ts'
import { type Fact, type FactKey, fact } from './fact-keys.ts'
import { fromSi, toSi, UNITS } from './units.ts'

/**
 * A number with at most so many decimals, thousands grouped by commas, no
 * trailing noughts. Never depends on the machine's locale.
 */
export function printNumber(value: number, decimals: number): string {
  const [whole = '0', part = ''] = Math.abs(value).toFixed(decimals).split('.')
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole
  const tail = part.replace(/0+$/, '')
  const digits = tail ? `${grouped}.${tail}` : grouped
  return value < 0 && Number(digits.replaceAll(',', '')) !== 0 ? `−${digits}` : digits
}

/** The same with all its decimals, noughts kept: for figures that stand beside others of their kind. */
export function printFixed(value: number, decimals: number): string {
  const [whole = '0', part = ''] = printNumber(value, decimals).split('.')
  return decimals > 0 ? `${whole}.${part.padEnd(decimals, '0')}` : whole
}

const NO_SPACE_BEFORE = new Set(['%', '°'])

/** A figure with its unit, as a person reads it: "4.03 in", "45.1 kN", "8.25%". */
export function printFigure(value: number, symbol: string, decimals?: number): string {
  const digits = printNumber(value, decimals ?? UNITS[symbol]?.decimals ?? 2)
  if (symbol === '') return digits
  return NO_SPACE_BEFORE.has(symbol) ? `${digits}${symbol}` : `${digits}\u00a0${symbol}`
}

/** An amount of money: "1,450 USD". */
export function printMoney(amount: number, currency: string): string {
  return `${printNumber(Math.round(amount), 0)}\u00a0${currency}`
}

/** An answer as the person gave it, in words. */
export function printAnswer(key: FactKey, answer: Answer): string {
  const entry = fact(key)
  if (answer === UNKNOWN && !(entry.kind === 'choice' && UNKNOWN in entry.choices))
    return 'not known'
  if (typeof answer === 'string')
    return entry.kind === 'choice' ? (entry.choices[answer] ?? answer) : answer
  if (typeof answer === 'number') return `${printNumber(answer, 2)}${suffix(entry)}`
  const figure = printGiven(answer.value)
  const spread =
    answer.low === undefined && answer.high === undefined
      ? figure
      : `${figure} (${printGiven(answer.low ?? answer.value)} to ${printGiven(answer.high ?? answer.value)})`
  if ('unit' in answer) return `${spread}${answer.unit === '%' ? '' : '\u00a0'}${answer.unit}`
  if ('currency' in answer) return `${spread}\u00a0${answer.currency}`
  return `${spread}${suffix(entry)}`
}

/** A person's own figure: all the digits they gave, up to what a double holds exactly. */
function printGiven(value: number): string {
  return printNumber(value, 6)
}

function suffix(entry: Fact): string {
  return entry.kind === 'number' ? entry.suffix : ''
}

/** A figure from one unit in another, for people who count in the other system. */
export function convert(value: number, from: string, to: string): number {
  return fromSi(toSi(value, from), to)
}
