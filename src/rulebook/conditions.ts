import type { Condition, Leaf } from './schema.ts'

/** Every comparison in a condition, left to right. */
export function leaves(condition: Condition): Leaf[] {
  if ('all' in condition) return condition.all.flatMap(leaves)
  if ('any' in condition) return condition.any.flatMap(leaves)
  if ('not' in condition) return leaves(condition.not)
  return [condition]
}

/** Names of the facts that a comparison reads. */
export function factsOfLeaf({ fact, value }: Leaf): string[] {
  return typeof value === 'object' && 'fact' in value ? [fact, value.fact] : [fact]
}

/** Names of the facts that a condition reads, each once. */
export function factsIn(condition: Condition): string[] {
  return [...new Set(leaves(condition).flatMap(factsOfLeaf))]
}
