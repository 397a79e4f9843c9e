import { spreadAt } from './figure-ranges.ts'
import { type PlainNumber, plainNumberAt, roundAway } from './numbers.ts'
import { eighthsAfter, partAfter } from './parts-of-units.ts'
import {
  type Bare,
  type Figure,
  type FigureReader,
  one,
  toOneAt,
  withUnit,
} from './plain-figure.ts'
import type { Token } from './tokens.ts'
import { type FoundUnit, unitAfter, unitBefore } from './units-in-text.ts'

/** Every figure of a message, left to right; they never overlap. */
export function figuresIn(
  tokens: readonly Token[],
  reader: FigureReader,
  taken: (at: number) => boolean,
): Figure[] {
  const figures: Figure[] = []
  let at = 0
  while (at < tokens.length) {
    const figure = figureAt(tokens, at, reader, taken)
    if (figure) figures.push(figure)
    at = figure ? figure.to : at + 1
  }
  return figures
}

function figureAt(
  tokens: readonly Token[],
  at: number,
  reader: FigureReader,
  taken: (at: number) => boolean,
): Figure | undefined {
  const before = unitBefore(tokens, at, reader.units)
  const start = before ? before.to : at
  const first =
    start < tokens.length ? plainNumberAt(tokens, start, reader.words, taken) : undefined
  if (!first) return undefined
  const number = readRest(
    tokens,
    grouped(tokens, first, before?.unit, reader),
    before?.unit,
    reader,
    taken,
  )
  if (isPointing(tokens, first, number)) return undefined
  return { ...number, from: at, afterFrom: tokens[at - 1]?.text === 'from' }
}

/** "one" and "oh" without unit or scale point at something; they count nothing. */
function isPointing(tokens: readonly Token[], first: PlainNumber, figure: Bare): boolean {
  // "All eight" are the cylinders.
  const all = tokens[first.from - 1]?.text === 'all' && Number.isInteger(figure.value)
  if (all && !figure.unit && (first.inWords || figure.value <= 12)) return true
  // "Two of the caps" are counted, whatever was asked.
  const of =
    tokens[figure.to]?.text === 'of' &&
    ['the', 'my', 'them', 'these'].includes(tokens[figure.to + 1]?.text ?? '')
  if (of && !figure.unit && Number.isInteger(figure.value)) return true
  const word = tokens[first.from]?.text
  return (
    (word === 'one' || word === 'oh' || word === 'zero') &&
    first.to === first.from + 1 &&
    figure.to === first.to
  )
}

function readRest(
  tokens: readonly Token[],
  first: PlainNumber,
  sign: FoundUnit | undefined,
  reader: FigureReader,
  taken: (at: number) => boolean,
): Bare {
  const single = one(first)
  const ratioEnd = toOneAt(tokens, first, first.to, reader.words)
  if (ratioEnd !== undefined) return { ...single, ratio: true, to: ratioEnd }
  const unit = sign ?? unitAfter(tokens, first, reader.units)
  const end = unit && unit !== sign ? unit.to : first.to
  const thousandths =
    withPart(tokens, first, end, unit, reader) ??
    withThousandths(tokens, first, end, unit, reader, taken) ??
    withOunces(tokens, first, end, unit, reader, taken)
  if (thousandths) return withUnit({ ...single, ...thousandths }, unit)
  const spread = spreadAt(tokens, first, end, unit, reader, taken)
  if (spread) return spread
  return withUnit({ ...single, to: end }, unit)
}

/** "A bar and a half", "one pound and a quarter". */
function withPart(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  unit: FoundUnit | undefined,
  { words }: FigureReader,
): { value: number; to: number; decimal: boolean } | undefined {
  if (unit?.kind !== 'unit' || !first.inWords || !Number.isInteger(first.value)) return undefined
  const part = partAfter(tokens, end, words)
  return part && { value: roundAway(first.value + part.value), to: part.to, decimal: true }
}

/** "Four inches and thirty thousandths", "four inches and an eighth". */
function withThousandths(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  unit: FoundUnit | undefined,
  { words }: FigureReader,
  taken: (at: number) => boolean,
): { value: number; to: number; decimal: boolean } | undefined {
  if (unit?.kind !== 'unit' || unit.symbol !== 'in') return undefined
  const eighths = eighthsAfter(tokens, end, words)
  if (eighths && Number.isInteger(first.value)) {
    return { value: first.value + eighths.value, to: eighths.to, decimal: true }
  }
  const at = tokens[end]?.text === 'and' || tokens[end]?.text === 'plus' ? end + 1 : end
  const part = plainNumberAt(tokens, at, words, taken)
  if (!part || part.value >= 1000 || !words.thou.includes(tokens[part.to]?.text ?? '')) {
    return undefined
  }
  return { value: roundAway(first.value + part.value / 1000), to: part.to + 1, decimal: true }
}

/** "One pound eleven ounces". */
function withOunces(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  unit: FoundUnit | undefined,
  { words, units }: FigureReader,
  taken: (at: number) => boolean,
): { value: number; to: number; decimal: boolean } | undefined {
  if (unit?.kind !== 'unit' || unit.symbol !== 'lb' || first.decimal) return undefined
  const at = tokens[end]?.text === 'and' ? end + 1 : end
  const part = plainNumberAt(tokens, at, words, taken)
  const ounces = part && part.value < 16 ? unitAfter(tokens, part, units) : undefined
  if (!part || ounces?.kind !== 'unit' || ounces.symbol !== 'oz') return undefined
  return { value: roundAway(first.value + part.value / 16), to: ounces.to, decimal: true }
}

/** What is counted in thousands, so that "12 500" before it is one figure. */
const IN_THOUSANDS = new Set(['rpm', 'cc'])

/** "12 500 USD", "10 000 dollars", "5 700 cc": thousands parted by a space, as much of the world writes them. */
function grouped(
  tokens: readonly Token[],
  first: PlainNumber,
  sign: FoundUnit | undefined,
  { units }: FigureReader,
): PlainNumber {
  const rest = tokens[first.to]
  const whole = !first.inWords && !first.decimal && !first.scaled && first.value >= 1
  const three = rest?.kind === 'number' && rest.gap === 'space' && /^\d{3}$/.test(rest.text)
  if (!whole || first.value > 999 || first.to !== first.from + 1 || !three) return first
  const value = first.value * 1000 + (rest.value ?? 0)
  const all = { ...first, value, to: first.to + 1 }
  const unit = sign ?? unitAfter(tokens, all, units)
  const counted = unit?.kind === 'money' || (unit?.kind === 'unit' && IN_THOUSANDS.has(unit.symbol))
  return counted ? all : first
}
