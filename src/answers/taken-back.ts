import type { Lexicon, Marker } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import { longestAt } from './phrases.ts'
import type { Token } from './tokens.ts'

/**
 * "Bore 4.03, no, 4.04", "e85, no, pump gas": a no between marks, with a figure or a choice before
 * it and another of the kind right after.
 */
export function takenBack(
  tokens: readonly Token[],
  { words, choices }: Lexicon,
): Mention<Marker>[] {
  const first = tokens.findIndex(({ kind }) => kind === 'number')
  return tokens.flatMap(({ text }, at): Mention<Marker>[] => {
    const [before, after, then] = [tokens[at - 1], tokens[at + 1], tokens[at + 2]]
    if (!words.asking.no.has(text) || before?.kind !== 'mark' || after?.kind !== 'mark') return []
    const figures = first >= 0 && first < at && then?.kind === 'number'
    return figures || isOtherChoice(at, tokens, choices)
      ? [{ from: at, to: at + 1, meanings: ['correction'] }]
      : []
  })
}

/** Whether the choice that ends right before a no between commas is answered anew right after it. */
function isOtherChoice(at: number, tokens: readonly Token[], tree: Lexicon['choices']): boolean {
  if (tokens[at - 1]?.text !== ',' || tokens[at + 1]?.text !== ',') return false
  const facts = (from: number, fits: (to: number) => boolean): string[] => {
    const found = longestAt(tree, tokens, from)
    if (!found || !fits(found.to)) return []
    return found.meanings.flatMap((meaning) => (meaning.kind === 'choice' ? [meaning.fact] : []))
  }
  const after = facts(at + 2, () => true)
  if (after.length === 0) return false
  for (let from = at - 2; from >= Math.max(0, at - 5); from -= 1) {
    if (facts(from, (to) => to === at - 1).some((key) => after.includes(key))) return true
  }
  return false
}
