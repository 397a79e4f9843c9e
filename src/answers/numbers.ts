import { wordNumberAt } from './number-words.ts'
import { AND, partOfInch } from './parts-of-units.ts'
import type { Token } from './tokens.ts'
import type { NumberVocabulary } from './vocabulary.ts'

/** One figure as written, without its unit. */
export interface PlainNumber {
  readonly value: number
  readonly otherValue?: number
  readonly from: number
  readonly to: number
  /** "k" or "thousand" stood after it. */
  readonly scaled: boolean
  /** "grand" stood after it: money. */
  readonly money: boolean
  readonly inWords: boolean
  readonly decimal: boolean
  /** "1.200": three decimals, which with money may be a thousand. */
  readonly thousandths: boolean
  readonly unusable: boolean
}

/**
 * Read one figure: 6,500; 6.5k; .030; 7 grand; 1/2; 4 1/8; nine and a half;
 * sixty-five hundred.
 *
 * @param taken - whether a token already belongs to a phrase ("two bolt")
 */
export function plainNumberAt(
  tokens: readonly Token[],
  from: number,
  words: NumberVocabulary,
  taken: (at: number) => boolean,
): PlainNumber | undefined {
  if (taken(from)) return undefined
  const read =
    tokens[from]?.kind === 'number' ? digitsAt(tokens, from, words) : inWordsAt(tokens, from, words)
  if (!read) return undefined
  for (let at = from; at < read.to; at += 1) if (taken(at)) return undefined
  return withIsh(tokens, scaled(tokens, withParts(tokens, read, words), words), words)
}

function digitsAt(
  tokens: readonly Token[],
  from: number,
  { belowZero }: NumberVocabulary,
): PlainNumber {
  const token = tokens[from] as Token
  const base = {
    from,
    scaled: false,
    money: false,
    inWords: false,
    decimal: token.decimal ?? false,
    thousandths: /^[1-9]\d{0,2}\.\d{3}$/.test(token.text),
    // No length, pressure or price is that small: somebody tries the guide, or mistyped.
    unusable: isBelowZero(tokens, from, belowZero) || isNextToNothing(token.value as number),
  }
  const alone = fractionAt(tokens, from)
  if (alone !== undefined) {
    // "7/8 of an inch".
    const [of, an, inch] = [3, 4, 5].map((next) => tokens[from + next]?.text)
    const to = of === 'of' && (an === 'an' || an === 'a') && inch === 'inch' ? from + 5 : from + 3
    return { ...base, value: alone, to, decimal: true }
  }
  const value = token.value as number
  const after = tokens[from + 1]
  if (!token.decimal && (after?.gap === 'space' || after?.gap === 'hyphen')) {
    const part = fractionAt(tokens, from + 1)
    if (part !== undefined && part < 1) {
      return { ...base, value: value + part, to: from + 4, decimal: true }
    }
  }
  const other = token.otherValue === undefined ? {} : { otherValue: token.otherValue }
  return { ...base, ...other, value, to: from + 1 }
}

function isNextToNothing(value: number): boolean {
  return value > 0 && value < 1e-6
}

/** "-12" and "minus 12", but not "10 - 12". */
function isBelowZero(tokens: readonly Token[], at: number, words: readonly string[]): boolean {
  const before = tokens[at - 1]
  if (before?.kind === 'number') return false
  return tokens[at]?.gap === 'minus' || words.includes(before?.text ?? '')
}

/** "7/16": only halves down to sixty-fourths, written without spaces. */
function fractionAt(tokens: readonly Token[], at: number): number | undefined {
  const [top, bar, bottom] = [tokens[at], tokens[at + 1], tokens[at + 2]]
  if (top?.kind !== 'number' || bar?.text !== '/' || bar.gap !== 'none') return undefined
  if (bottom?.kind !== 'number' || bottom.gap !== 'none') return undefined
  if (top.decimal || ![2, 4, 8, 16, 32, 64].includes(bottom.value as number)) return undefined
  const value = (top.value as number) / (bottom.value as number)
  return value < 1 ? value : undefined
}

function inWordsAt(
  tokens: readonly Token[],
  from: number,
  words: NumberVocabulary,
): PlainNumber | undefined {
  const first = tokens[from]
  if (first?.kind !== 'word') return undefined
  const rest = {
    from,
    scaled: false,
    money: false,
    decimal: false,
    thousandths: false,
    unusable: false,
  }
  const inch = partOfInch(tokens, from, rest, words)
  if (inch) return inch
  const read =
    (first.text === 'a' ? anScale(tokens, from, words) : undefined) ??
    wordNumberAt(tokens, from, words)
  if (!read) return undefined
  const unusable = 'unsure' in read && read.unsure === true
  const decimal = !Number.isInteger(read.value)
  return { ...rest, unusable, decimal, value: read.value, to: read.next, inWords: true }
}

