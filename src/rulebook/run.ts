import { Engine, type TopLevelCondition } from 'json-rules-engine'
import { factsIn } from './conditions.ts'
import { type FlatFacts, isTrue } from './evaluate.ts'
import type { Rule, Scope } from './schema.ts'

/** The rules of a scope whose every fact is known. The others are not run: `notEqual` and `not` pass on a missing fact. */
export function applicable(rules: readonly Rule[], scope: Scope, facts: FlatFacts): Rule[] {
  const found: Rule[] = []
  for (const { rule, names } of ofScope(rules, scope)) {
    if (names.every((name) => facts.has(name))) found.push(rule)
  }
  return found
}

/** A rule and the names of the facts that it reads. */
interface Read {
  readonly rule: Rule
  readonly names: readonly string[]
}

/** Rules never change once they are loaded, so they are sorted by scope once for each set. */
const scopes = new WeakMap<readonly Rule[], Map<Scope, readonly Read[]>>()

function ofScope(rules: readonly Rule[], scope: Scope): readonly Read[] {
  let sorted = scopes.get(rules)
  if (!sorted) {
    sorted = new Map()
    scopes.set(rules, sorted)
  }
  let found = sorted.get(scope)
  if (!found) {
    found = rules
      .filter((rule) => rule.scope === scope)
      .map((rule) => ({ rule, names: factsIn(rule.conditions) }))
    sorted.set(scope, found)
  }
  return found
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
