import { choicesOf } from '../../shared/answers.ts'
import { fact } from '../../shared/fact-keys.ts'
import { computed, type FactTable, type UnitSystem } from '../facts/live-facts.ts'
import type { FactValue, Readable } from '../rulebook/evaluate.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** What a person calls each margin. */
export const MARGIN_NAMES: Readonly<Record<string, string>> = {
  hold: 'hold margin (the cap walks)',
  grip: 'grip margin (the faces fret)',
  separation: 'separation margin (the joint opens)',
  capFatigue: 'cap fatigue margin (the cap cracks)',
  fastenerProof: 'fastener proof margin (the fasteners stretch)',
  threadStrip: 'thread strip margin (the block’s thread goes)',
}

/** Computed facts on top of a table, each printed in the person's units. */
export function tableOf(
  rulebook: Rulebook,
  facts: Readable,
  base: FactTable,
  currency: string,
  system: UnitSystem,
): FactTable {
  return {
    value: (name) => facts.get(name) ?? base.value(name),
    get(name) {
      const value = facts.get(name)
      if (value === undefined) return base.get(name)
      const text = wordsFor(rulebook, name, value)
      const words = text === undefined ? {} : { text }
      return computed(rulebook, name, value, { currency, system, ...words })
    },
  }
}

/** Words for a computed choice: the route's title, the margin's name, the dictionary's choice. */
function wordsFor(rulebook: Rulebook, name: string, value: FactValue): string | undefined {
  if (name === 'route') return rulebook.routes.find(({ id }) => id === value)?.title
  if (name === 'weakestMargin') return MARGIN_NAMES[String(value)]
  if (name === 'capMaterialAfter') return choicesOf(fact('capMaterial'))[String(value)]
  if (name === 'fastenerKindAfter') return choicesOf(fact('fastenerKind'))[String(value)]
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return undefined
}
