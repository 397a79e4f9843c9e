import { UNKNOWN } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import type { Reading } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'
import { factIn } from './topics.ts'

/**
 * What a message says it does not know: the fact named beside "no idea", else the
 * fact that was asked, if nothing else in the message answers it.
 */
export function unknownsIn(
  tokens: readonly Token[],
  scopes: Scopes,
  lexicon: Lexicon,
  known: readonly Reading[],
  asking: FactKey | undefined,
): Reading[] {
  const unknowns: Reading[] = []
  const open = (key: FactKey): boolean =>
    !known.some((reading) => reading.key === key) &&
    !unknowns.some((reading) => reading.key === key)
  for (const marker of scopes.markers) {
    if (!marker.meanings.includes('dontKnow') || scopes.outside[marker.from] === 'other') continue
    const [start, end] = clauseAround(marker, scopes, tokens)
    const named =
      factIn(tokens, marker.to, end, lexicon) ?? factIn(tokens, start, marker.from, lexicon)
    const from = Math.min(marker.from, named?.from ?? marker.from)
    const to = Math.max(marker.to, named?.to ?? marker.to)
    if (named) {
      if (open(named.key)) unknowns.push({ key: named.key, answer: UNKNOWN, from, to, strength: 3 })
    } else if (asking && open(asking) && hasNoFact(marker, known, scopes)) {
      unknowns.push({ key: asking, answer: UNKNOWN, from, to, strength: 3 })
    }
  }
  return unknowns
}

/** "Maybe 12 psi, not sure" is a figure with a shrug, no "I don't know". */
function hasNoFact(marker: { from: number }, known: readonly Reading[], scopes: Scopes): boolean {
  return !known.some(({ from }) => scopes.clause[from] === scopes.clause[marker.from])
}

function clauseAround(
  { from, to }: { from: number; to: number },
  { clause }: Scopes,
  tokens: readonly Token[],
): [number, number] {
  let start = from
  while (start > 0 && clause[start - 1] === clause[from] && tokens[start - 1]?.text !== ',')
    start -= 1
  let end = to
  while (end < tokens.length && clause[end] === clause[to - 1] && tokens[end]?.text !== ',')
    end += 1
  return [start, end]
}
