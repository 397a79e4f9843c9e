import type { Answer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import type { Intent } from './intents.ts'

/** What a message says; every fact with the words it came from. */
export interface Understanding {
  readonly facts: { readonly [key in FactKey]?: Answer }
  /** Places in the original message, UTF-16. */
  readonly spans: readonly { readonly key: FactKey; readonly start: number; readonly end: number }[]
  readonly intent: Intent
  /**
   * What "why" or "what is" asks about, a fact key or a term of the glossary; for a
   * result, the id of the route that the question names.
   */
  readonly topic?: string
  /** Facts of a what-if that the message bounds from above rather than gives: "under 6,000". */
  readonly atMost?: readonly FactKey[]
  /** Words that were not used, and why. */
  readonly unclear: readonly { readonly text: string; readonly why: string }[]
}
