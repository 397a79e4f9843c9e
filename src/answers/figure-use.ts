import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { isBeside, wordsSince } from './beside.ts'
import { type Candidate, candidateFor, type MoneyContext } from './candidates.ts'
import type { FigureMeaning, Lexicon } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Negations } from './negation.ts'
import { roundAway } from './numbers.ts'
import type { Figure } from './plain-figure.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/** What a figure is, with the words that say so. */
export type FigureUse =
  | {
      readonly kind: 'fact'
      readonly key: FactKey
      readonly candidate: Candidate
      readonly weak: boolean
    }
  | { readonly kind: 'noise'; readonly what: string; readonly unit: boolean }
  | { readonly kind: 'octane' }

export interface PairingInput {
  readonly tokens: readonly Token[]
  readonly scopes: Scopes
  readonly lexicon: Lexicon
  readonly negations: Negations
  readonly money: MoneyContext
}

/** A use, and how well it fits. */
export interface ScoredUse {
  readonly score: number
  readonly use: FigureUse
}

/** The best of what a phrase may make of a figure. */
export function bestUse(
  figure: Figure,
  mention: Mention<FigureMeaning>,
  input: PairingInput,
): ScoredUse | undefined {
  let best: ScoredUse | undefined
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
): ScoredUse | undefined {
  const { money } = input
  if (meaning.kind === 'octane') {
    const bare = !figure.unit && !figure.ratio && figure.value >= 80 && figure.value <= 125
    return bare ? { score: 11, use: { kind: 'octane' } } : undefined
  }
  if (meaning.kind === 'noise') {
    const plain = !figure.unit && !figure.ratio
    if (!meaning.fits.includes(sortOf(figure)) || (plain && figure.value > meaning.most))
      return undefined
    // "2.4485, all of them" counts nothing.
    if (meaning.counted && (mention.from < figure.to || figure.decimal)) return undefined
    const own = meaning.unit && mention.from === figure.to
    return {
      score: own ? 12 : plain ? 8.6 : 8.8,
      use: { kind: 'noise', what: meaning.what, unit: meaning.unit },
    }
  }
  if (meaning.before && mention.from !== figure.to && !isLinkedTo(mention.to, figure, input))
    return undefined
  const wrenched = ofMains(figure, meaning.fact) && isOfTorques(figure.from, input)
  // "Head bolts at 70 ft lb. Mains at 95."
  const key = wrenched ? 'fastenerTorque' : meaning.fact
  const candidate = ofMains(figure, key) ?? candidateFor(key, inThousands(figure, meaning), money)
  if (!candidate) return undefined
  const implied =
    isJournal(figure, key) ||
    isListedPrice(figure, key, money) ||
    isStake(figure, key, mention, input) ||
    wrenched ||
    isWrenched(figure, key, mention, input)
  if (meaning.needsUnit && !candidate.unitSaid && !implied) return undefined
  // "Nitrous 427": shots come in steps, engines do not.
  const size = key === 'nitrousPower' && !figure.unit && figure.value >= 230
  if (size && figure.value % 25 !== 0) return undefined
  // "7k tops", "8500 limit": as far as it revs rather than what may be spent.
  const limit = tokensOf(mention, input).some((word) =>
    input.lexicon.words.figures.revLimits.has(word),
  )
  const revs = key === 'budget' && (meaning.weak || limit) && figure.unit?.kind !== 'money'
  if (revs && figure.value >= 4000) return undefined
  const far = meaning.beside
    ? wordsSince(meaning.beside, Math.min(figure.from, mention.from), input)
    : 0
  if (far === undefined) return undefined
  if (meaning.notBeside && isBeside(meaning.notBeside, mention.from, input)) return undefined
  if (isForeign(mention, figure, key, input) || isOfRods(mention, key, input)) return undefined
  const fits = 'answer' in candidate
  // "Factory caps - $5,200 in it": the words right after an amount say what it is.
  const own = key === 'invested' && mention.from === figure.to && candidate.unitSaid
  const base = own ? 10 : meaning.weak ? 6.5 : candidate.unitSaid ? 10 : 9
  const use = { kind: 'fact' as const, key, candidate, weak: meaning.weak }
  return { score: (fits ? base : base - 4.5) - 0.1 * far, use }
}

function tokensOf({ from, to }: Mention<FigureMeaning>, { tokens }: PairingInput): string[] {
  return tokens.slice(from, to).map(({ text }) => text)
}

/** "Revs to 6.8": thousands, beside words that name how far an engine revs. */
function inThousands(figure: Figure, meaning: FigureMeaning): Figure {
  const { value, decimal, unit, scaled, low } = figure
  if (meaning.kind !== 'cue' || meaning.fact !== 'peakRpm' || meaning.weak) return figure
  const tenths = Math.abs(value * 10 - Math.round(value * 10)) < 1e-6
  const short = decimal && tenths && !unit && !scaled && low === undefined
  if (!short || value < 3.5 || value >= 10) return figure
  return { ...figure, value: roundAway(value * 1000), scaled: true }
}

