import { factsOfLeaf } from '../rulebook/conditions.ts'
import { isTrue, type Readable } from '../rulebook/evaluate.ts'
import type { Condition, Rule } from '../rulebook/schema.ts'

/**
 * The smallest set of facts that made a condition true: all of an `all`, the
 * first true one of an `any`, and for a `not` what made the inside false.
 *
 * @returns fact names, each once, in the order of the rule
 */
export function decidingFacts(rule: Rule, facts: Readable): string[] {
  return [...new Set(deciding(rule.conditions, facts, true))]
}

function deciding(condition: Condition, facts: Readable, truth: boolean): string[] {
  if ('not' in condition) return deciding(condition.not, facts, !truth)
  if ('all' in condition) return parts(condition.all, facts, truth, truth)
  if ('any' in condition) return parts(condition.any, facts, truth, !truth)
  return factsOfLeaf(condition)
}

/** Every part when all were needed, else the first that sufficed. */
function parts(
  list: readonly Condition[],
  facts: Readable,
  truth: boolean,
  everyPart: boolean,
): string[] {
  if (everyPart) return list.flatMap((part) => deciding(part, facts, truth))
  const enough = list.find((part) => isTrue(part, facts) === truth)
  return enough ? deciding(enough, facts, truth) : []
}
