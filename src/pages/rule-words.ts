import { choicesOf } from '../../shared/answers.ts'
import { type FactKey, fact, isFactKey, usualUnit } from '../../shared/fact-keys.ts'
import { printFigure } from '../../shared/print.ts'
import { MARGIN_IDS } from '../../shared/route-ids.ts'
import { UNITS } from '../../shared/units.ts'
import type { Condition, Leaf } from '../rulebook/schema.ts'
import { inUnits } from './person-units.ts'

/** What a fact is called in a rule's sentence. */
export interface FactWords {
  readonly label: string
  /** As in the API; '' when it has none, `money` for amounts in the person's currency. */
  readonly unit: string
  readonly suffix?: string
  readonly choices?: Readonly<Record<string, string>>
  /** The fact is whether a person gave a figure, not the figure. */
  readonly given?: boolean
}

export type FactLabels = (name: string) => FactWords | undefined

const MARGIN_WORDS: Readonly<Record<string, string>> = {
  hold: 'Hold',
  grip: 'Grip',
  separation: 'Separation',
  capFatigue: 'Cap fatigue',
  fastenerProof: 'Fastener proof',
  threadStrip: 'Thread strip',
}

/**
 * Labels of every fact that a rule may read: the dictionary's, `<key>Said`, and the computed ones.
 *
 * @param computed - rules/computed-facts.json
 * @param routes - titles by id, for facts that name a route
 */
export function factLabels(
  computed: Readonly<Record<string, { label: string; unit: string }>>,
  routes: Readonly<Record<string, string>>,
): FactLabels {
  const margins = Object.fromEntries(MARGIN_IDS.map((id) => [id, MARGIN_WORDS[id] ?? id]))
  const named: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    route: routes,
    stepUpTitle: routes,
    weakestMargin: margins,
  }
  return (name) => {
    if (isFactKey(name)) return dictionaryWords(name)
    const base = name.replace(/(?:Said|After)$/, '')
    if (name.endsWith('Said') && isFactKey(base)) {
      return { label: fact(base).short, unit: '', given: true }
    }
    const entry = Object.hasOwn(computed, name) ? computed[name] : undefined
    if (!entry) return undefined
    const choices = named[name] ?? (isFactKey(base) ? choicesOf(fact(base)) : {})
    return { label: entry.label, unit: entry.unit, choices }
  }
}

function dictionaryWords(key: FactKey): FactWords {
  const entry = fact(key)
  const suffix = entry.kind === 'number' ? entry.suffix : ''
  const unit = entry.kind === 'money' ? 'money' : usualUnit(entry)
  return { label: entry.short, unit, suffix, choices: choicesOf(entry) }
}

/** A condition as one sentence without its full stop, such as "boost is above 15 psi (1.03 bar)". */
export function conditionsInWords(condition: Condition, labels: FactLabels): string {
  return inWords(condition, labels, false)
}

function inWords(condition: Condition, labels: FactLabels, inside: boolean): string {
  if ('all' in condition) return allInWords(condition.all, labels, inside)
  if ('any' in condition) return joined(condition.any, ', or ', labels, inside)
  if ('not' in condition) return `it is not so that ${inWords(condition.not, labels, true)}`
  return leafInWords(condition, labels)
}

/** What must be given is named together at the end, so that the comparisons read on. */
function allInWords(parts: readonly Condition[], labels: FactLabels, inside: boolean): string {
  const given = parts.filter((part) => isGiven(part, labels))
  const rest = parts.filter((part) => !given.includes(part))
  if (given.length === 0 || rest.length === 0) return joined(parts, ', and ', labels, inside)
  const names = given.map((part) => ('fact' in part ? (labels(part.fact)?.label ?? '') : ''))
  const words = `${joined(rest, ', and ', labels, false)}; ${listed(names, ' and ')} must be given, not assumed`
  return inside ? `(${words})` : words
}

function isGiven(condition: Condition, labels: FactLabels): boolean {
  if (!('fact' in condition)) return false
  const { fact: name, operator, value } = condition
  return operator === 'equal' && value === true && labels(name)?.given === true
}

function listed(words: readonly string[], last: string): string {
  return words.length < 2
    ? words.join('')
    : `${words.slice(0, -1).join(', ')}${last}${words.at(-1)}`
}

function joined(
  parts: readonly Condition[],
  word: string,
  labels: FactLabels,
  inside: boolean,
): string {
  const nested = parts.length > 1
  const words = parts.map((part) => inWords(part, labels, nested)).join(word)
  return nested && inside ? `(${words})` : words
}

const WORDS: Readonly<Record<Leaf['operator'], string>> = {
  equal: 'is',
  notEqual: 'is not',
  in: 'is',
  notIn: 'is neither',
  lessThan: 'is below',
  lessThanInclusive: 'is at most',
  greaterThan: 'is above',
  greaterThanInclusive: 'is at least',
}

/** One comparison in words. A fact that has no label stands under its own name. */
export function leafInWords({ fact: name, operator, value }: Leaf, labels: FactLabels): string {
  const words: FactWords = labels(name) ?? { label: name, unit: '' }
  const label = lowerFirst(words.label)
  if (typeof value === 'boolean') {
    const yes = operator === 'notEqual' ? !value : value
    if (words.given) return `${label} is ${yes ? 'given' : 'not given'}`
    return `${label}: ${yes ? 'yes' : 'no'}`
  }
  return `${label} ${WORDS[operator]} ${valueInWords(value, words, operator, labels)}`
}

function valueInWords(
  value: Exclude<Leaf['value'], boolean>,
  words: FactWords,
  operator: Leaf['operator'],
  labels: FactLabels,
): string {
  if (typeof value !== 'object') return scalarInWords(value, words)
  if ('fact' in value) return lowerFirst(labels(value.fact)?.label ?? value.fact)
  const all = value.map((one) => scalarInWords(one, words))
  return listed(all, operator === 'notIn' ? ' nor ' : ' or ')
}

function scalarInWords(value: string | number, words: FactWords): string {
  if (typeof value === 'string') return `“${lowerFirst(words.choices?.[value] ?? value)}”`
  if (words.unit === 'money') return `${printFigure(value, '', 0)} in the person’s currency`
  const own = `${printFigure(value, words.unit, 4)}${words.suffix ?? ''}`
  const other = inUnits(value, words.unit, UNITS[words.unit]?.system === 'us' ? 'metric' : 'us')
  if (other.unit === words.unit) return own
  return `${own} (${printFigure(Number(other.value.toPrecision(3)), other.unit, 4)})`
}

/** Lower case for the middle of a sentence, unless the word is an abbreviation such as SAE or V6. */
export function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text
}
