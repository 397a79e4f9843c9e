import type { Answer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'

/** One reading of a fact, with the tokens that said it. */
export interface Reading {
  readonly key: FactKey
  readonly answer: Answer
  readonly from: number
  readonly to: number
  /** How plainly it was said: named (3), named by a loose word (2), taken by default (1). */
  /** 4 is a limit that was named as one: "shifts at 6200, limiter at 6700". */
  readonly strength: 1 | 2 | 3 | 4
}

/** Words that were read and not used, and why. */
export interface Doubt {
  readonly from: number
  readonly to: number
  readonly why: string
}

/** What the stages of reading add up. */
export interface Findings {
  readonly readings: Reading[]
  readonly doubts: Doubt[]
}

export function noFindings(): Findings {
  return { readings: [], doubts: [] }
}
