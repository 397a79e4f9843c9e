import type { Rule } from './schema.ts'

/** What a rule must lead to if it is to have a part in which route is called. */
const DECIDES: ReadonlySet<Rule['outcome']['effect']> = new Set([
  'contradiction',
  'at-least',
  'impossible',
  'does-not-hold',
  'step-up',
  'cannot-afford',
])

const kept = new WeakMap<readonly Rule[], readonly Rule[]>()

/**
 * The rules by which a route is called. The others only speak: cautions, reasons for and against,
 * what must be done. A what-if asks which route it would be, so it leaves them out.
 *
 * @param rules - the rulebook's; the answer is kept for them
 */
export function decidingRules(rules: readonly Rule[]): readonly Rule[] {
  let found = kept.get(rules)
  if (!found) {
    found = rules.filter(({ outcome }) => DECIDES.has(outcome.effect))
    kept.set(rules, found)
  }
  return found
}
