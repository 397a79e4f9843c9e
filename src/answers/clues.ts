import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { ChoiceInput } from './choice-input.ts'
import type { Reading } from './findings.ts'
import { mentionsIn } from './mentions.ts'
import { addPhrase, longestAt, type PhraseTree, phraseTree } from './phrases.ts'
import type { Vocabulary } from './vocabulary.ts'

/** What a description comes to, and what it must be a description of. */
export interface Clue {
  readonly fact: FactKey
  readonly value: string
  readonly near: PhraseTree<true>
  /** Whether the part must be named even when its question was asked. */
  readonly always: boolean
}

/** Words of a description that deny something themselves: "never been swapped". */
const DENYING = new Set([
  'never',
  'not',
  'no',
  'nothing',
  'dont',
  'doesnt',
  'arent',
  'without',
  'nobody',
  'noone',
])

/** Furthest that a description stands from what it describes, in words. */
const REACH = 14

/** So near before a description, another part is what it describes. */
const NEAR = 4

/** The descriptions of a vocabulary: "shiny where they sit", of caps. */
export function clueTree({ clues }: Vocabulary): PhraseTree<Clue> {
  const tree = phraseTree<Clue>()
  for (const { fact, value, near, phrases, always = false } of clues) {
    const parts = phraseTree<true>()
    for (const part of near) addPhrase(parts, part, true)
    for (const phrase of phrases) {
      addPhrase(tree, phrase, { fact: fact as FactKey, value, near: parts, always })
    }
  }
  return tree
}

/**
 * Choices that a message describes rather than names: "the caps look shiny and
 * fretted where they sit". Only beside the part that is described, with no other
 * part nearer, and never denied.
 */
export function readClues(input: ChoiceInput, asking: FactKey | undefined): Reading[] {
  const { tokens, lexicon, negations } = input
  return mentionsIn(lexicon.clues, tokens).flatMap(({ from, to, meanings }) => {
    const denies = tokens.slice(from, to).some(({ text }) => DENYING.has(text))
    if (!denies && (negations.denies({ from, to }) || isDenied(from, to, input))) return []
    if (isShadowed(from, input)) return []
    return meanings.flatMap((clue): Reading[] => {
      const part =
        clue.fact === asking && !clue.always ? { from, to } : partOf(clue, from, to, input)
      if (!part || negations.denies(part)) return []
      return [
        {
          key: clue.fact,
          answer: clue.value,
          from: Math.min(part.from, from),
          to: Math.max(part.to, to),
          strength: 2,
        },
      ]
    })
  })
}

/** The described part before the description in its sentence, else shortly after it. */
function partOf(
  clue: Clue,
  from: number,
  to: number,
  input: ChoiceInput,
): { from: number; to: number } | undefined {
  const { near } = clue
  const { tokens, scopes } = input
  // How an engine breathes or is used is no part's.
  const ofParts = ['caps', 'fasteners', 'block'].includes(fact(clue.fact).topic)
  const here = scopes.sentence[from] ?? 0
  const next = longestAt(input.lexicon.choices, tokens, to)
  // "Aftermarket block": of the part right after it.
  if (next?.meanings.some((m) => m.kind === 'noun') && !longestAt(near, tokens, to))
    return undefined
  // "Aluminum block, billet steel mains".
  const own = tokens[to]?.gap === 'space' ? longestAt(near, tokens, to) : undefined
  if (own) return own
  // "They are matched": of the caps of the sentence before.
  const they =
    tokens.slice(Math.max(0, from - 2), from + 1).some(({ text }) => THEY.has(text)) ||
    // "Two bolt caps. Need a tap to seat."
    (scopes.sentence[from - 1] !== scopes.sentence[from] && fact(clue.fact).topic === 'caps')
  const least = they || opensOnThey(from, input) ? here - 1 : here
  const same = (at: number): boolean =>
    (scopes.sentence[at] ?? 0) >= least && (scopes.sentence[at] ?? 0) <= here
  for (let at = from - 1; at >= 0 && at >= from - REACH && same(at); at -= 1) {
    const found = longestAt(near, tokens, at)
    if (found && found.to <= from) return found
    // "Block is plain cast iron, two bolts per cap".
    const block =
      fact(clue.fact).topic === 'caps' &&
      input.lexicon.words.parts.block.has(tokens[at]?.text ?? '') &&
      // "Push into the block by hand".
      tokens[at - 2]?.text !== 'into'
    if (ofParts && (isOtherPart(at, input) || block)) {
      if (from - at <= NEAR) return undefined
      // "Original to this block, they push in by hand".
      if (!THEY.has(tokens[from - 1]?.text ?? '')) break
    }
  }
  for (let at = to; at < tokens.length && at < to + REACH && same(at); at += 1) {
    const found = longestAt(near, tokens, at)
    if (found) return found
    // "Gray iron short skirt block, two bolts on every cap".
    if (ofParts && (isOtherPart(at, input) || endsOnBlock(at, input))) return undefined
  }
  return undefined
}

/** "Never out of order", "by hand it doesn't go": a denial right before or after. */
function isDenied(from: number, to: number, { scopes }: ChoiceInput): boolean {
  return scopes.markers.some(
    (marker) =>
      (marker.meanings.includes('negation') && marker.to <= from && from - marker.to <= 1) ||
      (marker.meanings.includes('deniedAfter') && marker.from >= to && marker.from - to <= 1),
  )
}

/** The moly of "moly rings", the dry of "dry sump"; "cap history: original to the block" names its fact. */
function isShadowed(at: number, { tokens, lexicon }: ChoiceInput): boolean {
  const end = tokens[at - 1]?.text === ':' ? at - 1 : at
  for (let from = Math.max(0, end - 3); from < end; from += 1) {
    if (end - from >= 2 && longestAt(lexicon.names, tokens, from)?.to === end) return true
  }
  for (let from = Math.max(0, at - 3); from <= at; from += 1) {
    const found = longestAt(lexicon.choices, tokens, from)
    if (!found || found.to <= at) continue
    if (found.meanings.some(({ kind }) => kind === 'shadow')) return true
  }
  return false
}

function opensOnThey(from: number, { tokens, scopes }: ChoiceInput): boolean {
  let at = from
  while (at > 0 && scopes.sentence[at - 1] === scopes.sentence[from]) at -= 1
  return THEY.has(tokens[at]?.text ?? '')
}

const THEY = new Set(['they', 'theyre', 'theyve', 'these', 'those', 'all', 'each', 'every', 'some'])

function endsOnBlock(at: number, { tokens, lexicon }: ChoiceInput): boolean {
  return lexicon.words.parts.block.has(tokens[at]?.text ?? '') && tokens[at + 1]?.kind !== 'word'
}

function isOtherPart(at: number, { tokens, lexicon }: ChoiceInput): boolean {
  return (longestAt(lexicon.choices, tokens, at)?.meanings ?? []).some(
    (m) =>
      m.kind === 'shadow' || (m.kind === 'noun' && (m.noun === 'other' || m.noun === 'bearings')),
  )
}
