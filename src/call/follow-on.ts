import { type FactTable, flat, over } from '../facts/live-facts.ts'
import type { Rule } from '../rulebook/schema.ts'
import type { Decision } from './decide.ts'
import type { DecideInput } from './look.ts'
import type { LoweredTarget } from './lower-target.ts'
import { tableOf } from './tables.ts'

/**
 * Facts of the route that is called (or would be), as the follow-on rules see them.
 *
 * @param lowered - what the present hardware holds of a lower target
 */
export function followOnTable(
  { rulebook, trials, system }: DecideInput,
  decision: Decision,
  { found, asks, asPlanned = false }: Pick<LoweredTarget, 'found' | 'asks' | 'asPlanned'>,
): FactTable {
  const { verdicts, wouldBe, choiceTable, buildTable, steppedUp } = decision
  const called = over(verdicts.get(wouldBe)?.table ?? buildTable, choiceTable)
  const own = new Map([
    ['steppedUp', steppedUp],
    ['loweredHolds', found],
    ['loweredIsPlan', asPlanned],
    ['loweredOnlyByNumbers', asks !== undefined],
  ])
  return tableOf(rulebook, own, called, trials.build.currency, system)
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
