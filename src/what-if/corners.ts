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

/** One answer for each open fact that is not left at what is assumed. */
export type Corner = ReadonlyMap<FactKey, Answer>

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
  for (let index = 0; index < figures; index++) {
    for (const sign of [1, -1]) {
      const corner = cornerBy(facts, (tried) => sign * (tried.figures[index] ?? 0))
      corners.push(corner, ...facts.slice(-LEFT_OUT).map(({ key }) => without(corner, key)))
    }
  }
  const random = randomStream(SEED)
  for (let count = 0; count < DRAWN; count++) {
    corners.push(cornerOf(facts, ({ tried }) => tried[random.below(tried.length)]))
  }
  const unique = new Map(corners.map((corner) => [JSON.stringify([...corner]), corner]))
  return [...unique.values()]
}

function without(corner: Corner, key: FactKey): Corner {
  return new Map([...corner].filter(([other]) => other !== key))
}

function cornerBy(facts: readonly TriedFact[], cost: (tried: Tried) => number): Corner {
  return cornerOf(facts, ({ tried }) =>
    tried.reduce((best, one) => (cost(one) < cost(best) ? one : best)),
  )
}

function cornerOf(
  facts: readonly TriedFact[],
  choose: (fact: TriedFact) => Tried | undefined,
): Corner {
  return new Map(
    facts.flatMap((fact): [FactKey, Answer][] => {
      const value = choose(fact)?.value
      return value === undefined ? [] : [[fact.key, value]]
    }),
  )
}
