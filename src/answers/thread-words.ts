import { printThread, readThread } from '../../shared/thread.ts'
import type { Token } from './tokens.ts'

/** Sixteenths of an inch, by the words for them. */
const SIZES: ReadonlyMap<string, number> = new Map([
  ['quarter', 4],
  ['five sixteenths', 5],
  ['three eighths', 6],
  ['three eighth', 6],
  ['seven sixteenths', 7],
  ['seven sixteenth', 7],
  ['half', 8],
  ['nine sixteenths', 9],
  ['nine sixteenth', 9],
  ['five eighths', 10],
])

/** Threads to the inch, by the words for them. */
const PITCHES: ReadonlyMap<string, number> = new Map([
  ['eleven', 11],
  ['twelve', 12],
  ['thirteen', 13],
  ['fourteen', 14],
  ['sixteen', 16],
  ['eighteen', 18],
  ['twenty', 20],
  ['twenty four', 24],
])

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
export function joinThreads(tokens: readonly Token[]): Token[] {
  const joined: Token[] = []
  for (let at = 0; at < tokens.length; ) {
    const thread = threadAt(tokens, at)
    if (thread) joined.push(thread.token)
    else joined.push(tokens[at] as Token)
    at = thread ? thread.next : at + 1
  }
  return joined
}

function threadAt(
  tokens: readonly Token[],
  from: number,
): { token: Token; next: number } | undefined {
  const size = sizeAt(tokens, from)
  if (!size) return undefined
  let at = size.next
  if (['inch', 'in', '"'].includes(tokens[at]?.text ?? '')) at += 1
  if (['by', 'x', 'coarse', 'fine', ',', 'and', 'with'].includes(tokens[at]?.text ?? '')) at += 1
  const pitch = pitchAt(tokens, at)
  if (!pitch || !MADE[size.sixteenths]?.includes(pitch.perInch)) return undefined
  const parted = [',', 'and', 'with'].includes(tokens[at - 1]?.text ?? '')
  if (parted && !/^(?:threads?|tpi)$/.test(tokens[pitch.next]?.text ?? '')) return undefined
  // "Half inch, 13 of them" and "1/2 20 years old" count something else.
  if (
    tokens[at]?.gap === 'dash' ||
    /^(?:years?|of|psi|mm|lbs?|hp)$/.test(tokens[pitch.next]?.text ?? '')
  )
    return undefined
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

function sizeAt(
  tokens: readonly Token[],
  at: number,
): { sixteenths: number; next: number } | undefined {
  const [first, second, third] = [tokens[at], tokens[at + 1], tokens[at + 2]]
  if (first?.kind === 'number' && second?.text === '/' && third?.kind === 'number') {
    const sixteenths = (16 * (first.value ?? 0)) / (third.value ?? 1)
    return Number.isInteger(sixteenths) ? { sixteenths, next: at + 3 } : undefined
  }
  const two = SIZES.get(`${first?.text} ${second?.text}`)
  if (two !== undefined) return { sixteenths: two, next: at + 2 }
  const single = SIZES.get(first?.text ?? '')
  return single === undefined ? undefined : { sixteenths: single, next: at + 1 }
}

function pitchAt(
  tokens: readonly Token[],
  at: number,
): { perInch: number; next: number } | undefined {
  const [first, second] = [tokens[at], tokens[at + 1]]
  if (first?.kind === 'number' && !first.decimal && first.value !== undefined)
    return { perInch: first.value, next: at + 1 }
  const two = PITCHES.get(`${first?.text} ${second?.text}`)
  if (two !== undefined) return { perInch: two, next: at + 2 }
  const single = PITCHES.get(first?.text ?? '')
  return single === undefined ? undefined : { perInch: single, next: at + 1 }
}
