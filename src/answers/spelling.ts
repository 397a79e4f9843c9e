import { wordsOf } from './phrases.ts'
import type { Token } from './tokens.ts'
import type { Vocabulary } from './vocabulary.ts'

/** Shortest word that is taken for a slip of another; shorter ones are too alike. */
const SHORTEST = 5
const LONGEST = 20
/** From this length on, two slips still leave a word plain. */
const LONG = 9

export interface Speller {
  readonly known: ReadonlySet<string>
  readonly fixes: ReadonlyMap<string, string>
  /** Words that name a part or a measure, of which something is said: "bore's 4.03". */
  readonly naming: ReadonlySet<string>
  /** Words that say something of an engine: of its parts, choices and figures. */
  readonly telling: ReadonlySet<string>
  /** Words of four letters that are worth it; others are too alike. */
  readonly turnedBack: ReadonlySet<string>
  /** Each known word, and each with one letter left out, to the words it may be. */
  readonly near: ReadonlyMap<string, readonly string[]>
  /** The words that are long enough to be known through two slips. */
  readonly long: readonly string[]
}

/** A speller over every word of the vocabulary. */
export function speller(vocabulary: Vocabulary): Speller {
  const { spelling, numbers, parts, cues, choices, markers } = vocabulary
  const counted = [numbers.ones, numbers.tens, numbers.teens].flatMap((table) => Object.keys(table))
  const known = new Set([...spelling.keep, ...counted, ...wordsIn(vocabulary)])
  const trade = wordsIn([cues, choices, parts.nouns, parts.attributes, counted])
  const words = new Set([...trade].filter(({ length }) => length >= SHORTEST && length <= LONGEST))
  return {
    known,
    fixes: new Map(Object.entries(spelling.fixes)),
    naming: wordsIn([parts.nouns, choices.capFastening, spelling.measures]),
    telling: without(
      wordsIn([choices, parts.nouns, parts.attributes]),
      new Set([...markers.fillers, ...parts.between, ...SMALL]),
    ),
    turnedBack: new Set(spelling.turned),
    near: nearForms(words),
    long: [...words].filter((word) => word.length >= LONG),
  }
}

const SMALL = 'it this that them they he she me him us so by hand back there here ever no'.split(
  ' ',
)

function without(words: ReadonlySet<string>, others: ReadonlySet<string>): Set<string> {
  return new Set([...words].filter((word) => !others.has(word)))
}

function wordsIn(part: unknown): Set<string> {
  const words = new Set<string>()
  for (const phrase of phrasesOf(part)) {
    for (const text of wordsOf(phrase)) if (/^\p{L}/u.test(text)) words.add(text)
  }
  return words
}

function nearForms(words: ReadonlySet<string>): Map<string, string[]> {
  const near = new Map<string, string[]>()
  for (const word of words) {
    for (const form of [word, ...shortened(word)]) {
      const list = near.get(form)
      if (list) list.push(word)
      else near.set(form, [word])
    }
  }
  return near
}

function* phrasesOf(value: unknown): Generator<string> {
  if (typeof value === 'string') yield value
  else if (typeof value === 'object' && value !== null) {
    for (const part of Object.values(value)) yield* phrasesOf(part)
  }
}

function shortened(word: string): string[] {
  return Array.from({ length: word.length }, (_, at) => word.slice(0, at) + word.slice(at + 1))
}

/**
 * Words with their slips mended: listed ones, and words of five letters or more
 * that are one slip (a letter more, less, other, or two changed about) from exactly
 * one word of the trade with the same first letter.
 */
export function mendSpelling(tokens: readonly Token[], by: Speller): Token[] {
  return tokens.map((token, at) => {
    if (token.kind !== 'word') return asWord(token, tokens[at - 1], tokens.slice(at + 1, at + 3))
    const text = isContracted(token, by) ? token.text.slice(0, -1) : mended(token.text, by)
    return text === token.text ? token : { ...token, text }
  })
}

/** "Crank's a 3.75", "the block's iron": the part is, no word of its own. */
function isContracted({ owner, text }: Token, { naming }: Speller): boolean {
  return owner === true && naming.has(text.slice(0, -1))
}

