import { type Answer, type Answers, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact, isQuantity } from '../../shared/fact-keys.ts'
import type { Build } from '../build/build.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** A fact that nobody gave, and the answers that are plausible for it. */
export interface OpenFact {
  readonly key: FactKey
  readonly values: readonly Answer[]
  /** Already answered with "I don't know": open, but not asked again. */
  readonly givenUp: boolean
}

/**
 * Facts of a build that are assumed, each with its plausible other values: every
 * choice it could be, or the two ends of its spread.
 */
export function openFacts(build: Build, answers: Answers, rulebook: Rulebook): OpenFact[] {
  const asked = new Set(rulebook.questions.map((question) => question.fact))
  return FACT_KEYS.flatMap((key) => {
    const values = asked.has(key) ? plausible(build, key) : []
    return values.length === 0 ? [] : [{ key, values, givenUp: answers[key] === UNKNOWN }]
  })
}

function plausible(build: Build, key: FactKey): Answer[] {
  const entry = build.facts[key]
  if (entry.state !== 'assumed' || key === 'displacement') return []
  if (entry.couldBe) return entry.couldBe.filter((choice) => choice !== entry.value)
  const { low, high, value } = entry
  if (typeof value !== 'number' || low === undefined || high === undefined) return []
  return [low, high].filter((end) => end !== value).map((end) => asAnswer(build, key, end))
}

/** A figure in a fact's usual unit as an answer. */
export function asAnswer(build: Build, key: FactKey, value: number): Answer {
  const entry = fact(key)
  const tidy = Number(value.toPrecision(6))
  if (entry.kind === 'money') return { value: tidy, currency: build.currency }
  return isQuantity(entry) ? { value: tidy, unit: entry.units[0] as string } : tidy
}
