import { type Answer, type Answers, withAnswer } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey } from '../../shared/fact-keys.ts'

/** What the last turn changed: each fact with the answer it had before, or none. */
export type Before = ReadonlyMap<FactKey, Answer | undefined>

/** The facts whose answers differ, with what they were. */
export function changedFrom(before: Answers, after: Answers): Before {
  const changed = new Map<FactKey, Answer | undefined>()
  for (const key of FACT_KEYS) {
    if (JSON.stringify(before[key]) !== JSON.stringify(after[key])) changed.set(key, before[key])
  }
  return changed
}

/** The answers as they were before the last turn. */
export function undone(answers: Answers, before: Before): Answers {
  return [...before].reduce((all, [key, answer]) => withAnswer(all, key, answer), answers)
}
