import { Engine, type TopLevelCondition } from 'json-rules-engine'
import { factsIn } from './conditions.ts'
import { type FlatFacts, isTrue } from './evaluate.ts'
import type { Rule, Scope } from './schema.ts'

/** The rules of a scope whose every fact is known. The others are not run: `notEqual` and `not` pass on a missing fact. */
export function applicable(rules: readonly Rule[], scope: Scope, facts: FlatFacts): Rule[] {
  return rules.filter(
    (rule) => rule.scope === scope && factsOf(rule).every((name) => facts.has(name)),
  )
}

const factsOfRule = new WeakMap<Rule, readonly string[]>()

function factsOf(rule: Rule): readonly string[] {
  let names = factsOfRule.get(rule)
  if (!names) {
    names = factsIn(rule.conditions)
    factsOfRule.set(rule, names)
  }
  return names
}

/**
 * Run the rules of one scope with json-rules-engine.
 *
 * A new Engine for each run: a shared one drops rules when runs overlap. Only the
 * id travels in the event, since params are cloned for every rule.
 *
 * @param rules - the rulebook's rules, sorted by id
 * @returns the rules that fired, in the same order
 * @throws {Error} if the engine lost a rule
 */
export async function runRules(
  rules: readonly Rule[],
  scope: Scope,
  facts: FlatFacts,
): Promise<Rule[]> {
  const known = applicable(rules, scope, facts)
  const engine = new Engine()
  for (const { id, conditions } of known) {
    engine.addRule({ name: id, conditions: conditions as TopLevelCondition, event: { type: id } })
  }
  const { results, failureResults } = await engine.run(Object.fromEntries(facts))
  if (results.length + failureResults.length !== known.length) {
    throw new Error(
      `json-rules-engine answered ${results.length + failureResults.length} of ${known.length} rules`,
    )
  }
  const fired = new Set(results.map((result) => result.name))
  return known.filter((rule) => fired.has(rule.id))
}

/** The same rules by the synchronous evaluator. */
export function runRulesNow(rules: readonly Rule[], scope: Scope, facts: FlatFacts): Rule[] {
  return applicable(rules, scope, facts).filter((rule) => isTrue(rule.conditions, facts))
}
