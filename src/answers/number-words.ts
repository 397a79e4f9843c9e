import type { Token } from './tokens.ts'
import type { NumberVocabulary } from './vocabulary.ts'

/** A number written in words, and the token after it. */
export interface WordNumber {
  readonly value: number
  readonly next: number
  /** Words in a row that make no one number: "four one six". */
  readonly unsure?: boolean
}

/**
 * Read a number in words: "ten", "sixty-five hundred", "six fifty" (650),
 * "twelve hundred and fifty", "ten point five". A word alone that only points
 * at something ("one", "oh") is no number here; the caller may allow it.
 */
export function wordNumberAt(
  tokens: readonly Token[],
  from: number,
  words: NumberVocabulary,
): WordNumber | undefined {
  const leading = belowHundred(tokens, from, words) ?? pointed(tokens, from, words)
  if (!leading) return hundredAnd(tokens, from, words) ?? buckAndTens(tokens, from, words)
  const thousandths = withOh(tokens, leading, words)
  if (thousandths) return thousandths
  const number = withPoint(tokens, withScales(tokens, leading, words), words)
  return withRun(tokens, number, words)
}

/** "Point nine": nothing, as what stands before a point. */
function pointed(
  tokens: readonly Token[],
  from: number,
  words: NumberVocabulary,
): WordNumber | undefined {
  const point = wordAt(tokens, from)
  const digit =
    look(words.ones, wordAt(tokens, from + 1)) ?? look(words.tens, wordAt(tokens, from + 1))
  const said = point !== undefined && words.point.includes(point) && digit !== undefined
  return said ? { value: 0, next: from } : undefined
}

/** "Hundred fifty", with its "a" or "one" left out; not of "a few hundred". */
function hundredAnd(
  tokens: readonly Token[],
  from: number,
  words: NumberVocabulary,
): WordNumber | undefined {
  if (wordAt(tokens, from) !== 'hundred' || words.many.includes(tokens[from - 1]?.text ?? ''))
    return undefined
  const tail = tailBelowHundred(tokens, from + 1, words)
  return tail && tail.value >= 10 ? { value: 100 + tail.value, next: tail.next } : undefined
}

/** "A buck fifty", as the trade says 150. */
function buckAndTens(
  tokens: readonly Token[],
  from: number,
  words: NumberVocabulary,
): WordNumber | undefined {
  if (!words.hundreds.includes(wordAt(tokens, from) ?? '')) return undefined
  const tail = belowHundred(tokens, from + 1, words)
  return tail && tail.value >= 10 ? { value: 100 + tail.value, next: tail.next } : undefined
}

/** "Four oh thirty", as the trade says 4.030. */
function withOh(
  tokens: readonly Token[],
  leading: WordNumber,
  words: NumberVocabulary,
): WordNumber | undefined {
  if (leading.value > 9 || wordAt(tokens, leading.next) !== 'oh') return undefined
  const tail = belowHundred(tokens, leading.next + 1, words)
  if (!tail || tail.value < 10) return undefined
  return { value: Number((leading.value + tail.value / 1000).toFixed(3)), next: tail.next }
}

/** "Ten five to one" is 10.5; any other run of number words is no one number. */
function withRun(
  tokens: readonly Token[],
  number: WordNumber,
  words: NumberVocabulary,
): WordNumber {
  let more = belowHundred(tokens, number.next, words)
  if (!more || look(words.parts, wordAt(tokens, number.next + 1)) !== undefined) return number
  const [to, one] = [wordAt(tokens, more.next), wordAt(tokens, more.next + 1)]
  const ratio = to === 'to' && one === 'one' && number.value >= 6 && number.value <= 18
  if (ratio && more.value < 10) return { value: number.value + more.value / 10, next: more.next }
  let next = number.next
  while (more) {
    next = more.next
    more = belowHundred(tokens, next, words)
  }
  return { value: number.value, next, unsure: true }
}

function belowHundred(
  tokens: readonly Token[],
  at: number,
  words: NumberVocabulary,
): WordNumber | undefined {
  const word = wordAt(tokens, at)
  if (word === undefined) return undefined
  const tens = look(words.tens, word)
  if (tens !== undefined) {
    const one = look(words.ones, wordAt(tokens, at + 1))
    return one !== undefined && one > 0
      ? { value: tens + one, next: at + 2 }
      : { value: tens, next: at + 1 }
  }
  const small = look(words.teens, word) ?? look(words.ones, word)
  return small === undefined ? undefined : { value: small, next: at + 1 }
}

function withScales(
  tokens: readonly Token[],
  leading: WordNumber,
  words: NumberVocabulary,
): WordNumber {
  let { value, next } = leading
  const hundred = wordAt(tokens, next) === 'hundred'
  if (hundred) {
    value *= 100
    next += 1
    const tail = tailBelowHundred(tokens, next, words)
    if (tail) return withThousand(tokens, { value: value + tail.value, next: tail.next }, words)
  } else if (value >= 1 && value <= 99) {
    // "six fifty" is 650, "twelve fifty" is 1250; "ten five" is left alone.
    const tail = belowHundred(tokens, next, words)
    if (tail && tail.value >= 10) return { value: value * 100 + tail.value, next: tail.next }
  }
  return withThousand(tokens, { value, next }, words)
}

function withThousand(
  tokens: readonly Token[],
  number: WordNumber,
  words: NumberVocabulary,
): WordNumber {
  if (wordAt(tokens, number.next) !== 'thousand') return number
  const value = number.value * 1000
  const next = number.next + 1
  const rest = belowHundred(tokens, next, words)
  if (rest && wordAt(tokens, rest.next) === 'hundred') {
    return { value: value + rest.value * 100, next: rest.next + 1 }
  }
  return { value, next }
}

function tailBelowHundred(
  tokens: readonly Token[],
  at: number,
  words: NumberVocabulary,
): WordNumber | undefined {
  const tail = belowHundred(tokens, wordAt(tokens, at) === 'and' ? at + 1 : at, words)
  // "Fifty-five hundred and six thousand" are two.
  const scale = tail && wordAt(tokens, tail.next)
  const own = scale === 'thousand' || scale === 'hundred'
  return tail && tail.value >= 1 && !own ? tail : undefined
}

function withPoint(
  tokens: readonly Token[],
  number: WordNumber,
  words: NumberVocabulary,
): WordNumber {
  const point = wordAt(tokens, number.next)
  if (point === undefined || !words.point.includes(point)) return number
  let digits = ''
  let next = number.next + 1
  for (;;) {
    const word = wordAt(tokens, next)
    const digit = look(words.ones, word) ?? look(words.teens, word) ?? look(words.tens, word)
    if (digit === undefined) break
    digits += String(digit)
    next += 1
  }
  return digits === '' ? number : { value: Number(`${number.value}.${digits}`), next }
}

function wordAt(tokens: readonly Token[], at: number): string | undefined {
  const token = tokens[at]
  return token?.kind === 'word' && token.gap !== 'dash' ? token.text : undefined
}

export function look(table: Readonly<Record<string, number>>, word: string | undefined) {
  return word !== undefined && Object.hasOwn(table, word) ? table[word] : undefined
}
