import { printThread, readThread } from '../../shared/thread.ts'
import { look } from './number-words.ts'
import type { Token } from './tokens.ts'
import type { NumberVocabulary } from './vocabulary.ts'

/** The pitches that a size is made in; others after a bare size are no thread. */
const MADE: Readonly<Record<number, readonly number[]>> = {
  4: [20],
  5: [18, 24],
  6: [16, 24],
  7: [14, 20],
  8: [13, 20],
  9: [12, 18],
  10: [11, 18],
}

/** "Half inch thirteen", "seven sixteenths fourteen", "1/2 13", "half-inch by 20": threads as they are spoken. */
export function joinThreads(
  tokens: readonly Token[],
  words: NumberVocabulary,
  asked = false,
): Token[] {
  const joined: Token[] = []
  for (let at = 0; at < tokens.length; ) {
    const thread = threadAt(tokens, at, words, asked && at === 0)
    if (thread) joined.push(thread.token)
    else joined.push(tokens[at] as Token)
    at = thread ? thread.next : at + 1
  }
  return joined
}

/** Between a size and its pitch. */
const JOINING = new Set(['by', 'x', ',', 'and', 'with'])

function threadAt(
  tokens: readonly Token[],
  from: number,
  words: NumberVocabulary,
  asked: boolean,
): { token: Token; next: number } | undefined {
  const text = (at: number): string => tokens[at]?.text ?? ''
  const metric = metricAt(tokens, from, words, asked)
  if (metric) return metric
  const size = sizeAt(tokens, from, words)
  if (!size) return undefined
  let at = size.next
  if (['inch', 'in', '"'].includes(text(at))) at += 1
  // "Half inch coarse thread, 13 pitch".
  const most = at + 3
  while (at < most && joins(text(at), words)) at += 1
  const pitch = pitchAt(tokens, at, MADE[size.sixteenths] ?? [], words)
  if (!pitch) return undefined
  const parted = [',', 'and', 'with'].includes(text(at - 1))
  if (parted && !words.threads.includes(text(pitch.next))) return undefined
  // "Half inch, 13 of them" and "1/2 20 years old" count something else.
  if (tokens[at]?.gap === 'dash' || words.notThreads.includes(text(pitch.next))) return undefined
  const read = readThread(`${size.sixteenths}/16-${pitch.perInch}`)
  const [first, last] = [tokens[from] as Token, tokens[pitch.next - 1] as Token]
  if (!read) return undefined
  return {
    token: {
      kind: 'thread',
      text: printThread(read),
      start: first.start,
      end: last.end,
      gap: first.gap,
    },
    next: pitch.next,
  }
}

function joins(word: string, { threadKinds }: NumberVocabulary): boolean {
  return JOINING.has(word) || word === 'thread' || threadKinds.includes(word)
}

/** Pitches of metric fasteners, in millimetres. */
const METRIC_PITCHES = new Set([0.75, 1, 1.25, 1.5, 1.75, 2])

/** "12 by 1.75 metric bolts": a metric thread without its M, which a whole answer needs not name. */
function metricAt(
  tokens: readonly Token[],
  from: number,
  { threadKinds, threaded, beforeThreaded }: NumberVocabulary,
  asked: boolean,
): { token: Token; next: number } | undefined {
  const [size, joiner, pitch] = [tokens[from], tokens[from + 1], tokens[from + 2]]
  if (!size || !pitch || !['by', 'x'].includes(joiner?.text ?? '')) return undefined
  const { value = 0, decimal } = size
  if (decimal || value < 6 || value > 18 || !METRIC_PITCHES.has(pitch.value ?? 0)) return undefined
  let at = from + 3
  const kind = (word: string): boolean =>
    beforeThreaded.includes(word) || threadKinds.includes(word)
  while (at < from + 5 && kind(tokens[at]?.text ?? '')) at += 1
  const named = asked ? at === tokens.length : threaded.includes(tokens[at]?.text ?? '')
  const read = named && readThread(`M${value}x${pitch.value}`)
  if (!read) return undefined
  const { start, gap } = size
  const token = { kind: 'thread' as const, text: printThread(read), start, end: pitch.end, gap }
  return { token, next: from + 3 }
}

function sizeAt(
  tokens: readonly Token[],
  at: number,
  { threadSizes }: NumberVocabulary,
): { sixteenths: number; next: number } | undefined {
  const [first, second, third] = [tokens[at], tokens[at + 1], tokens[at + 2]]
  if (first?.kind === 'number' && second?.text === '/' && third?.kind === 'number') {
    const sixteenths = (16 * (first.value ?? 0)) / (third.value ?? 1)
    return Number.isInteger(sixteenths) ? { sixteenths, next: at + 3 } : undefined
  }
  const two = look(threadSizes, `${first?.text} ${second?.text}`)
  if (two !== undefined) return { sixteenths: two, next: at + 2 }
  const single = look(threadSizes, first?.text)
  return single === undefined ? undefined : { sixteenths: single, next: at + 1 }
}

/** The threads to the inch that stand here, in digits or in words, if the size is made with them. */
function pitchAt(
  tokens: readonly Token[],
  at: number,
  made: readonly number[],
  { ones, teens, tens }: NumberVocabulary,
): { perInch: number; next: number } | undefined {
  const [first, second] = [tokens[at], tokens[at + 1]]
  const whole = first?.kind === 'number' && !first.decimal ? first.value : undefined
  const ten = look(tens, first?.text)
  const single = whole ?? ten ?? look(teens, first?.text)
  if (single === undefined) return undefined
  const both = ten === undefined ? undefined : ten + (look(ones, second?.text) ?? 0)
  if (both !== undefined && both > single && made.includes(both))
    return { perInch: both, next: at + 2 }
  return made.includes(single) ? { perInch: single, next: at + 1 } : undefined
}
