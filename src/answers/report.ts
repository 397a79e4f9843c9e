import type { Answer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { printNumber } from '../../shared/print.ts'
import type { Conclusion } from './conclude.ts'
import type { Doubt } from './findings.ts'
import { LONGEST_MESSAGE, originalSpan, type PlainText } from './normalise-text.ts'
import type { Token } from './tokens.ts'
import type { Understanding } from './understanding.ts'

interface Message {
  readonly text: string
  readonly plain: PlainText
  readonly tokens: readonly Token[]
}

/** Tokens to places in the original text; nothing with a number is left unsaid. */
export function report(
  message: Message,
  { readings, intent, topic, atMost }: Conclusion,
  doubts: readonly Doubt[],
): Understanding {
  const facts: { [key in FactKey]?: Answer } = {}
  const spans = readings.map(({ key, answer, from, to }) => {
    facts[key] = answer
    return { key, ...placeOf(message, from, to) }
  })
  const unused = unusedNumbers(message.tokens, [...readings, ...doubts])
  const unclear = inOrder([...doubts, ...unused]).map(({ from, to, why }) => {
    const { start, end } = placeOf(message, from, to)
    return { text: message.text.slice(start, end), why }
  })
  if (message.plain.cut) unclear.push({ text: '…', why: TOO_LONG })
  return {
    facts,
    spans,
    intent,
    ...(topic ? { topic } : {}),
    ...(atMost ? { atMost } : {}),
    unclear,
  }
}

const TOO_LONG = `the message is longer than ${printNumber(LONGEST_MESSAGE, 0)} characters; the rest was not read`

function placeOf({ plain, tokens }: Message, from: number, to: number) {
  return originalSpan(plain, tokens[from]?.start ?? 0, tokens[to - 1]?.end ?? 0)
}

/** Numbers that no reading and no doubt speaks of, next to one another taken together. */
function unusedNumbers(
  tokens: readonly Token[],
  spoken: readonly { readonly from: number; readonly to: number }[],
): Doubt[] {
  const covered = new Uint8Array(tokens.length)
  for (const { from, to } of spoken) covered.fill(1, from, to)
  const unused: Doubt[] = []
  for (let from = 0; from < tokens.length; from += 1) {
    if (tokens[from]?.kind !== 'number' || covered[from]) continue
    let to = from + 1
    while (
      to < tokens.length &&
      tokens[to]?.gap !== 'space' &&
      !covered[to] &&
      isPart(tokens[to])
    ) {
      to += 1
    }
    unused.push({ from, to, why: 'not used: no fact is read from it' })
    from = to - 1
  }
  return unused
}

function isPart(token: Token | undefined): boolean {
  return token !== undefined && (token.kind !== 'mark' || token.text === '/' || token.text === '"')
}

/** By place, each place once. */
function inOrder(doubts: readonly Doubt[]): Doubt[] {
  const told = new Set<string>()
  return doubts
    .filter(({ from, to }) => {
      const place = `${from}-${to}`
      const first = !told.has(place)
      told.add(place)
      return first
    })
    .sort((a, b) => a.from - b.from || a.to - b.to)
}
