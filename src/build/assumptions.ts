import { type Answer, type Answers, choicesOf, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact, isQuantity } from '../../shared/fact-keys.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { AssumptionRule, Basis, Take } from '../rulebook/schema-tables.ts'
import type { BuildFact } from './build.ts'
import { formulas } from './formulas.ts'
import type { Lookup } from './from-answers.ts'

interface Taken {
  readonly value: number | string
  readonly low?: number
  readonly high?: number
}

/**
 * What stands in for a fact that nobody gave, by rules/assumptions.json.
 *
 * @returns the assumed fact, or one that is not needed when the rulebook assumes nothing
 */
export function assume(
  rulebook: Rulebook,
  key: FactKey,
  currency: string,
  lookup: Lookup,
  answers: Answers,
): BuildFact {
  const rule = Object.hasOwn(rulebook.assumptions, key) ? rulebook.assumptions[key] : undefined
  if (!rule) return { key, state: 'not-needed', value: undefined }
  const { value, low, high } = inCurrency(
    rulebook,
    key,
    currency,
    taken(rule.take, lookup, answers),
  )
  return {
    key,
    state: 'assumed',
    value: bounded(key, value),
    ...(low === undefined ? {} : { low: bounded(key, low) as number }),
    ...(high === undefined ? {} : { high: bounded(key, high) as number }),
    ...couldBe(key, rule),
    because: rule.because,
    source: { kind: rule.source.kind, cite: rule.source.cite ?? '' },
  }
}

function taken(take: Take, lookup: Lookup, answers: Answers): Taken {
  if ('given' in take) {
    const first = take.given.find(({ fact: key }) => isGiven(answers[key as FactKey]))
    return taken(first?.take ?? take.otherwise, lookup, answers)
  }
  if (!('by' in take)) return fromBasis(take, lookup)
  const decider = String(lookup(take.by as FactKey).value)
  const chosen = Object.hasOwn(take.cases, decider) ? take.cases[decider] : undefined
  return taken(chosen ?? take.otherwise, lookup, answers)
}

/** A figure that was said, and is more than nothing. */
function isGiven(answer: Answer | undefined): boolean {
  return typeof answer === 'object' ? answer.value > 0 : typeof answer === 'number' && answer > 0
}

function fromBasis(basis: Basis, lookup: Lookup): Taken {
  if ('value' in basis) return dropUndefined(basis)
  if ('formula' in basis) {
    const value = formulas[basis.formula](lookup, basis.at)
    return { value, low: value * (1 - basis.spread), high: value * (1 + basis.spread) }
  }
  const of = Number(lookup(basis.of as FactKey).value)
  if ('times' in basis) {
    const most = basis.atMost ?? Number.POSITIVE_INFINITY
    return {
      value: Math.min(most, of * basis.times),
      low: Math.min(most, of * basis.low),
      high: Math.min(most, of * basis.high),
    }
  }
  const step = basis.steps.find(({ below }) => below === undefined || of < below)
  return { value: (step as { value: number | string }).value }
}

function dropUndefined({ value, low, high }: Extract<Basis, { value: unknown }>): Taken {
  return {
    value,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  }
}

/** An assumption must never be a value that an answer could not be. */
function bounded(key: FactKey, value: number | string): number | string {
  const entry = fact(key)
  if (typeof value !== 'number' || !(isQuantity(entry) || entry.kind === 'number')) return value
  return Math.min(entry.high, Math.max(entry.low, value))
}

function couldBe(key: FactKey, rule: AssumptionRule): { couldBe?: readonly string[] } {
  const choices = CHOICES.get(key)
  return choices ? { couldBe: rule.couldBe ?? choices } : {}
}

/** Of every fact that is a choice, the answers besides "unknown". */
const CHOICES = new Map(
  FACT_KEYS.map((key) => [key, Object.keys(choicesOf(fact(key)))] as const)
    .filter(([, choices]) => choices.length > 0)
    .map(([key, choices]) => [key, choices.filter((choice) => choice !== UNKNOWN)]),
)

function inCurrency({ cost }: Rulebook, key: FactKey, currency: string, amount: Taken): Taken {
  if (fact(key).kind !== 'money' || typeof amount.value !== 'number') return amount
  const rate = cost.rates[currency] ?? 1
  const { value, low = value, high = value } = amount
  return { value: value * rate, low: low * rate, high: high * rate }
}
