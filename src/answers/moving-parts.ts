import type { FigureMeaning, Lexicon } from './lexicon.ts'
import { coverage, type Mention } from './mentions.ts'
import type { Token } from './tokens.ts'

/** Fewest parts that make a list of what goes up and down. */
const FEWEST = 3

const CUE: FigureMeaning = {
  kind: 'cue',
  fact: 'reciprocatingMass',
  weak: false,
  needsUnit: false,
}

/**
 * "Piston, pin, rings, locks and the small end of the rod": a list of the parts that
 * go up and down, in any order, names their mass together. Without the piston or the
 * rod's share it is the mass of something less.
 */
export function withMovingParts(
  mentions: readonly Mention<FigureMeaning>[],
  tokens: readonly Token[],
  lexicon: Lexicon,
): readonly Mention<FigureMeaning>[] {
  const lists = movingParts(tokens, lexicon)
  if (lists.length === 0) return mentions
  const listed = coverage(tokens.length, lists)
  const others = mentions.filter(({ from, to }) => !listed[from] && !listed[to - 1])
  const named = lists.map((list) => ({ ...list, meanings: [CUE] }))
  return [...others, ...named].sort((a, b) => a.from - b.from)
}

function movingParts(
  tokens: readonly Token[],
  { words }: Lexicon,
): { readonly from: number; readonly to: number }[] {
  const { pistons, withPistons, joins } = words.moving
  const found: { from: number; to: number }[] = []
  for (let from = 0; from < tokens.length; from += 1) {
    let [at, end, parts, piston, rod] = [from, from, 0, false, false]
    for (; at < tokens.length; at += 1) {
      const { text } = tokens[at] as Token
      const small = text === 'small' && /^ends?$/.test(tokens[at + 1]?.text ?? '')
      if (small) [rod, at] = [true, at + 1]
      else if (pistons.has(text)) piston = true
      else if (!withPistons.has(text)) {
        if (at > from && joins.has(text)) continue
        break
      }
      parts += 1
      end = at + 1
    }
    if (parts >= FEWEST && piston && rod) found.push({ from, to: end })
    if (parts > 0) from = at
  }
  return found
}
