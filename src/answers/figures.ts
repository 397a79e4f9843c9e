import { type PlainNumber, plainNumberAt, roundAway } from './numbers.ts'
import type { Token } from './tokens.ts'
import { type FoundUnit, type UnitReader, unitAfter, unitBefore } from './units-in-text.ts'
import type { NumberVocabulary } from './vocabulary.ts'

/** A figure or range with whatever unit stands with it. */
export interface Figure {
  readonly value: number
  readonly low?: number
  readonly high?: number
  readonly otherValue?: number
  readonly unit?: FoundUnit
  /** "10.5:1", "ten to one". */
  readonly ratio: boolean
  readonly scaled: boolean
  readonly inWords: boolean
  readonly decimal: boolean
  readonly thousandths: boolean
  readonly unusable: boolean
  /** "from 9 to 10": which could be a change as well as a range. */
  readonly afterFrom: boolean
  readonly from: number
  readonly to: number
}

export interface FigureReader {
  readonly words: NumberVocabulary
  readonly units: UnitReader
}

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
  const number = readRest(tokens, first, before?.unit, reader, taken)
  if (isPointing(tokens, first, number)) return undefined
  return { ...number, from: at, afterFrom: tokens[at - 1]?.text === 'from' }
}

/** "one" and "oh" without unit or scale point at something; they count nothing. */
function isPointing(tokens: readonly Token[], first: PlainNumber, figure: Bare): boolean {
  const word = tokens[first.from]?.text
  return (
    (word === 'one' || word === 'oh' || word === 'zero') &&
    first.to === first.from + 1 &&
    figure.to === first.to
  )
}

type Bare = Omit<Figure, 'from' | 'afterFrom'>

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
  const thousandths = withThousandths(tokens, first, end, unit, reader, taken)
  if (thousandths) return withUnit({ ...single, ...thousandths }, unit)
  const spread = spreadAt(tokens, first, end, unit, reader, taken)
  if (spread) return spread
  return withUnit({ ...single, to: end }, unit)
}

/** "Four inches and thirty thousandths". */
function withThousandths(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  unit: FoundUnit | undefined,
  { words }: FigureReader,
  taken: (at: number) => boolean,
): { value: number; to: number; decimal: boolean } | undefined {
  if (unit?.kind !== 'unit' || unit.symbol !== 'in') return undefined
  const at = tokens[end]?.text === 'and' || tokens[end]?.text === 'plus' ? end + 1 : end
  const part = plainNumberAt(tokens, at, words, taken)
  if (!part || part.value >= 1000 || !words.thou.includes(tokens[part.to]?.text ?? '')) {
    return undefined
  }
  return { value: roundAway(first.value + part.value / 1000), to: part.to + 1, decimal: true }
}

function one(number: PlainNumber): Bare {
  const { value, to, scaled, inWords, decimal, thousandths, unusable, otherValue } = number
  const other = otherValue === undefined ? {} : { otherValue }
  return {
    value,
    to,
    scaled,
    inWords,
    decimal,
    thousandths,
    unusable,
    ratio: false,
    ...other,
    ...money(number),
  }
}

function money(number: PlainNumber): { unit?: FoundUnit } {
  return number.money ? { unit: { kind: 'money', grand: true, to: number.to } } : {}
}

function withUnit(figure: Bare, unit: FoundUnit | undefined): Bare {
  return unit ? { ...figure, unit } : figure
}

/** ":1", "to 1", "to one" after a figure, and not the start of a range such as "1 to 15". */
function toOneAt(
  tokens: readonly Token[],
  number: PlainNumber,
  at: number,
  words: NumberVocabulary,
): number | undefined {
  const [joiner, last] = [tokens[at], tokens[at + 1]]
  if (last && words.toOne.includes(last.text) && last.gap !== 'dash') {
    if (joiner?.text === ':' || (joiner?.text === 'to' && number.value > 1)) return at + 2
  }
  // "10.5-1": a range cannot run down to one.
  const dashed = joiner?.text === '1' && joiner.gap === 'hyphen' && tokens[at + 1]?.text !== '/'
  return dashed && number.value >= 5 && number.value <= 20 ? at + 1 : undefined
}