/** "a hundred", "a thousand", "a grand", "a couple of grand". */
function anScale(tokens: readonly Token[], from: number, words: NumberVocabulary) {
  const scale = tokens[from + 1]?.text
  if (words.pair.includes(scale ?? '')) {
    const next = tokens[from + 2]?.text === 'of' ? from + 3 : from + 2
    return Object.hasOwn(words.scales, tokens[next]?.text ?? '') ? { value: 2, next } : undefined
  }
  if (scale === 'hundred' || scale === 'thousand') {
    const value = scale === 'hundred' ? 100 : 1000
    const and = tokens[from + 2]?.text === 'and' ? 1 : 0
    const tail = scale === 'hundred' ? wordNumberAt(tokens, from + 2 + and, words) : undefined
    return tail && tail.value >= (and ? 1 : 10) && tail.value < 100
      ? { value: value + tail.value, next: tail.next }
      : { value, next: from + 2 }
  }
  return scale !== undefined && words.moneyScales.includes(scale)
    ? { value: 1, next: from + 1 }
    : undefined
}

/** "and a half", "and three quarters", "and an eighth". */
function withParts(
  tokens: readonly Token[],
  number: PlainNumber,
  words: NumberVocabulary,
): PlainNumber {
  if (!AND.has(tokens[number.to]?.text ?? '')) return withHyphened(tokens, number, words)
  const fraction = number.inWords || number.decimal ? undefined : fractionAt(tokens, number.to + 1)
  if (fraction !== undefined) {
    return { ...number, value: number.value + fraction, to: number.to + 4, decimal: true }
  }
  const count = tokens[number.to + 1]?.text ?? ''
  const part = words.parts[tokens[number.to + 2]?.text ?? '']
  if (part === undefined) return number
  const many = count === 'a' || count === 'an' ? 1 : words.ones[count]
  if (many === undefined || many * part >= 1) return number
  return { ...number, value: number.value + many * part, to: number.to + 3, decimal: true }
}

/** "Nine three-quarters to one": a part of one without its "and". */
function withHyphened(
  tokens: readonly Token[],
  number: PlainNumber,
  words: NumberVocabulary,
): PlainNumber {
  const [count, part] = [tokens[number.to]?.text ?? '', tokens[number.to + 1]?.text ?? '']
  const toOne = tokens[number.to + 2]?.text === 'to' && tokens[number.to + 3]?.text === 'one'
  const many = words.ones[count]
  const of = words.parts[part]
  if (!toOne || many === undefined || of === undefined || many * of >= 1) return number
  return { ...number, value: number.value + many * of, to: number.to + 2, decimal: true }
}

/** "8-ish": about eight. */
function withIsh(
  tokens: readonly Token[],
  number: PlainNumber,
  { ish }: NumberVocabulary,
): PlainNumber {
  return ish.includes(tokens[number.to]?.text ?? '') ? { ...number, to: number.to + 1 } : number
}

function scaled(
  tokens: readonly Token[],
  number: PlainNumber,
  words: NumberVocabulary,
): PlainNumber {
  const after = tokens[number.to]
  if (after?.kind !== 'word' || after.gap === 'dash') return number
  const scale = Object.hasOwn(words.scales, after.text) ? words.scales[after.text] : undefined
  if (scale === undefined || number.value * scale > 1e7) return number
  // "7k2" is 7,200.
  const digit = tokens[number.to + 1]
  const tail =
    after.text === 'k' &&
    digit?.kind === 'number' &&
    digit.gap === 'none' &&
    (digit.value ?? 10) < 10
  const value = roundAway(number.value * scale + (tail ? 100 * (digit.value ?? 0) : 0))
  const { otherValue: _, ...plain } = number
  const money = words.moneyScales.includes(after.text)
  const grown = { ...plain, value, to: number.to + (tail ? 2 : 1), scaled: true, money }
  // "6 thousand 5 hundred", "7 k 5" are left alone; "two thousand five hundred" was read in words.
  return grown
}

/** 6.5 × 1000 and 4 + 0.03 as a person means them, without binary dust. */
export function roundAway(value: number): number {
  return Number(value.toPrecision(12))
}
