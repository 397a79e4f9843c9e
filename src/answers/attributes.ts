import type { ChoiceInput } from './choice-input.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import { longestAt } from './phrases.ts'

/** The parts that the phrases of a choice may end on. */
const TAILS: Readonly<Record<string, readonly string[]>> = {
  capFastening: ['caps', 'block'],
  skirt: ['caps', 'block'],
  fastenerGrade: ['bolts', 'studs'],
}

/** A part, or the part that a choice names: the block of "inline six", the caps of "two bolt caps". */
export function nounOf(
  meaning: ChoiceMeaning,
  { from, to }: Mention<ChoiceMeaning>,
  { tokens, lexicon }: ChoiceInput,
): string | undefined {
  if (meaning.kind === 'noun') return meaning.noun
  if (meaning.kind !== 'choice') return undefined
  if (meaning.fact === 'layout') return 'block'
  if (meaning.fact === 'capHistory') return 'caps'
  const parts = TAILS[meaning.fact]
  if (!parts) return undefined
  for (let at = from + 1; at < to; at += 1) {
    const tail = longestAt(lexicon.choices, tokens, at)
    const noun = tail?.to === to ? tail.meanings.find(({ kind }) => kind === 'noun') : undefined
    if (noun?.kind === 'noun' && parts.includes(noun.noun)) return noun.noun
  }
  // "Iron two bolt": the block goes without saying.
  return meaning.fact === 'capFastening' && to - from === 2 ? 'block' : undefined
}

/** What "ones" stands for: the block or caps last spoken of. */
export function partBefore(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  input: ChoiceInput,
): string {
  const here = input.scopes.clause[mentions[i]?.from ?? 0]
  let implied: string | undefined
  for (let j = i - 1; j >= 0; j -= 1) {
    const mention = mentions[j] as Mention<ChoiceMeaning>
    if (implied !== undefined && input.scopes.clause[mention.from] !== here) return implied
    for (const meaning of mention.meanings) {
      const noun = nounOf(meaning, mention, input)
      if (noun === undefined || noun === 'ones') continue
      // "The caps are the stock two bolt ones": what is named counts before what goes without saying.
      if (meaning.kind === 'noun') return noun
      implied ??= noun
    }
  }
  return implied ?? 'ones'
}

/** The attributes before a part with no other part between, else those after "are", "is", ":". */
export function attributesOf(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  input: ChoiceInput,
): Mention<ChoiceMeaning>[] {
  const noun = mentions[i] as Mention<ChoiceMeaning>
  const found: Mention<ChoiceMeaning>[] = []
  let edge = noun.from
  for (let j = i - 1; j >= 0; j -= 1) {
    const other = mentions[j] as Mention<ChoiceMeaning>
    if (!links(other.to, edge, input) || isNoun(other)) break
    // "Cast iron short skirt 2 bolt caps": what stands before the skirt is the block's.
    const skirt = other.meanings.some((m) => m.kind === 'choice' && m.fact === 'skirt')
    if (skirt && noun.meanings.some((m) => m.kind === 'noun' && m.noun === 'caps')) break
    if (isAttribute(other) && !saidOfEarlier(mentions, j, input)) found.push(other)
    edge = other.from
  }
  edge = noun.to
  let listed = false
  for (let j = i + 1; j < mentions.length; j += 1) {
    const other = mentions[j] as Mention<ChoiceMeaning>
    if (!linksBack(edge, other.from, input, listed)) break
    if (edge === noun.to)
      listed = verbBetween(noun.to, other.from, input) || opensItem(noun, other, input)
    if (isNoun(other)) break
    if (isAttribute(other)) {
      if (ownsForward(mentions, j, input)) break
      found.push(other)
    }
    edge = other.to
  }
  return found
}

/** "Caps gray iron, two-bolt, factory": a part that opens its sentence heads a list. */
function opensItem(
  { from, to }: Mention<ChoiceMeaning>,
  first: Mention<ChoiceMeaning>,
  { scopes }: ChoiceInput,
): boolean {
  const opens = from === 0 || scopes.sentence[from - 1] !== scopes.sentence[from]
  return opens && first.from === to
}

/** "block is iron caps are steel": "iron" after "block is" is the block's. */
function saidOfEarlier(
  mentions: readonly Mention<ChoiceMeaning>[],
  j: number,
  input: ChoiceInput,
): boolean {
  const before = mentions[j - 1]
  const attribute = mentions[j] as Mention<ChoiceMeaning>
  if (!before || !isNoun(before)) return false
  if (input.scopes.clause[before.from] !== input.scopes.clause[attribute.from]) return false
  return verbBetween(before.to, attribute.from, input)
}

/** "caps, iron block": "iron" belongs to the part that follows it directly. */
function ownsForward(
  mentions: readonly Mention<ChoiceMeaning>[],
  j: number,
  input: ChoiceInput,
): boolean {
  const attribute = mentions[j] as Mention<ChoiceMeaning>
  const before = mentions[j - 1]
  if (before && isNoun(before) && verbBetween(before.to, attribute.from, input)) return false
  let edge = attribute.to
  for (const next of mentions.slice(j + 1)) {
    if (!links(edge, next.from, input)) return false
    if (isNoun(next)) return true
    edge = next.to
  }
  return false
}

const VERBS = new Set(['is', 'are', 'was', 'were', ':', '=', 'made', 'of'])

function verbBetween(from: number, to: number, { tokens }: ChoiceInput): boolean {
  for (let at = from; at < to; at += 1) if (VERBS.has(tokens[at]?.text ?? '')) return true
  return false
}

/** Whether only small words stand between, and no comma. */
function links(from: number, to: number, { tokens, lexicon }: ChoiceInput): boolean {
  if (to - from > 4) return false
  for (let at = from; at < to; at += 1) {
    if (!lexicon.between.has(tokens[at]?.text ?? '') || VERBS.has(tokens[at]?.text ?? ''))
      return false
    if (tokens[at]?.text === 'and' || tokens[at]?.text === 'with') return false
  }
  return tokens[to]?.gap !== 'dash'
}

/** What follows a part; after "caps are …" or "caps: …" a list with commas too. */
function linksBack(
  from: number,
  to: number,
  { tokens, lexicon }: ChoiceInput,
  listed: boolean,
): boolean {
  if (to - from > 5) return false
  for (let at = from; at < to; at += 1) {
    if (listed && tokens[at]?.text === ',') continue
    if (!lexicon.between.has(tokens[at]?.text ?? '')) return false
    if (tokens[at]?.text === 'with') return false
  }
  return true
}

export function isNoun({ meanings }: Mention<ChoiceMeaning>): boolean {
  return meanings.some(({ kind }) => kind === 'noun' || kind === 'shadow')
}

export function isAttribute({ meanings }: Mention<ChoiceMeaning>): boolean {
  return meanings.some(({ kind }) => kind === 'attribute')
}
