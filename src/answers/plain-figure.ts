import type { PlainNumber } from './numbers.ts'
import type { Token } from './tokens.ts'
import type { FoundUnit, UnitReader } from './units-in-text.ts'
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

/** A figure before its place in the message is settled. */
export type Bare = Omit<Figure, 'from' | 'afterFrom'>

export function one(number: PlainNumber): Bare {
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

export function withUnit(figure: Bare, unit: FoundUnit | undefined): Bare {
  return unit ? { ...figure, unit } : figure
}

/** ":1", "to 1", "to one" after a figure, and not the start of a range such as "1 to 15". */
export function toOneAt(
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
