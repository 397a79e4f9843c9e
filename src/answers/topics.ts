import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Findings } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import { longestAt } from './phrases.ts'
import type { Request } from './requests.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/**
 * What a "why" or "what is" asks about: a fact's key when its words are just that
 * fact's name, otherwise the words themselves for the glossary.
 */
export function topicOf(
  request: Request,
  tokens: readonly Token[],
  scopes: Scopes,
  lexicon: Lexicon,
): string | undefined {
  const { articles, endings, things } = lexicon.vocabulary.explainMiddle
  let from = request.to
  let to = from
  while (
    to < tokens.length &&
    scopes.sentence[to] === scopes.sentence[request.from] &&
    !isEnd(tokens[to] as Token) &&
    !asksMore(tokens, to)
  ) {
    to += 1
  }
  while (from < to && articles.includes(tokens[from]?.text ?? '')) from += 1
  while (
    to > from &&
    (endings.includes(tokens[to - 1]?.text ?? '') || tokens[to - 1]?.kind === 'mark')
  )
    to -= 1
  if (from >= to) return undefined
  if (request.intent === 'why') return factsIn(tokens, from, to, lexicon)[0]?.key
  const said = words(tokens, from, to)
  // "How do I measure the register" asks about its height after all.
  const measures = tokens
    .slice(request.from, from)
    .some(({ text }) => lexicon.words.asking.why.has(text) || MEASURES.has(text))
  if (things.includes(said) && !measures) return said
  const named = factNamed(tokens, from, to, lexicon)
  return named && !isWork(named, tokens, from, to, lexicon) ? named : said
}

const MEASURES = new Set('measure check find'.split(' '))

/** "… and do I need one?" */
function asksMore(tokens: readonly Token[], at: number): boolean {
  return tokens[at]?.text === 'and' && MORE.has(tokens[at + 1]?.text ?? '')
}

const MORE = new Set(['do', 'does', 'should', 'can', 'how', 'why', 'would', 'what', 'when', 'will'])

function isEnd({ kind, text }: Token): boolean {
  return kind === 'mark' && ['?', '!', '.', '\n', ';', ','].includes(text)
}

function factNamed(
  tokens: readonly Token[],
  from: number,
  to: number,
  lexicon: Lexicon,
): FactKey | undefined {
  const match = longestAt(lexicon.names, tokens, from)
  return match?.to === to ? match.meanings[0] : undefined
}

/** "What is a line hone": the work, not its price. */
function isWork(
  key: FactKey,
  tokens: readonly Token[],
  from: number,
  to: number,
  { vocabulary }: Lexicon,
): boolean {
  const { moneyWords } = vocabulary.units
  const priced = tokens.slice(from, to).some(({ text }) => moneyWords.includes(text))
  return (
    fact(key).kind === 'money' && fact(key).topic === 'money' && key.endsWith('Price') && !priced
  )
}

function words(tokens: readonly Token[], from: number, to: number): string {
  let text = ''
  for (let at = from; at < to; at += 1) {
    const token = tokens[at] as Token
    const joiner = at === from || token.gap === 'none' ? '' : token.gap === 'hyphen' ? '-' : ' '
    text += joiner + token.text
  }
  return text.slice(0, 60)
}

/** The facts that a stretch of the message names, whether or not with a figure. */
export function factsIn(
  tokens: readonly Token[],
  from: number,
  to: number,
  lexicon: Lexicon,
): { key: FactKey; from: number; to: number }[] {
  const found: { key: FactKey; from: number; to: number }[] = []
  for (let at = from; at < to; at += 1) {
    const match = longestAt(lexicon.names, tokens, at)
    const key = match && match.to <= to ? match.meanings[0] : undefined
    if (!match || !key) continue
    found.push({ key, from: at, to: match.to })
    at = match.to - 1
  }
  return found
}

/** "What is a stud?": the words that are asked about need no saying that they were not taken. */
export function leaveAsked(
  { from }: Request,
  tokens: readonly Token[],
  scopes: Scopes,
  { doubts }: Findings,
): void {
  const left = doubts.filter(
    (doubt) =>
      doubt.from < from ||
      scopes.sentence[doubt.from] !== scopes.sentence[from] ||
      tokens.slice(doubt.from, doubt.to).some(({ kind }) => kind !== 'word'),
  )
  doubts.splice(0, doubts.length, ...left)
}
