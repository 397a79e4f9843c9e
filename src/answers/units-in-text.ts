import { UNITS } from '../../shared/units.ts'
import type { PlainNumber } from './numbers.ts'
import { addPhrases, longestAt, type PhraseTree, phraseTree } from './phrases.ts'
import type { Token } from './tokens.ts'
import type { NumberVocabulary, UnitVocabulary, Vocabulary } from './vocabulary.ts'

/** What stands with a figure and says what it counts. */
export type FoundUnit =
  | { readonly kind: 'unit'; readonly symbol: string; readonly to: number }
  /** Money; the currency when it was said. */
  | {
      readonly kind: 'money'
      readonly currency?: string
      /** Said only by "grand", which is also a thousand rpm. */
      readonly grand?: boolean
      readonly to: number
    }
  /** ".030 over", "30 thou over". */
  | { readonly kind: 'over'; readonly unit: 'in' | 'mm'; readonly to: number }
  | { readonly kind: 'shot'; readonly unit: 'hp' | 'kW'; readonly to: number }
  | { readonly kind: 'wheel'; readonly to: number }

type Meaning =
  | { kind: 'unit'; symbol: string }
  | { kind: 'money'; currency?: string }
  | { kind: 'shot' }
  | { kind: 'wheel' }

export interface UnitReader {
  readonly tree: PhraseTree<Meaning>
  readonly vocabulary: UnitVocabulary
  readonly numbers: NumberVocabulary
  /** After "400 in" they make it cubic inches. */
  readonly engines: ReadonlySet<string>
}

/** A reader of units from the vocabulary's spellings. */
export function unitReader({
  units: vocabulary,
  numbers,
  words,
}: Pick<Vocabulary, 'units' | 'numbers' | 'words'>): UnitReader {
  const { names, sized, ofBlock } = words.engines
  const tree = phraseTree<Meaning>()
  for (const [symbol, spellings] of Object.entries(vocabulary.units)) {
    addPhrases(tree, spellings, { kind: 'unit', symbol })
  }
  for (const [currency, spellings] of Object.entries(vocabulary.currencies)) {
    addPhrases(tree, spellings, { kind: 'money', currency })
  }
  for (const [sign, currency] of Object.entries(vocabulary.signs)) {
    addPhrases(tree, [sign], currency ? { kind: 'money', currency } : { kind: 'money' })
  }
  addPhrases(tree, vocabulary.dollars, { kind: 'money' })
  addPhrases(tree, vocabulary.shot, { kind: 'shot' })
  addPhrases(tree, vocabulary.wheel, { kind: 'wheel' })
  return { tree, vocabulary, numbers, engines: new Set([...names, ...sized, ...ofBlock]) }
}

/** A money sign before a figure: "$", "£", "US$". */
export function unitBefore(
  tokens: readonly Token[],
  at: number,
  { vocabulary }: UnitReader,
): { unit: FoundUnit; to: number } | undefined {
  const first = tokens[at]
  if (!first) return undefined
  const prefix = look(vocabulary.signPrefixes, first.text)
  const signAt = prefix && tokens[at + 1]?.gap === 'none' ? at + 1 : at
  const named = look(vocabulary.signs, tokens[signAt]?.text ?? '')
  if (named === undefined) {
    // "USD 950": a code before the amount.
    const code = first.text.toUpperCase()
    if (!Object.hasOwn(vocabulary.currencies, code) || code.length !== 3) return undefined
    return { unit: { kind: 'money', currency: code, to: at + 1 }, to: at + 1 }
  }
  const currency = signAt > at ? prefix : named
  const to = signAt + 1
  return { unit: currency ? { kind: 'money', currency, to } : { kind: 'money', to }, to }
}

function look(table: Readonly<Record<string, string>>, word: string): string | undefined {
  return Object.hasOwn(table, word) ? table[word] : undefined
}

/** The unit right after a figure, if any. */
export function unitAfter(
  tokens: readonly Token[],
  number: PlainNumber,
  reader: UnitReader,
): FoundUnit | undefined {
  const over = overAt(tokens, number, reader)
  if (over) return over
  const first = tokens[number.to]
  const found =
    first && first.gap !== 'dash' ? longestAt(reader.tree, tokens, number.to) : undefined
  const meaning = found?.meanings[0]
  if (!found || !meaning)
    return number.money ? { kind: 'money', grand: true, to: number.to } : undefined
  if (isNextName(tokens, found.to) || isCode(tokens, number, found.to)) return undefined
  if (meaning.kind === 'unit' && isPreposition(tokens, number, found.to, meaning.symbol, reader)) {
    return number.money ? { kind: 'money', grand: true, to: number.to } : undefined
  }
  return described(tokens, meaning, found.from, found.to, reader)
}

