import type { PlainNumber } from './numbers.ts'
import type { Token } from './tokens.ts'
import type { NumberVocabulary } from './vocabulary.ts'

type Rest = Omit<PlainNumber, 'value' | 'to' | 'inWords'>

/** "half inch", "half a bar", "three eighths of an inch", "an inch": parts of an inch in words. */
export function partOfInch(
  tokens: readonly Token[],
  from: number,
  rest: Rest,
  words: NumberVocabulary,
): PlainNumber | undefined {
  const text = (at: number): string => tokens[at]?.text ?? ''
  const counted = Object.hasOwn(words.ones, text(from)) ? words.ones[text(from)] : undefined
  const article = text(from) === 'a' || text(from) === 'an'
  if (article && text(from + 1) === 'inch') {
    const more = eighthsAfter(tokens, from + 2, words)
    if (more) return { ...rest, value: 1 + more.value, to: more.to, inWords: true, decimal: true }
    return { ...rest, value: 1, to: from + 1, inWords: true }
  }
  // "A bar and a half": the part stands after the unit, where figures.ts looks for it.
  if (article && words.halved.includes(text(from + 1)) && partAfter(tokens, from + 2, words)) {
    return { ...rest, value: 1, to: from + 1, inWords: true }
  }
  const at = counted !== undefined || article ? from + 1 : from
  const part = Object.hasOwn(words.parts, text(at)) ? words.parts[text(at)] : undefined
  if (part === undefined) return undefined
  let unit = at + 1
  if (text(unit) === 'of') unit += 1
  if (text(unit) === 'a' || text(unit) === 'an') unit += 1
  const value = (counted ?? 1) * part
  // "Three sixteenths" says itself that it is of an inch.
  const plain = (counted !== undefined || article) && part < 0.25 && unit === at + 1
  if (!(words.halved.includes(text(unit)) || plain) || value >= 1) return undefined
  return { ...rest, value, to: unit, inWords: true, decimal: true }
}

/** The end of "an inch and an eighth", "two inches and three eighths". */
export function eighthsAfter(
  tokens: readonly Token[],
  at: number,
  words: NumberVocabulary,
): { value: number; to: number } | undefined {
  if (!AND.has(tokens[at]?.text ?? '')) return undefined
  const [count, part] = [tokens[at + 1]?.text ?? '', tokens[at + 2]?.text ?? '']
  const many = count === 'a' || count === 'an' ? 1 : words.ones[count]
  const of = Object.hasOwn(words.parts, part) ? words.parts[part] : undefined
  if (many === undefined || of === undefined || many * of >= 1) return undefined
  return { value: many * of, to: at + 3 }
}

export const AND = new Set(['and', 'n', '&', 'an'])

/** The "and a half" of "a pound and a half". */
export function partAfter(
  tokens: readonly Token[],
  at: number,
  words: NumberVocabulary,
): { value: number; to: number } | undefined {
  const part = tokens[at + 2]?.text ?? ''
  const one = tokens[at + 1]?.text === 'a' || tokens[at + 1]?.text === 'an'
  if (!AND.has(tokens[at]?.text ?? '') || !one || !Object.hasOwn(words.parts, part))
    return undefined
  return { value: words.parts[part] as number, to: at + 3 }
}
