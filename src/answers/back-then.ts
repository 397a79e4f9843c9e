import type { Lexicon } from './lexicon.ts'
import { longestAt } from './phrases.ts'
import type { Token } from './tokens.ts'

const OPENS = new Set(['was', 'were', 'had', 'ran', 'made', 'used', 'did'])
const ENDS = new Set(['before', 'previously', 'originally', 'beforehand', 'earlier'])

/** "24 psi on e85, was on pump at 15 before": a clause that tells how it was. */
export function isOfBefore(
  i: number,
  tokens: readonly Token[],
  clause: readonly number[],
): boolean {
  if (!OPENS.has(tokens[i]?.text ?? '')) return false
  let end = i
  while (end + 1 < tokens.length && clause[end + 1] === clause[i]) end += 1
  while (tokens[end]?.kind === 'mark') end -= 1
  return ENDS.has(tokens[end]?.text ?? '')
}

const TODAY = new Set(['is', 'are', 'its', 'has', 'im', 'ive', 'runs', 'theres'])
const THEN = new Set(['was', 'were', 'had', 'ran', 'made', 'did'])

/** "Made 412 at the wheels last year, rev limiter is at 6600": a clause that tells how it is. */
export function isOfToday(i: number, tokens: readonly Token[], clause: readonly number[]): boolean {
  let today = false
  for (let at = i; at < tokens.length && clause[at] === clause[i]; at += 1) {
    const word = tokens[at]?.text ?? ''
    if (THEN.has(word)) return false
    today ||= TODAY.has(word)
  }
  return today
}

const SELVES = new Set(['i', 'we'])
const ONCE = new Set([
  'ran',
  'had',
  'raced',
  'drove',
  'owned',
  'built',
  'did',
  'assembled',
  'helped',
])
const ARTICLES = new Set(['a', 'an', 'one', 'some', 'another'])

/** "I ran a blown one at the salt flats in 63": a sentence on what somebody had long ago. */
export function isLongAgo(
  i: number,
  tokens: readonly Token[],
  sentence: readonly number[],
  lexicon: Lexicon,
): boolean {
  let verb = -1
  for (let at = i + 3; at > i; at -= 1) {
    const once = ONCE.has(tokens[at]?.text ?? '') && SELVES.has(tokens[at - 1]?.text ?? '')
    if (once) verb = at
  }
  if (verb < 0 || !ARTICLES.has(tokens[verb + 1]?.text ?? '')) return false
  for (let at = verb; at + 1 < tokens.length && sentence[at + 1] === sentence[i]; at += 1) {
    if (tokens[at]?.text === 'in' && isYear(at + 1, tokens, lexicon)) return true
  }
  return false
}

/** A year of four digits, or of the last two where no unit follows. */
function isYear(at: number, tokens: readonly Token[], { units }: Lexicon): boolean {
  const { value = 0, decimal } = tokens[tokens[at]?.text === "'" ? at + 1 : at] ?? {}
  if (decimal || !Number.isInteger(value)) return false
  if (value >= 1900 && value <= 2100) return true
  return value >= 30 && value <= 99 && longestAt(units.tree, tokens, at + 1) === undefined
}