function described(
  tokens: readonly Token[],
  meaning: Meaning,
  from: number,
  to: number,
  reader: UnitReader,
): FoundUnit {
  if (meaning.kind === 'shot') {
    return { kind: 'shot', unit: tokens[from]?.text === 'kw' ? 'kW' : 'hp', to }
  }
  if (meaning.kind !== 'unit') return { ...meaning, to }
  const dimension = UNITS[meaning.symbol]?.dimension
  if (dimension === 'power') {
    // "450 hp at the wheels" is no crank power.
    const next = longestAt(reader.tree, tokens, to)
    if (next?.meanings[0]?.kind === 'wheel') return { kind: 'wheel', to: next.to }
  }
  return { kind: 'unit', symbol: meaning.symbol, to }
}

/** "5l90": letters between digits are a name, no unit. */
function isCode(tokens: readonly Token[], number: PlainNumber, to: number): boolean {
  const [unit, next] = [tokens[number.to], tokens[to]]
  return (
    unit?.kind === 'word' && unit.gap === 'none' && next?.kind === 'number' && next.gap === 'none'
  )
}

/** "CR=11.2 RPM=7200": the unit names the next figure. */
function isNextName(tokens: readonly Token[], to: number): boolean {
  const link = tokens[to]?.text
  return (link === '=' || link === ':') && tokens[to + 1]?.kind === 'number'
}

/** "6 grand in it", "4 in the block": no inches. */
function isPreposition(
  tokens: readonly Token[],
  number: PlainNumber,
  to: number,
  symbol: string,
  { numbers, engines }: UnitReader,
): boolean {
  if (symbol !== 'in' || tokens[number.to]?.text !== 'in') return false
  // "Already 14k in."
  if (number.money || number.value >= 1000 || (number.scaled && number.value >= 100)) return true
  if (to !== number.to + 1) return false
  const next = tokens[to]
  // "7200 in 9.40": so fast in so many seconds.
  if (next?.kind === 'number') return number.value >= 150
  if (next?.kind !== 'word') return false
  // "Creeps to 210 in traffic": only an engine is so many inches.
  if (number.value >= 150) return !engines.has(next.text)
  return numbers.notInchBefore.includes(next.text)
}

/** "Punched thirty", "bored it out .040". */
function isPunched(
  tokens: readonly Token[],
  { value, decimal, scaled, from }: PlainNumber,
  { punched, punchedOut }: NumberVocabulary,
): boolean {
  const thou = !decimal && value >= 10 && value <= 60 && value % 10 === 0
  if (scaled || !(thou || (decimal && value >= 0.01 && value <= 0.06))) return false
  let at = from - 1
  while (at > from - 4 && punchedOut.includes(tokens[at]?.text ?? '')) at -= 1
  return punched.includes(tokens[at]?.text ?? '')
}

/** "thirty over", ".030 over", "30 thou over", "0.5 mm over", "30 thousandths oversize". */
function overAt(
  tokens: readonly Token[],
  number: PlainNumber,
  { numbers, tree }: UnitReader,
): FoundUnit | undefined {
  let at = number.to
  const word = tokens[at]?.text ?? ''
  const metric = word === 'mm'
  if (metric || numbers.thou.includes(word) || word === 'inch' || word === 'in' || word === '"')
    at += 1
  const over = tokens[at]
  if (!over || !numbers.over.includes(over.text)) {
    const bare = longestAt(tree, tokens, number.to) === undefined
    return bare && isPunched(tokens, number, numbers)
      ? { kind: 'over', unit: 'in', to: number.to }
      : undefined
  }
  // "0.030 over 4 in"; but "5 over 6" is none.
  const small = number.decimal && number.value < 0.13
  if (number.scaled || (tokens[at + 1]?.kind === 'number' && !small)) return undefined
  return { kind: 'over', unit: metric ? 'mm' : 'in', to: at + 1 }
}