/** "Torqued 2 85", "paid 1200 4 the heads": a lone digit that is a word. */
function asWord(token: Token, before: Token | undefined, [after, next]: readonly Token[]): Token {
  if (token.kind !== 'number' || token.gap !== 'space' || after?.gap !== 'space') return token
  const to =
    token.text === '2' &&
    before?.kind === 'word' &&
    after.kind === 'number' &&
    next?.text !== '/' &&
    // "2 500 euro" is two thousand and a half.
    !(/^\d00$/.test(after.text) && next?.kind === 'word')
  const four = token.text === '4' && ['the', 'it', 'my'].includes(after.text)
  if (!to && !(four && before?.kind === 'number')) return token
  const { value: _, decimal: __, otherValue: ___, ...plain } = token
  return { ...plain, kind: 'word', text: to ? 'to' : 'for' }
}

function mended(word: string, by: Speller): string {
  const { known, fixes, near, long } = by

  const fixed = fixes.get(word)
  if (fixed !== undefined) return fixed
  if (known.has(word) || word.length > LONGEST) return word
  const plain = asSpoken(word, known) ?? (word.length < SHORTEST ? turned(word, by) : undefined)
  if (plain !== undefined) return plain
  if (word.length < SHORTEST) return word
  // "Stroke's" and "strokes" are the stroke.
  if (word.endsWith('s') && known.has(word.slice(0, -1))) return word.slice(0, -1)
  const found = new Set<string>()
  for (const form of [word, ...shortened(word)]) {
    for (const candidate of near.get(form) ?? []) {
      if (candidate[0] === word[0] && oneSlip(word, candidate)) found.add(candidate)
    }
  }
  if (found.size === 0 && word.length >= LONG) {
    for (const candidate of long)
      if (candidate[0] === word[0] && twoSlips(word, candidate)) found.add(candidate)
  }
  // "Strokd" may be stroke or stroked: one family, and its shortest will do.
  const [only] = [...found].sort((a, b) => a.length - b.length)
  return only !== undefined && [...found].every((one) => one.startsWith(only)) ? only : word
}

/** "Frettin" and "gass": a dropped g, a letter too many of two alike. */
function asSpoken(word: string, known: ReadonlySet<string>): string | undefined {
  if (word.length >= SHORTEST && word.endsWith('in') && known.has(`${word}g`)) return `${word}g`
  for (let at = 1; at < word.length; at += 1) {
    if (word[at] !== word[at - 1]) continue
    const single = word.slice(0, at) + word.slice(at + 1)
    if (single.length >= 3 && known.has(single)) return single
  }
  return undefined
}

/** "Blot" for bolt: a word of four letters with two neighbours changed about. */
function turned(
  word: string,
  { known, turnedBack }: Pick<Speller, 'known' | 'turnedBack'>,
): string | undefined {
  if (word.length !== 4) return undefined
  const swapped = `${word[0]}${word[2]}${word[1]}${word[3]}`
  const last = `${word[0]}${word[1]}${word[3]}${word[2]}`
  return turnedBack.has(swapped) && known.has(swapped)
    ? swapped
    : turnedBack.has(last) && known.has(last)
      ? last
      : undefined
}

/** Whether two words differ by one letter more, less or other, or by two neighbours changed about. */
function oneSlip(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false
  let start = 0
  while (start < a.length && a[start] === b[start]) start += 1
  let end = 0
  while (end < a.length - start && end < b.length - start && a.at(-1 - end) === b.at(-1 - end))
    end += 1
  const [left, right] = [a.slice(start, a.length - end), b.slice(start, b.length - end)]
  if (left.length <= 1 && right.length <= 1) return true
  return left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0]
}

/** Whether at most two letters are more, less or other. */
function twoSlips(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 2) return false
  let row = Array.from({ length: b.length + 1 }, (_, at) => at)
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i]
    for (let j = 1; j <= b.length; j += 1) {
      const other = (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1)
      next.push(Math.min(other, (row[j] as number) + 1, (next[j - 1] as number) + 1))
    }
    if (Math.min(...next) > 2) return false
    row = next
  }
  return (row[b.length] as number) <= 2
}
