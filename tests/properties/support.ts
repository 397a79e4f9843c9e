import fc from 'fast-check'
import { type Answer, type Answers, withAnswer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { strengthOf } from '../../src/call/ladder.ts'
import { newMemory } from '../../src/facts/memory.ts'
import { generateAnswers } from '../../src/rulebook/generate-answers.ts'
import { type QuickCall, whatIf } from '../../src/what-if/quick-call.ts'
import { rulebook } from '../support/rulebook.ts'

/** Builds for each property: few in every run, as many as wanted by PROPERTY_RUNS. */
export function runs(usual: number): { numRuns: number; seed: number } {
  const asked = Number(process.env.PROPERTY_RUNS ?? 0)
  return { numRuns: asked > 0 ? asked : usual, seed: 20_261_125 }
}

/** Random but plausible answers, with what a measurement would pin down left out. */
export const build: fc.Arbitrary<Answers> = fc
  .integer({ min: 1, max: 4_000_000 })
  .map(generateAnswers)

/** A figure in a unit. */
export function quantity(value: number, unit: string): Answer {
  return { value: Number(value.toPrecision(6)), unit }
}

/** The answers without some of them. */
export function without(answers: Answers, ...keys: readonly FactKey[]): Answers {
  return keys.reduce((left, key) => withAnswer(left, key, undefined), answers)
}

/** The call of each of some answers by one memory, or undefined where the mechanics refuse a figure. */
export async function callsOf(...cases: readonly Answers[]): Promise<QuickCall[] | undefined> {
  const ask = whatIf(rulebook, newMemory())
  const calls: QuickCall[] = []
  for (const answers of cases) {
    const call = await ask(answers)
    if (!call) return undefined
    calls.push(call)
  }
  return calls
}

/** Rank of a route; lowering the target stands last. */
export function strength(route: RouteId): number {
  return strengthOf(rulebook, route)
}
