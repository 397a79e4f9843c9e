import table from '../rules/facts.json' with { type: 'json' }
import { type Dimension, UNITS } from './units.ts'

/**
 * The fact dictionary, typed. The table itself is `rules/facts.json`: questions,
 * schemas, links, the API and the assumptions all read it from here.
 */
export type FactKey = keyof typeof table

/** The part of a build that a fact belongs to. */
export type Topic =
  | 'engine'
  | 'plan'
  | 'block'
  | 'caps'
  | 'fasteners'
  | 'bearings'
  | 'money'
  | 'shop'

interface Common {
  readonly key: FactKey
  readonly topic: Topic
  readonly label: string
  /** A word or two, for chips and tables. */
  readonly short: string
  readonly help: string
  /** How a person finds or measures it. */
  readonly measure: string
}

export interface ChoiceFact extends Common {
  readonly kind: 'choice'
  readonly choices: Readonly<Record<string, string>>
}

export interface QuantityFact extends Common {
  readonly kind: Dimension
  /** Units that fit; the first is the usual one, in which `low`, `high` and every rule count. */
  readonly units: readonly string[]
  readonly low: number
  readonly high: number
}

export interface NumberFact extends Common {
  readonly kind: 'number'
  readonly suffix: string
  readonly low: number
  readonly high: number
}

export interface MoneyFact extends Common {
  readonly kind: 'money'
  readonly low: number
  readonly high: number
}

export interface ThreadFact extends Common {
  readonly kind: 'thread'
}

/** One entry of the dictionary of facts. */
export type Fact = ChoiceFact | QuantityFact | NumberFact | MoneyFact | ThreadFact

/** The dictionary as it was built in. */
export const FACT_TABLE: Readonly<Record<string, unknown>> = table

/** Every fact key, in the order of rules/facts.json. */
export const FACT_KEYS = Object.freeze(Object.keys(table)) as readonly FactKey[]

const facts = new Map<string, Fact>(
  FACT_KEYS.map((key) => [key, Object.freeze({ key, ...table[key] }) as unknown as Fact]),
)

/** The entry of a fact. Every {@link FactKey} has one. */
export function fact(key: FactKey): Fact {
  return facts.get(key) as Fact
}

/** Whether a word is the key of a fact; inherited names such as `__proto__` are not. */
export function isFactKey(word: string): word is FactKey {
  return facts.has(word)
}

/** Whether a fact is a figure with a unit, and so has a dimension and a usual unit. */
export function isQuantity(entry: Fact): entry is QuantityFact {
  return 'units' in entry
}

/** The unit in which rules, ranges and the API's figures of this fact count; '' when it has none. */
export function usualUnit(entry: Fact): string {
  return isQuantity(entry) ? (entry.units[0] as string) : ''
}

/** The units of a fact in a person's system first, the others after. */
export function unitsFor(entry: QuantityFact, system: 'us' | 'metric'): readonly string[] {
  const suits = (symbol: string): boolean => {
    const found = UNITS[symbol]?.system
    return found === system || found === 'both'
  }
  return [...entry.units.filter(suits), ...entry.units.filter((symbol) => !suits(symbol))]
}
