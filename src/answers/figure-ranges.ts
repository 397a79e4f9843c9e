import { type PlainNumber, plainNumberAt, roundAway } from './numbers.ts'
import { type Bare, type FigureReader, one, toOneAt, withUnit } from './plain-figure.ts'
import type { Token } from './tokens.ts'
import { type FoundUnit, unitAfter, unitBefore } from './units-in-text.ts'
import type { NumberVocabulary } from './vocabulary.ts'

/** A range "a to b", "a-b", "between a and b", or a value with its spread "a (b to c)", "a~b~c". */
export function spreadAt(
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
  // "5 to 6 hundred".
  const hundreds = last === 'hundred' && second.scaled && first.value < 100
  if (hundreds && first.value * 100 < second.value) return roundAway(first.value * 100)
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
  if (joiner.text === 'or' && tokens[first.from - 1]?.text === 'either') return undefined
  if (!reader.words.rangeWords.includes(joiner.text)) return undefined
  // "Between 10 and 12", "between $1,000 and $1,500".
  const lead = [1, 2, 3].map((back) => tokens[first.from - back]?.text)
  if (joiner.text === 'and' && !lead.includes('between')) return undefined
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
