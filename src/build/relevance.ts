import type { Answers } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey } from '../../shared/fact-keys.ts'
import type { Relevance } from '../rulebook/schema-tables.ts'

type Table = Readonly<Record<string, Relevance>>

/**
 * Whether a fact counts, given the facts that decide it.
 *
 * @param valueFor - value of another fact of the same build
 */
export function isRelevant(
  table: Table,
  key: FactKey,
  valueFor: (key: FactKey) => unknown,
): boolean {
  const entry = Object.hasOwn(table, key) ? table[key] : undefined
  if (!entry) return true
  return entry.when.every((when) => when.in.includes(String(valueFor(when.fact as FactKey))))
}

/**
 * Answers that no longer count because of another answer, and parked ones that
 * count again. Only what was said decides: an unsaid fact parks nothing.
 *
 * @returns the two records after parking and unparking
 */
export function park(
  table: Table,
  answers: Answers,
  parked: Answers,
): { answers: Answers; parked: Answers } {
  const counts: Record<string, unknown> = {}
  const aside: Record<string, unknown> = {}
  const counted = (key: FactKey): boolean => {
    const entry = Object.hasOwn(table, key) ? table[key] : undefined
    if (!entry) return true
    return entry.when.every((when) => {
      const value = answers[when.fact as FactKey]
      return value === undefined || value === 'unknown' || when.in.includes(String(value))
    })
  }
  for (const key of FACT_KEYS) {
    const answer = answers[key] ?? (counted(key) ? parked[key] : undefined)
    if (answer !== undefined && counted(key)) counts[key] = answer
    else if (answer !== undefined) aside[key] = answer
    else if (parked[key] !== undefined) aside[key] = parked[key]
  }
  return { answers: counts as Answers, parked: aside as Answers }
}
