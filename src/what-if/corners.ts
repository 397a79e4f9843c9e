import type { Answer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { randomStream } from '../mechanics/seeded-random.ts'

/** What one plausible answer to an open fact does to the figures that decide. */
export interface Tried {
  /** Undefined is the value that is assumed. */
  readonly value: Answer | undefined
  /** See QuickCall's figures; the same order for every answer. */
  readonly figures: readonly number[]
}

/** An open fact with all its tried answers, the assumed one first. */
export interface TriedFact {
  readonly key: FactKey
  readonly tried: readonly Tried[]
}

/** For each open fact the place of one of its tried answers; 0 is what is assumed. */
export type Corner = readonly number[]

/** Corners drawn at random beside those that push one figure as far as it goes. */
const DRAWN = 16
/** So many of the most influential facts are also left as assumed in each corner, one at a time. */
const LEFT_OUT = 3
const SEED = 20_261

/**
 * Combinations of plausible answers that are the likeliest to change a call: for
 * each figure that decides, all facts at the answer that makes it least, and all
 * at the one that makes it greatest, with and without the most influential ones,
 * whose answer may push one figure up and spoil another; then some drawn at random,
 * for what facts do only together.
 *
 * @param facts - any number, each tried alone; the most influential last
 * @returns each combination once
 */
export function cornersOf(facts: readonly TriedFact[]): Corner[] {
  const figures = facts[0]?.tried[0]?.figures.length ?? 0
  const corners: Corner[] = []
  const influential = facts.map((_, place) => place).slice(-LEFT_OUT)
  for (let index = 0; index < figures; index++) {
    for (const sign of [1, -1]) {
      const corner = facts.map((fact) => least(fact, (one) => sign * (one.figures[index] ?? 0)))
      corners.push(corner, ...influential.map((place) => corner.with(place, 0)))
    }
  }
  const random = randomStream(SEED)
  for (let count = 0; count < DRAWN; count++) {
    corners.push(facts.map(({ tried }) => random.below(tried.length)))
  }
  return [...new Map(corners.map((corner) => [corner.join(), corner])).values()]
}

/** Place of the tried answer that costs least; the first of equals. */
function least({ tried }: TriedFact, cost: (tried: Tried) => number): number {
  let best = 0
  for (let place = 1; place < tried.length; place++) {
    if (cost(tried[place] as Tried) < cost(tried[best] as Tried)) best = place
  }
  return best
}
