import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { type Candidate, candidateFor, type MoneyContext } from './candidates.ts'
import type { Figure } from './figures.ts'
import type { FigureMeaning, Lexicon } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/** A figure with the words that say what it is. */
export interface Pair {
  readonly figure: Figure
  readonly mention: Mention<FigureMeaning>
  readonly use:
    | {
        readonly kind: 'fact'
        readonly key: FactKey
        readonly candidate: Candidate
        readonly weak: boolean
      }
    | { readonly kind: 'noise'; readonly what: string }
    | { readonly kind: 'octane' }
}

export interface PairingInput {
  readonly tokens: readonly Token[]
  readonly scopes: Scopes
  readonly lexicon: Lexicon
  readonly money: MoneyContext
}

type Item =
  | { readonly kind: 'figure'; readonly from: number; readonly to: number; readonly figure: Figure }
  | {
      readonly kind: 'mention'
      readonly from: number
      readonly to: number
      readonly mention: Mention<FigureMeaning>
    }

/** How many items a pair may reach over. */
const REACH = 4
/** A pair must be worth this much, or the words are too far from the figure. */
const LEAST = 3

/**
 * Give each figure the words that name it: the set of pairs of neighbours, in
 * order and never crossing, that together fit best. Linear in the message.
 */
export function pairFigures(
  figures: readonly Figure[],
  mentions: readonly Mention<FigureMeaning>[],
  input: PairingInput,
): Pair[] {
  const items: Item[] = [
    ...figures.map((figure) => ({
      kind: 'figure' as const,
      from: figure.from,
      to: figure.to,
      figure,
    })),
    ...mentions.map((mention) => ({
      kind: 'mention' as const,
      from: mention.from,
      to: mention.to,
      mention,
    })),
  ].sort((a, b) => a.from - b.from)
  return bestPairs(items, input)
}

interface Best {
  readonly score: number
  readonly pair?: Pair
  readonly before: number
}

function bestPairs(items: readonly Item[], input: PairingInput): Pair[] {
  const best: Best[] = [{ score: 0, before: 0 }]
  for (let i = 0; i < items.length; i += 1) {
    let top: Best = { score: (best[i] as Best).score, before: i }
    for (let j = i - 1; j >= 0 && j >= i - REACH; j -= 1) {
      const found = pairOf(items, j, i, input)
      if (!found) continue
      const score = (best[j] as Best).score + found.score
      if (score > top.score) top = { score, pair: found.pair, before: j }
    }
    best.push(top)
  }
  const pairs: Pair[] = []
  for (let at = items.length; at > 0; ) {
    const { pair, before } = best[at] as Best
    if (pair) pairs.push(pair)
    at = before
  }
  return pairs.reverse()
}

function pairOf(
  items: readonly Item[],
  j: number,
  i: number,
  input: PairingInput,
): { score: number; pair: Pair } | undefined {
  const [left, right] = [items[j] as Item, items[i] as Item]
  if (left.kind === right.kind || left.to > right.from) return undefined
  const figure = left.kind === 'figure' ? left.figure : (right as { figure: Figure }).figure
  const mention =
    left.kind === 'mention' ? left.mention : (right as { mention: Mention<FigureMeaning> }).mention
  const cost = distance(left, right, input) + between(items, j, i)
  if (cost > 12) return undefined
  const found = bestUse(figure, mention, input)
  if (found && isCount(left, right, found.use)) return undefined
  if (!found) return undefined
  const score = found.score - cost + order(left, right, input.tokens)
  return score < LEAST ? undefined : { score, pair: { figure, mention, use: found.use } }
}

/** Reaching over another figure is rare; over other words of the trade, a little less so. */
function between(items: readonly Item[], j: number, i: number): number {
  let cost = 0
  for (const item of items.slice(j + 1, i)) cost += item.kind === 'figure' ? 5 : 1.5
  return cost
}

const BREAKS: ReadonlyMap<string, number> = new Map([
  [',', 3.2],
  ['and', 1.6],
  ['/', 0.5],
  [':', 0],
  ['=', 0],
  ['(', 1],
  [')', 1],
  ['~', 0],
  ['x', 3],
  ['then', 2],
  ['with', 1],
  ['+', 1],
])

function distance(left: Item, right: Item, { tokens, scopes, lexicon }: PairingInput): number {
  if (scopes.sentence[left.from] !== scopes.sentence[right.from]) return 99
  let cost = 0
  for (let at = left.to; at < right.from; at += 1) {
    const { text } = tokens[at] as Token
    cost += BREAKS.get(text) ?? (lexicon.fillers.has(text) ? 0.2 : 1)
  }
  for (let at = left.to; at <= right.from; at += 1) {
    const figureRange = tokens[at]?.gap === 'dash'
    if (figureRange) cost += left.kind === 'mention' ? 0.6 : 2.5
  }
  return cost
}

