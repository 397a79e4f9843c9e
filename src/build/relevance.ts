import { type Answers, UNKNOWN } from '../../shared/answers.ts'
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
 * Answers that an edit makes irrelevant are set aside, and parked ones come back when
 * they count again. Only what was said decides: an unsaid fact parks nothing. What was
 * said in one breath with what rules it out is no edit: it stays, and the rules name the
 * contradiction.
 *
 * @param changed - facts whose answers the edit changed; all of them when left out
 * @returns the two records after parking and unparking
 */
export function park(
  table: Table,
  answers: Answers,
  parked: Answers,
  changed?: ReadonlySet<FactKey>,
): { answers: Answers; parked: Answers } {
  const counts: Record<string, unknown> = {}
  const aside: Record<string, unknown> = {}
  for (const key of FACT_KEYS) {
    const against = ruledOutBy(table, answers, key)
    const present = answers[key]
    const answer = present ?? (against.length === 0 ? parked[key] : undefined)
    const edited =
      changed === undefined || (!changed.has(key) && against.some((fact) => changed.has(fact)))
    if (answer !== undefined && (against.length === 0 || !edited)) counts[key] = answer
    else if (answer !== undefined) aside[key] = answer
    else if (parked[key] !== undefined) aside[key] = parked[key]
  }
  return { answers: counts as Answers, parked: aside as Answers }
}

/** The said facts by whose answers a fact does not count. */
function ruledOutBy(table: Table, answers: Answers, key: FactKey): FactKey[] {
  const entry = Object.hasOwn(table, key) ? table[key] : undefined
  return (entry?.when ?? []).flatMap((when) => {
    const decider = when.fact as FactKey
    const value = answers[decider]
    const fits = value === undefined || value === UNKNOWN || when.in.includes(String(value))
    return fits ? [] : [decider]
  })
}
