import type { Answer, Read } from './answers.ts'
import type { MoneyFact, NumberFact, QuantityFact } from './fact-keys.ts'
import { readInchFraction, withFractions } from './inch-fraction.ts'
import { describeFound, type Problem } from './problem.ts'
import { fromSi, toSi, UNITS, unitSymbol } from './units.ts'

interface Spread {
  value: number
  low?: number
  high?: number
}

/** number, or number~low~high, then whatever stands for the unit */
const WRITTEN =
  /^(-?[\d.,]+(?:e-?\d+)?)(?:~(-?[\d.,]+(?:e-?\d+)?)~(-?[\d.,]+(?:e-?\d+)?))?\s*(.*)$/i
const GROUPED = /^-?\d{1,3}(,\d{3})+(\.\d+)?$/
const PLAIN = /^-?(\d+\.?\d*|\.\d+)(e-?\d{1,3})?$/i

/** Read a plain decimal number, thousands commas allowed; undefined when it is none. */
export function readDecimal(text: string): number | undefined {
  const plain = GROUPED.test(text) ? text.replaceAll(',', '') : text
  if (!PLAIN.test(plain)) return undefined
  const value = Number(plain)
  return Number.isFinite(value) ? value : undefined
}

function splitWritten(text: string): (Spread & { rest: string }) | undefined {
  const match = WRITTEN.exec(text.trim())
  if (!match) return undefined
  const value = readDecimal(match[1] as string)
  if (value === undefined) return undefined
  const rest = (match[4] as string).trim()
  if (match[2] === undefined) return { value, rest }
  const low = readDecimal(match[2])
  const high = readDecimal(match[3] as string)
  return low === undefined || high === undefined ? undefined : { value, low, high, rest }
}

/** Read a length, pressure or other figure with a unit that suits the fact. */
export function readQuantity(entry: QuantityFact, raw: unknown): Read<Answer> {
  const fitting = `give a figure with a unit: ${entry.units.join(', ')}`
  if (typeof raw === 'number') return no(entry.key, 'unit-missing', raw, fitting)
  const parts =
    typeof raw === 'string'
      ? (inchFraction(entry, raw) ?? fromText(raw))
      : fromObject(entry.key, raw, 'unit')
  const isLength = entry.kind === 'length'
  const fits = isLength ? withFractions(fitting, raw) : fitting
  if (parts === undefined) return no(entry.key, 'not-a-number', raw, fits)
  if ('problem' in parts) return parts
  const { rest, ...spread } = parts.ok
  if (rest === '') return no(entry.key, 'unit-missing', raw, fitting)
  const symbol = unitSymbol(rest)
  if (!symbol || UNITS[symbol]?.dimension !== entry.kind) {
    return no(entry.key, 'unit-unknown', raw, fits)
  }
  const usual = entry.units[0] as string
  const inUsual = (value: number): number => fromSi(toSi(value, symbol), usual)
  const problem = rangeProblem(entry, spread, inUsual, { usual: ` ${usual}`, own: ` ${symbol}` })
  return problem ? { problem } : { ok: { ...spread, unit: symbol } }
}

/** Read a pure number such as a compression ratio: 10.5, "10.5:1", {"value": 10.5}. */
export function readNumber(entry: NumberFact, raw: unknown): Read<Answer> {
  const fitting = `give a number such as 10.5 or 10.5${entry.suffix}`
  const parts = numberParts(entry, raw)
  if (parts === undefined) return no(entry.key, 'not-a-number', raw, fitting)
  if ('problem' in parts) return parts
  const { rest, ...spread } = parts.ok
  if (rest !== '' && rest.replaceAll(' ', '') !== entry.suffix) {
    return no(entry.key, 'not-a-number', raw, fitting)
  }
  const { suffix } = entry
  const problem = rangeProblem(entry, spread, (value) => value, { usual: suffix, own: suffix })
  if (problem) return { problem }
  return { ok: spread.low === undefined && spread.high === undefined ? spread.value : spread }
}