/** "4.030 bore" and "bore: 4.030" are the plain ways to say it. */
function order(left: Item, right: Item, tokens: readonly Token[]): number {
  const link = tokens[left.to]?.text
  if (left.kind === 'figure') return left.to === right.from || link === 'of' ? 0.6 : 0
  return [':', '=', 'is', 'are', 'of', 'at', 'to', 'will', 'was'].includes(link ?? '') ? 0.9 : 0
}

interface Use {
  readonly score: number
  readonly use: Pair['use']
}

function bestUse(
  figure: Figure,
  mention: Mention<FigureMeaning>,
  input: PairingInput,
): Use | undefined {
  let best: Use | undefined
  for (const meaning of mention.meanings) {
    const use = useOf(figure, mention, meaning, input)
    if (use && (!best || use.score > best.score)) best = use
  }
  return best
}

function useOf(
  figure: Figure,
  mention: Mention<FigureMeaning>,
  meaning: FigureMeaning,
  input: PairingInput,
): Use | undefined {
  const { money } = input
  if (meaning.kind === 'octane') {
    const bare = !figure.unit && !figure.ratio && figure.value >= 80 && figure.value <= 125
    return bare ? { score: 11, use: { kind: 'octane' } } : undefined
  }
  if (meaning.kind === 'noise') {
    const score = meaning.fits.includes(sortOf(figure))
      ? figure.unit || figure.ratio
        ? 8.8
        : 8.6
      : 0
    return score ? { score, use: { kind: 'noise', what: meaning.what } } : undefined
  }
  const candidate = candidateFor(meaning.fact, figure, money)
  if (!candidate) return undefined
  if (meaning.needsUnit && !candidate.unitSaid && !isListedPrice(figure, meaning.fact, money)) {
    return undefined
  }
  const far = meaning.beside
    ? wordsSince(meaning.beside, Math.min(figure.from, mention.from), input)
    : 0
  if (far === undefined) return undefined
  if (meaning.notBeside && wordsSince(meaning.notBeside, mention.from, input) !== undefined) {
    return undefined
  }
  const fits = 'answer' in candidate
  const base = meaning.weak ? 6.5 : candidate.unitSaid ? 10 : 9
  const use = { kind: 'fact' as const, key: meaning.fact, candidate, weak: meaning.weak }
  return { score: (fits ? base : base - 4.5) - 0.1 * far, use }
}

/** How many words back in the sentence one of these stands, or undefined when none does. */
function wordsSince(
  words: ReadonlySet<string>,
  at: number,
  { tokens, scopes }: PairingInput,
): number | undefined {
  for (let back = at; back >= 0 && scopes.sentence[back] === scopes.sentence[at]; back -= 1) {
    if (words.has(tokens[back]?.text ?? '')) return at - back
  }
  return undefined
}

/** "Broke 3 rods", "a 4 stroke": a bare whole number before a part counts it. */
function isCount(left: Item, right: Item, use: Pair['use']): boolean {
  if (left.kind !== 'figure' || right.kind !== 'mention' || use.kind !== 'fact') return false
  const { unit, decimal, value } = left.figure
  return !unit && !decimal && value < 15 && fact(use.key).kind === 'length'
}

/** "Line bore 1100 dollars and caps 290": the second price leaves its unit out. */
function isListedPrice(
  { value, decimal, unit }: Figure,
  key: FactKey,
  money: MoneyContext,
): boolean {
  return money.said && !unit && !decimal && value >= 50 && fact(key).topic === 'money'
}

/** The sort of a figure, as the vocabulary's noise names it. */
export function sortOf({ unit, ratio, scaled }: Figure): string {
  if (ratio) return 'ratio'
  if (!unit) return scaled ? 'bare' : 'bare'
  if (unit.kind !== 'unit') return unit.kind
  return SORTS[unit.symbol] ?? 'bare'
}

const SORTS: Readonly<Record<string, string>> = {
  in: 'length',
  mm: 'length',
  'cu in': 'volume',
  L: 'volume',
  cc: 'volume',
  g: 'mass',
  kg: 'mass',
  lb: 'mass',
  oz: 'mass',
  'lb ft': 'torque',
  'N m': 'torque',
  psi: 'pressure',
  bar: 'pressure',
  kPa: 'pressure',
  MPa: 'pressure',
  hp: 'power',
  kW: 'power',
  rpm: 'speed',
  '%': 'percent',
}
