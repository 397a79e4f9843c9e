import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Reading } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import { wordsOf } from './phrases.ts'
import type { Token } from './tokens.ts'

const OF_FASTENERS = new Set<FactKey>(['fastenerGrade', 'fastenerLubricant', 'tightening'])
/** Longest answer, in words, that is taken to speak of what it was asked. */
const SHORT = 15

/**
 * "It says 8.8 on the bolt heads", "moly paste that came with the studs": an answer about
 * the main fasteners that names them says which they are, too. Not so where it names
 * both, denies one, or speaks of another part's.
 */
export function kindNamed(
  { key, from, to }: Pick<Reading, 'key' | 'from' | 'to'>,
  asking: FactKey | undefined,
  tokens: readonly Token[],
  { words, markers }: Lexicon,
): Reading[] {
  if (key !== asking || !OF_FASTENERS.has(key) || tokens.length > SHORT) return []
  // "High-strength alloy stud": the words of the choice itself.
  const said = tokens.map(({ text }) => text).join(' ')
  const entry = fact(key)
  const choices = entry.kind === 'choice' ? Object.entries(entry.choices).flat() : []
  if (choices.some((choice) => wordsOf(choice).join(' ') === said)) return []
  const { bolts, studs, otherParts } = words.fasteners
  const named = new Set<string>()
  for (const [at, { text }] of tokens.entries()) {
    const kind = bolts.has(text) ? 'bolt' : studs.has(text) ? 'stud' : undefined
    if (otherParts.has(text) && !isBoltHead(at, tokens, bolts)) return []
    if (markers.next.get(text)?.meanings.some((m) => m === 'negation' || m === 'past')) return []
    if (kind) named.add(kind)
  }
  const [answer, other] = named
  return answer && !other ? [{ key: 'fastenerKind', answer, from, to, strength: 1 }] : []
}

/** The head of "bolt heads" and of "heads of the bolts" is the bolt's own. */
function isBoltHead(at: number, tokens: readonly Token[], bolts: ReadonlySet<string>): boolean {
  if (!/^heads?$/.test(tokens[at]?.text ?? '')) return false
  const [before, after] = [tokens[at - 1]?.text ?? '', tokens[at + 1]?.text ?? '']
  return !bolts.has(after) && (bolts.has(before) || after === 'of')
}