/** A range "a to b", "a-b", "between a and b", or a value with its spread "a (b to c)", "a~b~c". */
function spreadAt(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  unit: FoundUnit | undefined,
  reader: FigureReader,
  taken: (at: number) => boolean,
): Bare | undefined {
  const around = aroundAt(tokens, first, end, unit, reader, taken)
  if (around) return around
  const second = secondAt(tokens, first, end, reader, taken)
  if (!second) return undefined
  const ratioEnd = toOneAt(tokens, second, second.to, reader.words)
  const after = ratioEnd === undefined ? unitAfter(tokens, second, reader.units) : undefined
  if (unit && after && !sameUnit(unit, after)) return undefined
  const low = scaledAlike(tokens, first, second, reader.words)
  if (!(low < second.value) || low * 4 < second.value) return undefined
  const value = roundAway((low + second.value) / 2)
  const to = ratioEnd ?? after?.to ?? second.to
  const found =
    after ?? unit ?? (second.money ? { kind: 'money' as const, grand: true, to } : undefined)
  const range = {
    ...one(second),
    value,
    low,
    high: second.value,
    ratio: ratioEnd !== undefined,
    to,
  }
  const { otherValue: _, ...plain } = { ...range, unusable: first.unusable }
  return withUnit({ ...plain, decimal: first.decimal || second.decimal }, found)
}

/** "6-7 grand", "1.5 to 2k" and "four to five thousand" scale both ends; "6500-7k" does not. */
function scaledAlike(
  tokens: readonly Token[],
  first: PlainNumber,
  second: PlainNumber,
  { scales: words }: NumberVocabulary,
): number {
  const last = tokens[second.to - 1]?.text ?? ''
  const scale = second.inWords && Object.hasOwn(words, last) ? (words[last] ?? 1) : 1
  if (scale > 1 && first.value < scale) {
    const low = roundAway(first.value * scale)
    if (low < second.value) return low
  }
  const scales =
    second.scaled && !first.scaled && first.value < 1000 && first.value * 1000 < second.value
  return scales ? roundAway(first.value * 1000) : first.value
}

function sameUnit(a: FoundUnit, b: FoundUnit): boolean {
  return a.kind === b.kind && (a.kind !== 'unit' || b.kind !== 'unit' || a.symbol === b.symbol)
}

function secondAt(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  reader: FigureReader,
  taken: (at: number) => boolean,
): PlainNumber | undefined {
  const joiner = tokens[end]
  if (!joiner || taken(end)) return undefined
  if (joiner.gap === 'hyphen' || joiner.gap === 'dash' || joiner.gap === 'minus') {
    if (joiner.kind !== 'number') return undefined
    const number = plainNumberAt(tokens, end, reader.words, taken)
    return number && { ...number, unusable: false }
  }
  if (joiner.text === 'to' && tokens[first.from - 1]?.text === 'go') return undefined
  if (!reader.words.rangeWords.includes(joiner.text)) return undefined
  if (joiner.text === 'and' && tokens[first.from - 1]?.text !== 'between') return undefined
  const sign = unitBefore(tokens, end + 1, reader.units)
  return plainNumberAt(tokens, sign?.to ?? end + 1, reader.words, taken)
}

/** "12 (10 to 14) psi" and "12~10~14 psi", as the pages and links print a spread. */
function aroundAt(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  unit: FoundUnit | undefined,
  reader: FigureReader,
  taken: (at: number) => boolean,
): Bare | undefined {
  const mark = tokens[end]?.text
  if (mark === '+' && tokens[end + 1]?.text === '/')
    return plusMinusAt(tokens, first, end, unit, reader, taken)
  if (mark !== '(' && mark !== '~') return undefined
  const low = plainNumberAt(tokens, end + 1, reader.words, taken)
  const joiner = low && tokens[low.to]
  if (!low || joiner?.text !== (mark === '(' ? 'to' : '~')) return undefined
  const high = plainNumberAt(tokens, low.to + 1, reader.words, taken)
  if (!high || (mark === '(' && tokens[high.to]?.text !== ')')) return undefined
  const to = mark === '(' ? high.to + 1 : high.to
  return spreadWithUnit(tokens, first, low.value, high.value, to, unit, reader)
}

function plusMinusAt(
  tokens: readonly Token[],
  first: PlainNumber,
  end: number,
  unit: FoundUnit | undefined,
  reader: FigureReader,
  taken: (at: number) => boolean,
): Bare | undefined {
  const by = plainNumberAt(tokens, end + 2, reader.words, taken)
  if (!by || by.value >= first.value) return undefined
  const [low, high] = [roundAway(first.value - by.value), roundAway(first.value + by.value)]
  return spreadWithUnit(tokens, first, low, high, by.to, unit, reader)
}

function spreadWithUnit(
  tokens: readonly Token[],
  first: PlainNumber,
  low: number,
  high: number,
  to: number,
  unit: FoundUnit | undefined,
  reader: FigureReader,
): Bare {
  const bare = { ...one(first), low, high, to }
  const ratioEnd = toOneAt(tokens, first, to, reader.words)
  if (ratioEnd !== undefined) return { ...bare, ratio: true, to: ratioEnd }
  const after = unitAfter(tokens, { ...first, to }, reader.units)
  return withUnit({ ...bare, to: after?.to ?? to }, after ?? unit)
}
