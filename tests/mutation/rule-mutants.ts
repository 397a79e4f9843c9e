import type { Condition, Leaf, Rule } from '../../src/rulebook/schema.ts'

/** A rule with one slip in its conditions. */
export interface Mutant {
  readonly rule: Rule
  /** What the slip is. */
  readonly slip: string
}

type Operator = Leaf['operator']

const FLIPPED: Readonly<Record<Operator, Operator>> = {
  equal: 'notEqual',
  notEqual: 'equal',
  in: 'notIn',
  notIn: 'in',
  lessThan: 'greaterThanInclusive',
  lessThanInclusive: 'greaterThan',
  greaterThan: 'lessThanInclusive',
  greaterThanInclusive: 'lessThan',
}
/** The other end: whether the threshold itself counts. */
const EDGE: Partial<Readonly<Record<Operator, Operator>>> = {
  lessThan: 'lessThanInclusive',
  lessThanInclusive: 'lessThan',
  greaterThan: 'greaterThanInclusive',
  greaterThanInclusive: 'greaterThan',
}
/** Shares by which a threshold is moved. */
const NUDGES = [0.9, 1.1]

/** Every slip of one kind each: a threshold moved, an operator turned, a condition or a choice lost. */
export function mutantsOf(rule: Rule): Mutant[] {
  return slips(rule.conditions).map(([conditions, slip]) => ({
    // A slip may leave a condition whose root is a single comparison; the evaluator takes it.
    rule: { ...rule, conditions: conditions as Rule['conditions'] },
    slip,
  }))
}

function slips(condition: Condition): [Condition, string][] {
  if ('all' in condition) {
    const swapped: [Condition, string] = [{ any: condition.all }, 'all became any']
    return group(condition.all, (all) => ({ all }), swapped)
  }
  if ('any' in condition) {
    const swapped: [Condition, string] = [{ all: condition.any }, 'any became all']
    return group(condition.any, (any) => ({ any }), swapped)
  }
  if ('not' in condition) {
    const within = slips(condition.not).map(([not, slip]): [Condition, string] => [{ not }, slip])
    return [[condition.not, 'not was lost'], ...within]
  }
  return leafSlips(condition)
}

function group(
  parts: readonly Condition[],
  wrap: (parts: Condition[]) => Condition,
  swapped: [Condition, string],
): [Condition, string][] {
  const lost = parts.map((part, n): [Condition, string] => [
    wrap(parts.filter((_, other) => other !== n)),
    `lost ${JSON.stringify(part)}`,
  ])
  const within = parts.flatMap((part, n) =>
    slips(part).map(([changed, slip]): [Condition, string] => [
      wrap(parts.map((one, other) => (other === n ? changed : one))),
      slip,
    ]),
  )
  return parts.length > 1 ? [swapped, ...lost, ...within] : within
}

function leafSlips(leaf: Leaf): [Condition, string][] {
  const { fact, operator, value } = leaf
  const made: Leaf[] = [{ ...leaf, operator: FLIPPED[operator] } as Leaf]
  const edge = EDGE[operator]
  if (edge) made.push({ ...leaf, operator: edge } as Leaf)
  if (typeof value === 'number' && edge) {
    const moved = value === 0 ? [-0.1, 0.1] : NUDGES.map((share) => value * share)
    for (const other of moved) made.push({ ...leaf, value: other } as Leaf)
  }
  if (Array.isArray(value) && value.length > 1) {
    for (const one of value) made.push({ ...leaf, value: value.filter((v) => v !== one) } as Leaf)
  }
  return made.map((changed) => [
    changed,
    `${fact} ${operator} ${JSON.stringify(value)} became ${changed.operator} ${JSON.stringify(changed.value)}`,
  ])
}