/** "Mains at 95" may be of the journals or of the wrench. */
function ofMains({ value, decimal, unit, ratio }: Figure, key: FactKey): Candidate | undefined {
  if (key !== 'mainJournalDiameter' || unit || decimal || ratio || value < 30) return undefined
  return { why: 'a size in mm, or a torque? say which', unitSaid: false }
}

/** "2.448 mains": decimals of that size are of the journals. */
function isJournal({ value, decimal, unit }: Figure, key: FactKey): boolean {
  return key === 'mainJournalDiameter' && !unit && decimal && value >= 1.5 && value <= 3.6
}

/** "Crank is a 3.75", "crank: 3.75". */
function isLinkedTo(to: number, { from }: Figure, { tokens }: PairingInput): boolean {
  const between = tokens.slice(to, from).map(({ text }) => text)
  return between.length > 0 && between.every((word) => ['is', 'a', ':', '='].includes(word))
}

/** Facts whose one-word names other parts share: "spark plug torque", "big end bore". */
const SHARED = new Set<FactKey>(['bore', 'stroke', 'fastenerTorque', 'mainJournalDiameter'])

/** Whether an unknown word qualifies a shared name: "plug torque is 18", "bore taper is .002". */
function isForeign(
  { from, to }: Mention<FigureMeaning>,
  figure: Figure,
  key: FactKey,
  { tokens, lexicon }: PairingInput,
): boolean {
  if (to !== from + 1 || !SHARED.has(key)) return false
  const qualifies = (word: Token | undefined, next: Token | undefined): boolean =>
    word?.kind === 'word' &&
    (next?.gap === 'space' || next?.gap === 'hyphen') &&
    !lexicon.speller.known.has(word.text) &&
    !lexicon.fillers.has(word.text)
  if (qualifies(tokens[from - 1], tokens[from])) return true
  return to < figure.from && qualifies(tokens[to], tokens[to])
}

/** "Rods 6.200, 2.100 journal": a journal by itself where rods were named before it. */
function isOfRods(
  { from, to }: Mention<FigureMeaning>,
  key: FactKey,
  { tokens, scopes, lexicon }: PairingInput,
): boolean {
  if (key !== 'mainJournalDiameter' || to !== from + 1) return false
  const { rods, mains } = lexicon.words.parts
  const before = tokens
    .slice(0, to)
    .filter((_, at) => scopes.sentence[at] === scopes.sentence[from])
    .map(({ text }) => text)
  return before.some((word) => rods.has(word)) && !before.some((word) => mains.has(word))
}

/** "Line bore 1100 dollars and caps 290": the second price leaves its unit out. */
function isListedPrice(
  { value, decimal, unit }: Figure,
  key: FactKey,
  money: MoneyContext,
): boolean {
  // "Main studs 89.95": cents make a price tag.
  const tag =
    !decimal || Math.round(value * 100) % 100 >= 95 || Math.round(value * 100) % 100 === 50
  return money.said && !unit && tag && value >= 50 && fact(key).topic === 'money'
}

/** "Got about 5500 in it": what somebody has in an engine is money. */
function isStake(
  { value, unit, decimal, from, to, ratio }: Figure,
  key: FactKey,
  mention: Mention<FigureMeaning>,
  { tokens, lexicon }: PairingInput,
): boolean {
  if (key !== 'invested' || unit || decimal || ratio || value < 500 || mention.from !== to)
    return false
  let at = from - 1
  const { figures, prices } = lexicon.words
  while (at >= 0 && figures.guesses.has(tokens[at]?.text ?? '')) at -= 1
  while (figures.about.has(tokens[at]?.text ?? '')) at -= 1
  return prices.stakes.has(tokens[at]?.text ?? '') && tokens[mention.from]?.text === 'in'
}

/** "Bolts @ 70", "grade 8 bolts, torque 95": no price, so a torque. */
function isWrenched(
  { value, unit, decimal, from }: Figure,
  key: FactKey,
  mention: Mention<FigureMeaning>,
  input: PairingInput,
): boolean {
  const { tokens, money, scopes } = input
  const { ofMains } = input.lexicon.words.fasteners
  if (key !== 'fastenerTorque' || unit || decimal || money.said) return false
  if (value < 40 || value > 140) return false
  if (mention.to === from - 1 && tokens[mention.to]?.text === 'at') return true
  // "Head bolts get 65 ft-lbs, main studs get 95".
  if (mention.to < from && from - mention.to <= 2 && isOfTorques(from, input)) return true
  const named = tokens[mention.from]?.text === 'torque' && mention.to === from
  return (
    named &&
    tokens.some(
      ({ text }, at) => ofMains.has(text) && scopes.sentence[at] === scopes.sentence[from],
    )
  )
}

/** Whether the sentence, or the one before, has a torque with its unit. */
function isOfTorques(
  from: number,
  { tokens, scopes: { sentence }, lexicon }: PairingInput,
): boolean {
  const { torques } = lexicon.words.fasteners
  const here = sentence[from] ?? 0
  return tokens.some(
    ({ text, kind }, at) =>
      torques.has(text) && kind === 'word' && (sentence[at] === here || sentence[at] === here - 1),
  )
}

/** The sort of a figure, as the vocabulary's noise names it. */
function sortOf({ unit, ratio }: Figure): string {
  if (ratio) return 'ratio'
  if (!unit) return 'bare'
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
