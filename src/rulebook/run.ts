import { Engine, Rule as EngineRule, Fact, type TopLevelCondition } from 'json-rules-engine'
import { factsIn } from './conditions.ts'
import { type FactValue, isTrue, type Readable } from './evaluate.ts'
import type { Rule, Scope } from './schema.ts'

/** A rule as it is run: made once, since rules never change once they are loaded. */
interface Runnable {
  readonly rule: Rule
  /** Of the facts that it reads. */
  readonly names: readonly string[]
  /** What facts must be one of for it to be true, as its root says. */
  readonly needs: readonly Need[]
  /** As json-rules-engine takes it. Only the id travels in the event: params are cloned in each run. */
  readonly engineRule: EngineRule
}

interface Need {
  readonly fact: string
  readonly oneOf: readonly FactValue[]
}

const scopes = new WeakMap<readonly Rule[], Map<Scope, readonly Runnable[]>>()

function ofScope(rules: readonly Rule[], scope: Scope): readonly Runnable[] {
  let sorted = scopes.get(rules)
  if (!sorted) {
    sorted = new Map()
    scopes.set(rules, sorted)
  }
  let found = sorted.get(scope)
  if (!found) {
    found = rules.filter((rule) => rule.scope === scope).map(runnable)
    sorted.set(scope, found)
  }
  return found
}

function runnable(rule: Rule): Runnable {
  const { id, conditions } = rule
  const engineRule = new EngineRule({
    name: id,
    conditions: conditions as TopLevelCondition,
    event: { type: id },
  })
  return { rule, names: factsIn(conditions), needs: needsOf(conditions), engineRule }
}

function needsOf(conditions: Rule['conditions']): Need[] {
  if (!('all' in conditions)) return []
  return conditions.all.flatMap((part): Need[] => {
    if (!('fact' in part) || (part.operator !== 'equal' && part.operator !== 'in')) return []
    const { fact, value } = part
    if (typeof value !== 'object') return [{ fact, oneOf: [value] }]
    return 'fact' in value ? [] : [{ fact, oneOf: value }]
  })
}

/**
 * The rules of a scope whose every fact is known, less those that could not be true. `notEqual`
 * and `not` pass on a missing fact, so the first are never run; a rule whose root needs one route,
 * say, or an answer that was given, is not run for others.
 */
function toRun(rules: readonly Rule[], scope: Scope, facts: Readable): Runnable[] {
  return ofScope(rules, scope).filter(
    ({ names, needs }) =>
      needs.every(({ fact, oneOf }) => oneOf.includes(facts.get(fact) as FactValue)) &&
      names.every((name) => facts.has(name)),
  )
}

/**
 * Run the rules of one scope with json-rules-engine.
 *
 * A new Engine for each run: a shared one drops rules when runs overlap. The rules themselves
 * hold nothing of a run, so they are shared. Facts are only those that the rules read, and are
 * constants, for which the engine's cache of computed ones would only cost.
 *
 * @param rules - the rulebook's rules, sorted by id
 * @returns the rules that fired, in the same order
 * @throws {Error} if the engine lost a rule
 */
export async function runRules(
  rules: readonly Rule[],
  scope: Scope,
  facts: Readable,
): Promise<Rule[]> {
  const known = toRun(rules, scope, facts)
  const engine = new Engine()
  const read: Record<string, Fact> = {}
  for (const { names, engineRule } of known) {
    engine.addRule(engineRule)
    for (const name of names) read[name] ??= new Fact(name, facts.get(name), { cache: false })
  }
  const { results, failureResults } = await engine.run(read)
  if (results.length + failureResults.length !== known.length) {
    throw new Error(
      `json-rules-engine answered ${results.length + failureResults.length} of ${known.length} rules`,
    )
  }
  const fired = new Set(results.map((result) => result.name))
  return known.flatMap(({ rule }) => (fired.has(rule.id) ? [rule] : []))
}

/** The same rules by the synchronous evaluator. */
export function runRulesNow(rules: readonly Rule[], scope: Scope, facts: Readable): Rule[] {
  const fired: Rule[] = []
  for (const { rule } of toRun(rules, scope, facts)) {
    if (isTrue(rule.conditions, facts)) fired.push(rule)
  }
  return fired
}
