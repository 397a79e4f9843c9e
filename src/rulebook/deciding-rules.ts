import type { Rule } from './schema.ts'

type Effect = Rule['outcome']['effect']

/** What a rule must lead to if it is to have a part in which route is called. */
const DECIDES: readonly Effect[] = [
  'contradiction',
  'at-least',
  'impossible',
  'does-not-hold',
  'step-up',
  'cannot-afford',
]

/** Picks the rules that lead to one of these; what it picked of a rulebook's rules is kept. */
function rulesThatLeadTo(effects: readonly Effect[]): (rules: readonly Rule[]) => readonly Rule[] {
  const kept = new WeakMap<readonly Rule[], readonly Rule[]>()
  return (rules) => {
    let found = kept.get(rules)
    if (!found) {
      found = rules.filter(({ outcome }) => effects.includes(outcome.effect))
      kept.set(rules, found)
    }
    return found
  }
}

/**
 * The rules by which a route is called. The others only speak: cautions, reasons for and against,
 * what must be done. A what-if asks which route it would be, so it leaves them out.
 */
export const decidingRules = rulesThatLeadTo(DECIDES)

/** The rules of practice: those that ask for some strength whatever the numbers say. */
export const practiceRules = rulesThatLeadTo(['at-least'])
