import type { Lexicon, Marker } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/** What a message denies. */
export interface Negations {
  /** Whether a phrase or figure is denied: "no girdle", "not 10.5", "intercooler: no". */
  denies(stretch: { readonly from: number; readonly to: number }): boolean
}

/** Furthest that a denial reaches, in words. */
const REACH = 5
const STOPS = new Set([
  ',',
  '.',
  ':',
  ';',
  '!',
  '?',
  '\n',
  'but',
  'just',
  'only',
  'its',
  'and',
  '(',
  ')',
  'with',
  'instead',
  'im',
  'i',
  'is',
  'so',
  'run',
  'running',
  'on',
  'em',
  'from',
  'they',
  'he',
  'she',
  'we',
  'theres',
])
const CHAINS = new Set(['or', 'nor', '/'])

/**
 * @param content - phrases and figures of the message in order: a denial reaches the
 * next one, and through "or" and "nor" those after it
 */
export function negationsOf(
  tokens: readonly Token[],
  scopes: Scopes,
  content: readonly { readonly from: number; readonly to: number }[],
  { words }: Lexicon,
): Negations {
  const denied = new Set<number>()
  const ordered = [...content].sort((a, b) => a.from - b.from || b.to - a.to)
  for (const marker of scopes.markers) {
    if (isNegation(marker)) denyFrom(marker.to, ordered, tokens, words.figures.limits, denied)
    if (marker.meanings.includes('deniedAfter') && isEnd(tokens[marker.to]))
      denyBefore(marker.from, ordered, tokens, denied)
  }
  // "No turbo or blower or nitrous": the first is a phrase that denies by itself.
  for (const { from, to } of ordered)
    if (NOES.has(tokens[from]?.text ?? '') && CHAINS.has(tokens[to]?.text ?? ''))
      denyFrom(to + 1, ordered, tokens, words.figures.limits, denied)
  for (const stretch of ordered)
    if (saidNo(stretch.to, tokens, words.asking.no)) denied.add(stretch.from)
  return {
    denies: ({ from, to }) => {
      for (let at = from; at < to; at += 1) if (denied.has(at)) return true
      return false
    },
  }
}

function isNegation({ meanings }: Mention<Marker>): boolean {
  return meanings.includes('negation')
}

function denyFrom(
  start: number,
  content: readonly { readonly from: number; readonly to: number }[],
  tokens: readonly Token[],
  limits: ReadonlySet<string>,
  denied: Set<number>,
): void {
  let at = start
  let reach = REACH
  for (;;) {
    const next = content.find(({ from }) => from >= at)
    if (!next || next.from - at > reach) return
    for (let i = at; i < next.from; i += 1) {
      const text = tokens[i]?.text ?? ''
      if (STOPS.has(text) || limits.has(text) || tokens[i + 1]?.gap === 'dash') return
    }
    denied.add(next.from)
    const after = tokens[next.to]
    if (!after || !CHAINS.has(after.text)) return
    at = next.to + 1
    reach = 2
  }
}

/** "The intercooler, there is none": the last that was named shortly before. */
function denyBefore(
  end: number,
  content: readonly { readonly from: number; readonly to: number }[],
  tokens: readonly Token[],
  denied: Set<number>,
): void {
  const last = content.filter(({ to }) => to <= end && end - to <= REACH).at(-1)
  // "No power adder, never had one" says it twice.
  if (last && !NOES.has(tokens[last.from]?.text ?? '')) denied.add(last.from)
}

const NOES = new Set(['no', 'not', 'without'])

/** "intercooler: no", "girdle? nope", "turbo - none". */
function saidNo(at: number, tokens: readonly Token[], noes: ReadonlySet<string>): boolean {
  const [link, word, after] = [tokens[at], tokens[at + 1], tokens[at + 2]]
  // "Studs I don't have".
  if (link?.text === 'i' && ['dont', 'havent'].includes(word?.text ?? '')) {
    return ['have', 'got', 'use', 'run'].includes(after?.text ?? '') && isEnd(tokens[at + 3])
  }
  if (link?.gap === 'dash' && (link.text === 'no' || link.text === 'none')) return isEnd(word)
  if (link?.kind !== 'mark' || ![':', '?', '='].includes(link.text)) return false
  return (noes.has(word?.text ?? '') || word?.text === 'none') && isEnd(after)
}

function isEnd(token: Token | undefined): boolean {
  return token === undefined || token.kind === 'mark' || token.gap === 'dash'
}
