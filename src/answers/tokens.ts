import { printThread, readThread } from '../../shared/thread.ts'

/** What stands between a token and the one before it. */
export type Gap = 'none' | 'space' | 'hyphen' | 'dash' | 'minus'

export interface Token {
  readonly kind: 'word' | 'number' | 'thread' | 'mark'
  /** Lower case, apostrophes taken out; a thread in its canonical form. */
  readonly text: string
  readonly start: number
  readonly end: number
  readonly gap: Gap
  /** Value of a number. */
  readonly value?: number
  /** Its other reading, when a comma may be a decimal point: "4,030". */
  readonly otherValue?: number
  /** Whether a word was written with 's: whose something is. */
  readonly owner?: boolean
  /** Whether the number was written with decimals. */
  readonly decimal?: boolean
}

const SPACE = /[^\S\n]*/y
const METRIC_THREAD =
  /m ?\d{1,2}(?:[.,]\d{1,2})?(?: ?[x*] ?\d(?:[.,]\d{1,3})?| by \d(?:[.,]\d{1,3})?| ?- ?\d[.,]\d{1,3}| \d[.,]\d{1,3})(?![\d.]\d)/y
const INCH_THREAD =
  /(?:\d{1,2} ?\/ ?\d{1,2}|0?\.\d{1,4})"? ?(?:-|x) ?\d{1,2}(?![\d.]*\d)(?: ?(?:unc|unf|unef|un)\b)?/y
const GROUPED = /\d{1,3}(?:,\d{3})+(?:\.\d+)?(?!\d)/y
const DECIMAL_COMMA = /\d{1,3},\d{1,2}(?![\d,])/y
/** "6e3" is one figure, too: taken apart, its ends would be two wrong ones. */
const DIGITS = /(?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d{1,3}(?![\p{L}\d]))?/uy
const LETTERS = /\p{L}+(?:'\p{L}+)*/uy
const LETTERS_AND_DIGITS = /\p{L}[\p{L}\d]*(?:'\p{L}+)*/uy

/** Words that a sign stands for. */
const SIGNS: Readonly<Record<string, string>> = { '&': 'and', '@': 'at', '\u2300': 'diameter' }

/** Cut plain text into words, numbers, threads and marks, in one pass. */
export function tokenise(text: string): Token[] {
  const tokens: Token[] = []
  let at = 0
  while (at < text.length) {
    const { gap, next } = gapAt(text, at, tokens.length === 0)
    at = next
    if (at >= text.length) break
    const token = tokenAt(text, at, gap, tokens.at(-1))
    // The apostrophe of "the caps' material" is no mark.
    const owned = token.text === "'" && gap === 'none' && tokens.at(-1)?.kind === 'word'
    if (!owned) tokens.push(token)
    at = token.end
  }
  return tokens
}

function gapAt(text: string, from: number, first: boolean): { gap: Gap; next: number } {
  let at = skip(SPACE, text, from)
  if (text[at] !== '-') return { gap: at > from || first ? 'space' : 'none', next: at }
  const spaceBefore = at > from || first
  while (text[at] === '-') at += 1
  const next = skip(SPACE, text, at)
  const spaceAfter = next > at
  if (spaceBefore && !spaceAfter && /[\d.]/.test(text[next] ?? '')) return { gap: 'minus', next }
  return { gap: spaceBefore || spaceAfter ? 'dash' : 'hyphen', next }
}

function skip(pattern: RegExp, text: string, at: number): number {
  return at + (match(pattern, text, at)?.length ?? 0)
}

function match(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at
  return pattern.exec(text)?.[0]
}

function tokenAt(text: string, at: number, gap: Gap, before: Token | undefined): Token {
  const afterNumber = before?.kind === 'number' && gap === 'none'
  const character = text[at] as string
  if (!afterNumber) {
    const thread = threadAt(text, at, gap)
    if (thread) return thread
  }
  if (/[\d.]/.test(character)) {
    const number = numberAt(text, at, gap)
    if (number) return number
  }
  // "4.030x3.480": the x after a number stands by itself.
  if (character === 'x' && /[\d. ]/.test(text[at + 1] ?? '') && afterNumber) {
    return { kind: 'word', text: 'x', start: at, end: at + 1, gap }
  }
  const word = match(afterNumber ? LETTERS : LETTERS_AND_DIGITS, text, at)
  if (word) {
    const token = { kind: 'word' as const, text: word.replaceAll("'", ''), start: at, gap }
    return { ...token, end: at + word.length, ...(word.endsWith("'s") ? { owner: true } : {}) }
  }
  const sign = SIGNS[character]
  if (sign) return { kind: 'word', text: sign, start: at, end: at + 1, gap }
  if (text.startsWith("''", at)) return { kind: 'mark', text: '"', start: at, end: at + 2, gap }
  const point = String.fromCodePoint(text.codePointAt(at) as number)
  return { kind: 'mark', text: point, start: at, end: at + point.length, gap }
}

function threadAt(text: string, at: number, gap: Gap): Token | undefined {
  const character = text[at] as string
  const pattern = character === 'm' ? METRIC_THREAD : INCH_THREAD
  const written =
    character === 'm' || /[\d.]/.test(character) ? match(pattern, text, at) : undefined
  const thread = written === undefined ? undefined : readThread(canonical(written))
  if (!thread || written === undefined) return undefined
  return { kind: 'thread', text: printThread(thread), start: at, end: at + written.length, gap }
}

/** "M11 by 1.25", "m12-1.75" and "m12 1.75" are all M12x1.75. */
function canonical(written: string): string {
  const plain = written.replaceAll(',', '.')
  return plain.startsWith('m') ? plain.replace(/^(m ?[\d.]+)(?: by | ?- ?| )(?=\d)/, '$1x') : plain
}

function numberAt(text: string, at: number, gap: Gap): Token | undefined {
  const grouped = match(GROUPED, text, at)
  if (grouped) {
    const value = Number(grouped.replaceAll(',', ''))
    const once = grouped.split(',').length === 2 && !grouped.includes('.')
    const token = numberToken(grouped, value, at, gap)
    return once ? { ...token, otherValue: Number(grouped.replace(',', '.')) } : token
  }
  const comma = match(DECIMAL_COMMA, text, at)
  if (comma) return numberToken(comma, Number(comma.replace(',', '.')), at, gap)
  const digits = match(DIGITS, text, at)
  return digits === undefined ? undefined : numberToken(digits, Number(digits), at, gap)
}

function numberToken(written: string, value: number, at: number, gap: Gap): Token {
  const decimal = /[.,]\d{1,2}$|\./.test(written)
  return { kind: 'number', text: written, start: at, end: at + written.length, gap, value, decimal }
}
