import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Reading } from './findings.ts'
import type { Parts } from './message-parts.ts'

/** Furthest that "under" stands before what it bounds, in words. */
const REACH = 5

/** Facts that a message gives no value but only an upper end: "under 6,000", "no more than 10 psi". */
export function boundedAbove(readings: readonly Reading[], parts: Parts): FactKey[] {
  return readings
    .filter(({ key }) => !['choice', 'thread'].includes(fact(key).kind))
    .filter((reading) => isBound(reading, parts))
    .map(({ key }) => key)
}

function isBound(
  { from, to }: Reading,
  { tokens, lexicon, scopes: { sentence, markers } }: Parts,
): boolean {
  const { under, limits } = lexicon.words.figures
  for (let at = Math.max(0, from - REACH); at < to; at += 1) {
    const text = tokens[at]?.text ?? ''
    if (sentence[at] !== sentence[from]) continue
    if (under.has(text)) return true
    const denied = markers.some(
      (one) => one.meanings.includes('negation') && one.to <= at && at - one.to <= 2,
    )
    if (limits.has(text) && (denied || NEVER.has(tokens[at - 2]?.text ?? ''))) return true
  }
  return false
}

const NEVER = new Set(['never', 'dont', 'wont'])
