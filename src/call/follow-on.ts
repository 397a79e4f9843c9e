import { computed, type FactTable, flat } from '../facts/live-facts.ts'
import type { Rule } from '../rulebook/schema.ts'
import type { Decision } from './decide.ts'
import type { DecideInput } from './look.ts'

/** Facts of the route that is called (or would be), as the follow-on rules see them. */
export function followOnTable({ rulebook, trials, system }: DecideInput, decision: Decision) {
  const verdict = decision.verdicts.get(decision.wouldBe)
  const table = new Map(verdict?.table ?? decision.buildTable)
  for (const [name, live] of decision.choiceTable) if (!table.has(name)) table.set(name, live)
  const context = { currency: trials.build.currency, system }
  table.set('steppedUp', computed(rulebook, 'steppedUp', decision.steppedUp, context))
  return table
}

/** The rules that say what must be done for the called route. */
export async function followOnRules(
  input: DecideInput,
  table: FactTable,
): Promise<readonly Rule[]> {
  return input.run(input.rulebook.rules, 'follow-on', flat(table))
}

/** Ids of what must be done, each once, sorted. */
export function mustDoIds(rules: readonly Rule[]): string[] {
  const ids = rules.flatMap(({ outcome }) => (outcome.effect === 'must-do' ? [outcome.id] : []))
  return [...new Set(ids)].sort()
}
