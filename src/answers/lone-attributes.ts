import type { FactKey } from '../../shared/fact-keys.ts'
import { isAttribute, isNoun, nounOf } from './attributes.ts'
import type { ChoiceInput } from './choice-input.ts'
import type { Reading } from './findings.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import { longestAt } from './phrases.ts'

/** Parts that a lone word may be said of. */
const OWNERS = new Set(['caps', 'block', 'bolts', 'studs'])
/** "They're gray iron": said of the caps spoken of before. */
const THEY = new Set(['they', 'theyre', 'these', 'those'])

/**
 * "V8, aluminium, 11:1", "splayed caps, billet steel": a material in a clause of its
 * own is the caps' if caps were just spoken of, else the block's; after any other part
 * it is nobody's.
 */
export function aloneReadings(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  mention: Mention<ChoiceMeaning>,
  input: ChoiceInput,
): Reading[] {
  const { tokens, scopes, lexicon } = input
  if (!isAttribute(mention) || input.negations.denies(mention)) return []
  const { from, to } = mention
  const own = (at: number): boolean => scopes.clause[at] === scopes.clause[from]
  const before = mentions[i - 1]
  let pointed = false
  for (let at = from - 1; at >= 0 && own(at); at -= 1) {
    if (THEY.has(tokens[at]?.text ?? '')) pointed = true
    else if (tokens[at]?.text === 'and') continue
    else if (tokens[at]?.text !== ',' && !lexicon.fillers.has(tokens[at]?.text ?? '')) return []
  }
  if (to < tokens.length && own(to) && tokens[to]?.kind !== 'mark') return []
  if (from === 0) return []
  const nouns = (before?.meanings ?? []).map((meaning) =>
    nounOf(meaning, before as typeof mention, input),
  )
  const noun = nouns.find((found) => found !== undefined) ?? 'block'
  const near = before && scopes.clause[before.from] === (scopes.clause[from] ?? 0) - 1
  if (near && isNoun(before) && !OWNERS.has(noun)) return []
  const fastener = near && (noun === 'bolts' || noun === 'studs') ? noun : undefined
  const target = fastener ?? (noun === 'caps' && (near || pointed) ? 'caps' : 'block')
  if (pointed && target !== 'caps') return []
  if (speaksOfOther(from, input)) return []
  return mention.meanings.flatMap((meaning) =>
    meaning.kind === 'attribute'
      ? Object.entries(meaning.of[target] ?? {}).map(([key, value]) => ({
          key: key as FactKey,
          answer: value,
          from,
          to,
          strength: 2 as const,
        }))
      : [],
  )
}

/** Whether the clause before names another part: "crank, forged steel". */
function speaksOfOther(from: number, { tokens, scopes, lexicon }: ChoiceInput): boolean {
  const clause = (scopes.clause[from] ?? 0) - 1
  for (let at = from - 1; at >= 0 && (scopes.clause[at] ?? 0) >= clause; at -= 1) {
    const found = longestAt(lexicon.choices, tokens, at)
    if (
      found?.meanings.some((m) => m.kind === 'shadow' || (m.kind === 'noun' && m.noun === 'other'))
    )
      return true
  }
  return false
}
