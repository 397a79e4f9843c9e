import type { FactKey } from '../../shared/fact-keys.ts'
import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import { longestAt, type PhraseTree } from './phrases.ts'
import type { Figure } from './plain-figure.ts'

/** How many words back what a price is of may have been named. */
const REACH = 16

/**
 * A price of the work or part last spoken of: "my shop can line bore, they want six
 * hundred dollars for it", "aftermarket caps. Cost me $320 for the set".
 *
 * @returns whether the figure was read
 */
export function readPriceOfLast(figure: Figure, parts: Parts, into: Findings): boolean {
  const key = keyOfLast(figure, parts)
  if (!key || into.readings.some((reading) => reading.key === key)) return false
  const { unit, ...bare } = figure
  const amount = unit ? figure : { ...bare, unit: { kind: 'money' as const, to: figure.to } }
  const found = candidateFor(key, amount, parts.input.money)
  if (!found || !('answer' in found)) return false
  into.readings.push({ key, answer: found.answer, from: figure.from, to: figure.to, strength: 2 })
  return true
}

/** The price that an amount would be by what was last spoken of, if any. */
export function keyOfLast(figure: Figure, parts: Parts): FactKey | undefined {
  const { tokens, lexicon, scopes } = parts
  if (!isAmount(figure, parts)) return undefined
  const sentence = scopes.sentence[figure.from] ?? 0
  let priced = false
  for (let at = figure.from - 1; at >= 0 && at >= figure.from - REACH; at -= 1) {
    const word = tokens[at]?.text ?? ''
    const there = scopes.sentence[at] ?? 0
    if (there < sentence - 1 || lexicon.words.prices.notPrice.has(word)) return undefined
    if (there === sentence && lexicon.words.prices.priced.has(word)) priced = true
    const key = pricedAt(lexicon.priced, at, parts)
    if (key) return key === 'other' || !priced ? undefined : key
  }
  return undefined
}

/** An amount of money, or a bare one right after "he charges". */
function isAmount(
  { unit, value, decimal, from, ratio }: Figure,
  { tokens, lexicon }: Parts,
): boolean {
  if (value < 20 || value > 5000 || ratio) return false
  if (unit) return unit.kind === 'money'
  const before = [tokens[from - 1]?.text ?? '', tokens[from - 2]?.text ?? '']
  return !decimal && value >= 50 && before.some((word) => lexicon.words.prices.charges.has(word))
}

/** What the word at a place may be priced as; another part ends the search. */
function pricedAt(
  priced: PhraseTree<FactKey>,
  at: number,
  { tokens, lexicon }: Parts,
): FactKey | 'other' | undefined {
  for (let from = Math.max(0, at - 2); from <= at; from += 1) {
    // "Head studs for 180 bucks".
    const part = longestAt(lexicon.choices, tokens, from)
    if (part && part.to > at && part.meanings.some(({ kind }) => kind === 'shadow')) return 'other'
  }
  for (let from = Math.max(0, at - 3); from <= at; from += 1) {
    const found = longestAt(priced, tokens, from)
    if (found && found.to === at + 1) return found.meanings[0]
  }
  const choice = longestAt(lexicon.choices, tokens, at)
  const other = choice?.meanings.some(
    (m) =>
      m.kind === 'shadow' || (m.kind === 'noun' && ['other', 'bearings', 'block'].includes(m.noun)),
  )
  return other ? 'other' : undefined
}

/** Whether a fact is the price of work, which is always told by the shop. */
export function isPriceOfWork(key: FactKey): boolean {
  return key === 'lineBorePrice' || key === 'lineHonePrice'
}
