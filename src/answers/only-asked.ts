import type { Reading } from './findings.ts'
import type { Parts } from './message-parts.ts'
import { longestAt } from './phrases.ts'
import { asksAt } from './sentences.ts'

/** "15 psi?", "should I go to 12:1?": what is only asked about is supposed, not told. */
export function isOnlyAsked(
  settled: readonly Reading[],
  { tokens, scopes: { sentence }, lexicon }: Parts,
): boolean {
  if (settled.length === 0 || settled.length > 3) return false
  return settled.every(({ from }) => {
    let start = from
    while (start > 0 && sentence[start - 1] === sentence[from]) start -= 1
    let end = from
    while (end + 1 < tokens.length && sentence[end + 1] === sentence[from]) end += 1
    while (start < end && lexicon.words.asking.openers.has(tokens[start]?.text ?? '')) start += 1
    if (longestAt(lexicon.intents, tokens, start)?.meanings.includes('none')) return false
    const should = tokens.some(
      ({ text }, at) =>
        sentence[at] === sentence[from] && text === 'should' && tokens[at + 1]?.text === 'i',
    )
    return tokens[end]?.text === '?' || should || asksAt(start, tokens, sentence)
  })
}

/** Whether a place stands in a sentence that ends on a question mark. */
export function endsOnMark(at: number, { tokens, scopes: { sentence } }: Parts): boolean {
  let end = at
  while (end + 1 < tokens.length && sentence[end + 1] === sentence[at]) end += 1
  return tokens[end]?.text === '?'
}
