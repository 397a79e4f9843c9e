import { type Answers, choicesOf, UNKNOWN } from '../../shared/answers.ts'
import type { LiveFact } from '../../shared/assessment.ts'
import { FACT_KEYS, fact, isFactKey, usualUnit } from '../../shared/fact-keys.ts'
import { convert, printAnswer, printFigure, printMoney, printNumber } from '../../shared/print.ts'
import { preferredUnit, UNITS } from '../../shared/units.ts'
import type { Build, BuildFact } from '../build/build.ts'
import type { FactValue, FlatFacts, Readable } from '../rulebook/evaluate.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { ComputedFact } from '../rulebook/schema-tables.ts'

/** The system that a person reads figures in. */
export type UnitSystem = 'us' | 'metric'

/**
 * Named values that rules and sentences see, each with its unit and state. A report reads a few
 * of some two hundred, so each is described when it is read.
 */
export interface FactTable {
  get(name: string): LiveFact | undefined
  /** Its bare value, without describing it. */
  value(name: string): FactValue | undefined
}

/** The bare values, as rules read them. */
export function flat(table: FactTable): Readable {
  return { get: (name) => table.value(name), has: (name) => table.value(name) !== undefined }
}

/** A table on top of another; the upper one hides what has its name in the lower. */
export function over(top: FactTable, base: FactTable): FactTable {
  return {
    get: (name) => top.get(name) ?? base.get(name),
    value: (name) => top.value(name) ?? base.value(name),
  }
}

/** Facts of a build that have a value, and for each `<key>Said`, as bare values. */
export function buildValues({ facts }: Build): FlatFacts {
  const get = (name: string): FactValue | undefined => VALUES.get(name)?.(facts)
  return {
    get,
    has: (name) => get(name) !== undefined,
    *[Symbol.iterator]() {
      for (const [name, read] of VALUES) {
        const value = read(facts)
        if (value !== undefined) yield [name, value] as const
      }
    },
  }
}

/** How each value is read off the facts of a build. */
const VALUES = new Map<string, (facts: Build['facts']) => FactValue | undefined>(
  FACT_KEYS.flatMap((key) => [
    [`${key}Said`, (facts) => facts[key].state === 'said'],
    [key, (facts) => facts[key].value],
  ]),
)

const KEY_OF_SAID = new Map(FACT_KEYS.map((key) => [`${key}Said`, key]))

/** Every fact of a build that has a value, and for each `<key>Said`. */
export function buildTable(build: Build, answers: Answers, system: UnitSystem): FactTable {
  return {
    value: (name) => VALUES.get(name)?.(build.facts),
    get(name) {
      const said = KEY_OF_SAID.get(name)
      if (said) return flag(name, `${fact(said).label}: said`, build.facts[said].state === 'said')
      if (!isFactKey(name)) return undefined
      const entry = build.facts[name]
      if (entry.value === undefined) return undefined
      return {
        key: name,
        label: fact(name).label,
        value: entry.value,
        unit: fact(name).kind === 'money' ? build.currency : usualUnit(fact(name)),
        get text() {
          return buildFactText(entry, build, answers, system)
        },
        state: entry.state === 'not-needed' ? 'derived' : entry.state,
      }
    },
  }
}

/** A fact of a build as a person reads it: in the person's own unit when said, else in their system's. */
export function buildFactText(
  entry: BuildFact,
  build: Build,
  answers: Answers,
  system: UnitSystem,
): string {
  const answer = answers[entry.key]
  if (entry.state === 'said' && answer !== undefined && answer !== UNKNOWN) {
    return `${printAnswer(entry.key, answer)}${beforeTheTurn(entry, build)}`
  }
  const { value } = entry
  if (value === undefined || (entry.key === 'fastenerTorque' && entry.state === 'not-needed'))
    return 'not needed'
  const dictionary = fact(entry.key)
  if (typeof value === 'string') return choicesOf(dictionary)[value] ?? value
  if (dictionary.kind === 'money') return printMoney(value, build.currency)
  if (dictionary.kind === 'number') return `${printNumber(value, 1)}${dictionary.suffix}`
  return figureText(value, usualUnit(dictionary), system)
}

/** A torque that an angle follows is no final torque. */
function beforeTheTurn({ key }: BuildFact, { facts }: Build): string {
  return key === 'fastenerTorque' && facts.tightening.value === 'torque-angle'
    ? ', before the turn'
    : ''
}

/** Decimals that suit a figure that was not measured: three significant figures or so. */
function roughDecimals(value: number): number {
  const size = Math.abs(value)
  if (size >= 100) return 0
  if (size >= 10) return 1
  return size >= 1 ? 2 : 3
}

/** A figure in the unit that a person's system prefers. */
export function figureText(
  value: number,
  unit: string,
  system: UnitSystem,
  decimals?: number,
): string {
  const preferred = Object.hasOwn(UNITS, unit) ? preferredUnit(unit, system) : unit
  const shown = preferred === unit ? value : convert(value, unit, preferred)
  if (unit === '') return printNumber(value, decimals ?? roughDecimals(value))
  // An estimate in thousands is not known to the single pound-force or psi.
  const isStated = preferred === unit && decimals !== undefined
  const isRough = !isStated && Math.abs(shown) >= 1000
  return printFigure(
    isRough ? Math.round(shown / 10) * 10 : shown,
    preferred,
    isStated ? decimals : roughDecimals(shown),
  )
}

/** A computed fact, described by rules/computed-facts.json. */
export function computed(
  rulebook: Rulebook,
  name: string,
  value: FactValue,
  context: { currency: string; system: UnitSystem; text?: string },
): LiveFact {
  const entry = rulebook.computedFacts[name]
  if (!entry) throw new RangeError(`computed-facts.json does not describe "${name}"`)
  return {
    key: name,
    label: entry.label,
    value,
    unit: entry.unit === 'money' ? context.currency : entry.unit,
    // Printed only when somebody reads it: a sweep looks at thousands of values and prints none.
    get text() {
      return context.text ?? computedText(value, entry, context)
    },
    state: 'computed',
  }
}

function computedText(
  value: FactValue,
  { unit, decimals }: ComputedFact,
  { currency, system }: { currency: string; system: UnitSystem },
): string {
  if (typeof value !== 'number') return String(value)
  if (unit === 'money') return printMoney(value, currency)
  return figureText(value, unit, system, decimals)
}

function flag(key: string, label: string, value: boolean): LiveFact {
  return { key, label, value, unit: '', text: value ? 'yes' : 'no', state: 'computed' }
}
