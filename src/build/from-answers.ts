import { type Answer, type Answers, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact, usualUnit } from '../../shared/fact-keys.ts'
import { convert } from '../../shared/print.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { assume } from './assumptions.ts'
import type { Build, BuildFact } from './build.ts'
import { derive } from './derive.ts'
import { isRelevant } from './relevance.ts'

/** Reads one fact of the build that is being made; settles it first if it is not yet. */
export type Lookup = (key: FactKey) => BuildFact

/**
 * Answers to a whole build: every fact said, derived, assumed or not needed.
 *
 * @param rulebook - its assumptions, relevance and currency rates
 * @param answers - read answers; "unknown" counts as not said
 * @returns the build; the same answers give the same build
 * @throws {RangeError} if assumptions rest on each other in a circle
 */
export function buildFromAnswers(rulebook: Rulebook, answers: Answers): Build {
  const currency = caseCurrency(rulebook, answers)
  const facts = { ...NONE_YET }
  const open: FactKey[] = []
  const lookup: Lookup = (key) => {
    const settled = facts[key]
    if (settled) return settled
    if (open.includes(key)) throw new RangeError(`${key} rests on itself: ${open.join(' → ')}`)
    open.push(key)
    const made = settle(rulebook, answers, key, currency, lookup)
    open.pop()
    facts[key] = made
    return made
  }
  for (const key of FACT_KEYS) lookup(key)
  return { facts: facts as Record<FactKey, BuildFact>, currency }
}

/**
 * Every fact, none settled. A build starts from a copy: an object that grows key by key is copied
 * a hundred times slower than one that has all of its keys from the start, and every route that is
 * tried copies it.
 */
const NONE_YET = Object.fromEntries(FACT_KEYS.map((key) => [key, undefined])) as {
  [key in FactKey]: BuildFact | undefined
}

/** The currency of the first amount that was said, else that of the price list. */
function caseCurrency({ cost }: Rulebook, answers: Answers): string {
  for (const key of FACT_KEYS) {
    const answer = answers[key]
    if (typeof answer === 'object' && 'currency' in answer) return answer.currency
  }
  return cost.currency
}

function settle(
  rulebook: Rulebook,
  answers: Answers,
  key: FactKey,
  currency: string,
  lookup: Lookup,
): BuildFact {
  const answer = answers[key]
  if (answer !== undefined && answer !== UNKNOWN) return said(rulebook, key, answer, currency)
  if (!isRelevant(rulebook.relevance, key, (other) => lookup(other).value)) {
    return { key, state: 'not-needed', value: rulebook.relevance[key]?.otherwise }
  }
  return derive(key, answers, lookup) ?? assume(rulebook, key, currency, lookup, answers)
}

function said(rulebook: Rulebook, key: FactKey, answer: Answer, currency: string): BuildFact {
  if (typeof answer === 'string' || typeof answer === 'number') {
    return { key, state: 'said', value: answer }
  }
  const inUsual = converter(rulebook, key, answer, currency)
  const { value, low, high } = answer
  return {
    key,
    state: 'said',
    value: inUsual(value),
    ...(low === undefined ? {} : { low: inUsual(low) }),
    ...(high === undefined ? {} : { high: inUsual(high) }),
  }
}

function converter(
  { cost }: Rulebook,
  key: FactKey,
  answer: Answer & object,
  currency: string,
): (value: number) => number {
  if ('unit' in answer) {
    const usual = usualUnit(fact(key))
    return (value) => (answer.unit === usual ? value : convert(value, answer.unit, usual))
  }
  if ('currency' in answer && answer.currency !== currency) {
    const rate = (cost.rates[currency] ?? 1) / (cost.rates[answer.currency] ?? 1)
    return (value) => value * rate
  }
  return (value) => value
}
