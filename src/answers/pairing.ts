import { fact } from '../../shared/fact-keys.ts'
import { bestUse, type FigureUse, type PairingInput } from './figure-use.ts'
import type { FigureMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Figure } from './plain-figure.ts'
import type { Token } from './tokens.ts'

/** A figure with the words that say what it is. */
export interface Pair {
  readonly figure: Figure
  readonly mention: Mention<FigureMeaning>
  readonly use: FigureUse
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
  const cost = distance(left, right, input) + between(items, j, i, figure, input)
  if (cost > 12) return undefined
  // "No spray, 11.5": what is denied has no figure in the next item.
  const apart = hasComma(left.to, right.from, input) || left.kind === 'figure'
  if (input.negations.denies(mention) && apart) return undefined
  const found = bestUse(figure, mention, input)
  // "I got fifteen hundred bucks, caps got mixed up": no price of the caps.
  const price = found?.use.kind === 'fact' && found.use.key.endsWith('Price')
  if (price && left.kind === 'figure' && hasComma(left.to, right.from, input)) return undefined
  if (found && isCount(left, right, found.use)) return undefined
  // "With the new spring it is 1.5 bar".
  if (
    found?.use.kind === 'noise' &&
    left.kind === 'mention' &&
    isSaidOfIt(left.to, right.from, input)
  )
    return undefined
  if (!found) return undefined
  // A comma parts a figure from what it has nothing to do with.
  const parted =
    found.use.kind === 'noise' && left.kind === 'mention' && hasComma(left.to, right.from, input)
  const score = found.score - cost - (parted ? 2.5 : 0) + order(left, right, input.tokens)
  return score < LEAST ? undefined : { score, pair: { figure, mention, use: found.use } }
}

function isSaidOfIt(from: number, to: number, { tokens }: PairingInput): boolean {
  const [last, verb] = [tokens[to - 1]?.text ?? '', tokens[to - 2]?.text ?? '']
  return (
    to - from <= 3 && (last === 'its' || (verb === 'it' && ['is', 'makes', 'runs'].includes(last)))
  )
}

function hasComma(from: number, to: number, { tokens }: PairingInput): boolean {
  for (let at = from; at < to; at += 1) if (tokens[at]?.text === ',') return true
  return false
}

/** Reaching over another figure is rare; over other words that the figure fits, a little less so. */
function between(
  items: readonly Item[],
  j: number,
  i: number,
  figure: Figure,
  input: PairingInput,
): number {
  let cost = 0
  for (const item of items.slice(j + 1, i)) {
    if (item.kind === 'figure') cost += 5
    else if (bestUse(figure, item.mention, input)) cost += 1.5
  }
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
  ['once', 3],
  ['when', 2.5],
  ['after', 2],
  ['until', 3],
  ['because', 4],
  ['but', 4],
  ['though', 4],
  ['while', 4],
  ['with', 1],
  ['+', 1],
])

/** "4.060, not 4.030, for the bore": past what is denied in between. */
function afterDenied(at: number, { tokens, negations }: PairingInput): number | undefined {
  const denies = tokens[at]?.text === ',' && tokens[at + 1]?.text === 'not'
  if (!denies || !negations.denies({ from: at + 2, to: at + 3 })) return undefined
  for (let end = at + 3; end < at + 6; end += 1) if (tokens[end]?.text === ',') return end + 1
  return undefined
}

function distance(left: Item, right: Item, input: PairingInput): number {
  const { tokens, scopes, lexicon } = input
  if (scopes.sentence[left.from] !== scopes.sentence[right.from]) return 99
  let cost = 0
  for (let at = left.to; at < right.from; at += 1) {
    const { text } = tokens[at] as Token
    const past = afterDenied(at, input)
    if (past !== undefined && past <= right.from) {
      at = past - 1
      continue
    }
    // "30 psi in nothing but the paddle tyres".
    const only =
      text === 'but' && ['nothing', 'all', 'anything'].includes(tokens[at - 1]?.text ?? '')
    cost += (only ? undefined : BREAKS.get(text)) ?? wordCost(text, lexicon)
  }
  for (let at = left.to; at <= right.from; at += 1) {
    const figureRange = tokens[at]?.gap === 'dash'
    if (figureRange) cost += left.kind === 'mention' ? 0.6 : 2.5
  }
  return cost
}

/** A word that the vocabulary does not know may well be what the figure is of. */
function wordCost(text: string, { fillers, speller }: PairingInput['lexicon']): number {
  return fillers.has(text) ? 0.2 : speller.known.has(text) || !/^\p{L}/u.test(text) ? 1 : 2.5
}

/** "4.030 bore" and "bore: 4.030" are the plain ways to say it. */
function order(left: Item, right: Item, tokens: readonly Token[]): number {
  const link = tokens[left.to]?.text
  if (left.kind === 'figure') return left.to === right.from ? 1.2 : link === 'of' ? 0.6 : 0
  // "Bore 4.030 stroke 3.480": a name that opens its item has its figure after it.
  const opens = (tokens[left.from - 1]?.kind ?? 'mark') === 'mark'
  if (opens && left.to === right.from) return 1.4
  return [':', '=', 'is', 'are', 'of', 'at', 'to', 'will', 'was'].includes(link ?? '') ? 0.9 : 0
}

/** "Broke 3 rods", "a 4 stroke": a bare whole number before a part counts it. */
function isCount(left: Item, right: Item, use: FigureUse): boolean {
  if (left.kind !== 'figure' || right.kind !== 'mention' || use.kind !== 'fact') return false
  const { unit, decimal, value } = left.figure
  return !unit && !decimal && value < 15 && fact(use.key).kind === 'length'
}
