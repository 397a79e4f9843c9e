import { fact } from '../../shared/fact-keys.ts'
import type { Reading } from './findings.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Parts } from './message-parts.ts'

/**
 * Whether what was read of fasteners is of another part's: "rod bolts get 75 with
 * moly and the head studs 80". It is when such fasteners were named before it in the
 * sentence and the mains were not named since.
 */
export function isOfOtherFasteners({ key, from, to }: Reading, parts: Parts): boolean {
  if (fact(key).topic !== 'fasteners') return false
  const { scopes, choiceMentions, tokens, lexicon } = parts
  if (key === 'fastenerTorque' && isForOther(from, to, parts)) return true
  const before = choiceMentions.filter(
    (mention) => mention.from < from && scopes.sentence[mention.from] === scopes.sentence[from],
  )
  const here = scopes.clause[from]
  const other = before
    .filter((mention) => isOther(mention, scopes.clause[mention.from] === here, parts))
    .at(-1)
  if (!other) return false
  // "Rods, and oiled class 8.8 main bolts": the mains may be named right after it.
  for (let at = other.to; at < to + 2; at += 1) {
    const named = lexicon.words.fasteners.mains.has(tokens[at]?.text ?? '')
    if (named && scopes.sentence[at] === scopes.sentence[from]) return false
  }
  return true
}

/** "60 ft lb for the heads": said right after the figure. */
export function isForOther(from: number, to: number, { tokens, lexicon }: Parts): boolean {
  for (let at = from; at <= to; at += 1) {
    if (!['for', 'on'].includes(tokens[at]?.text ?? '')) continue
    const article = ['the', 'my'].includes(tokens[at + 1]?.text ?? '')
    const named = tokens[article ? at + 2 : at + 1]?.text ?? ''
    if (lexicon.words.fasteners.otherParts.has(named)) return true
  }
  return false
}

/** "Head bolts", and the rods of "rods with 3/8 bolts". */
function isOther(
  { from, to, meanings }: Mention<ChoiceMeaning>,
  sameClause: boolean,
  { tokens, lexicon }: Parts,
): boolean {
  const words = tokens.slice(from, to).map(({ text }) => text)
  const { otherParts, bolts, studs, kinds } = lexicon.words.fasteners
  // "Stamped on the heads of the bolts".
  if (tokens[to]?.text === 'of' && tokens.slice(to, to + 4).some(({ text }) => bolts.has(text)))
    return false
  // "Bolt heads are stamped 10.9".
  if (words.length === 1 && words[0] === 'heads' && bolts.has(tokens[from - 1]?.text ?? ''))
    return false
  const part = words.some((word) => otherParts.has(word))
  const fastened = words.some((word) => [bolts, studs, kinds].some((list) => list.has(word)))
  return meanings.some(
    (m) =>
      (m.kind === 'shadow' && part && fastened) ||
      (sameClause && m.kind === 'noun' && m.noun === 'other' && part && words[0] !== 'head'),
  )
}