function numberParts(entry: NumberFact, raw: unknown): Read<Spread & { rest: string }> | undefined {
  if (typeof raw === 'number') {
    return Number.isFinite(raw) ? { ok: { value: raw, rest: '' } } : undefined
  }
  return typeof raw === 'string' ? fromText(raw) : fromObject(entry.key, raw, undefined)
}

/** Read an amount of money: "950 USD" or {"value": 950, "currency": "USD"}. */
export function readMoney(entry: MoneyFact, raw: unknown): Read<Answer> {
  const fitting = 'give an amount with its ISO 4217 currency, such as 950 USD'
  if (typeof raw === 'number') return no(entry.key, 'currency-missing', raw, fitting)
  const parts = typeof raw === 'string' ? fromText(raw) : fromObject(entry.key, raw, 'currency')
  if (parts === undefined) return no(entry.key, 'not-a-number', raw, fitting)
  if ('problem' in parts) return parts
  const { rest, ...spread } = parts.ok
  if (!/^[A-Z]{3}$/.test(rest)) return no(entry.key, 'currency-missing', raw, fitting)
  const problem = rangeProblem(entry, spread, (value) => value, { usual: '', own: '' })
  return problem ? { problem } : { ok: { ...spread, currency: rest } }
}

function inchFraction({ kind }: QuantityFact, text: string) {
  const read = kind === 'length' ? readInchFraction(text) : undefined
  return read && { ok: read }
}

function fromText(text: string): Read<Spread & { rest: string }> | undefined {
  const parts = splitWritten(text)
  return parts && { ok: parts }
}

function fromObject(
  key: string,
  raw: unknown,
  unitField: 'unit' | 'currency' | undefined,
): Read<Spread & { rest: string }> | undefined {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return undefined
  const known = ['value', 'low', 'high', ...(unitField ? [unitField] : [])]
  const extra = Object.keys(raw).find((field) => !known.includes(field))
  if (extra !== undefined) {
    return no(
      `${key}.${describeFound(extra)}`,
      'unknown-field',
      extra,
      `use only ${known.join(', ')}`,
    )
  }
  const record = raw as Record<string, unknown>
  for (const field of ['value', 'low', 'high'] as const) {
    const found = record[field]
    if (found === undefined && field !== 'value') continue
    if (typeof found !== 'number' || !Number.isFinite(found)) {
      return no(`${key}.${field}`, 'not-a-number', found, 'give a finite number')
    }
  }
  const rest = unitField === undefined ? '' : record[unitField]
  if (rest !== undefined && typeof rest !== 'string') {
    return no(`${key}.${unitField}`, 'unit-unknown', rest, `give the ${unitField} as a text`)
  }
  const { value, low, high } = record as { value: number; low?: number; high?: number }
  const spread: Spread = { value }
  if (low !== undefined) spread.low = low
  if (high !== undefined) spread.high = high
  return { ok: { ...spread, rest: rest ?? '' } }
}

function rangeProblem(
  entry: { key: string; low: number; high: number },
  { value, low = value, high = value }: Spread,
  inUsual: (value: number) => number,
  unit: { readonly usual: string; readonly own: string },
): Problem | undefined {
  if (!(low <= value && value <= high)) {
    const found = `${low} to ${value} to ${high}`
    return { field: entry.key, code: 'range-reversed', found, fits: 'low ≤ value ≤ high' }
  }
  const slack = 1e-9 * entry.high
  for (const figure of [value, low, high]) {
    const usual = inUsual(figure)
    if (usual >= entry.low - slack && usual <= entry.high + slack) continue
    const fits = `give ${entry.low} to ${entry.high}${unit.usual}`
    // What is too large for the usual unit is shown as it was written.
    const found = Number.isFinite(usual)
      ? `${Number(usual.toPrecision(6))}${unit.usual}`
      : `${figure}${unit.own}`
    return { field: entry.key, code: 'out-of-range', found, fits }
  }
  return undefined
}

function no(field: string, code: Problem['code'], found: unknown, fits: string): Read<never> {
  return { problem: { field, code, found: describeFound(found), fits } }
}
