import { readFileSync } from 'node:fs'
import { z } from 'zod'
import type { FactValue } from '../../src/rulebook/evaluate.ts'

const value = z.union([z.number(), z.string(), z.boolean()])
const edgesOfRule = z.strictObject({
  /** The facts that the rule reads, in the order of the rows. */
  facts: z.array(z.string()).min(1),
  /** Facts at which it speaks. */
  fires: z.array(z.array(value)).min(1),
  /** Facts, each next to one at which it speaks, at which it is silent. */
  silent: z.array(z.array(value)).min(1),
})

/**
 * Where each rule begins and ends to speak, written a second time beside the rules: a slip in a
 * threshold, an operator or a list is seen, and who means to move one says so twice.
 */
export const EDGES: Readonly<Record<string, z.output<typeof edgesOfRule>>> = z
  .record(z.string(), edgesOfRule)
  .parse(JSON.parse(readFileSync(new URL('./edges.json', import.meta.url), 'utf8')))

/** Every row of a rule's edges as facts, with whether the rule is to speak. */
export function rowsOf(id: string): { facts: Map<string, FactValue>; speaks: boolean }[] {
  const edges = EDGES[id]
  if (!edges) return []
  const { facts, fires, silent } = edges
  const named = (row: readonly FactValue[]) =>
    new Map(facts.map((name, n) => [name, row[n] as FactValue]))
  return [
    ...fires.map((row) => ({ facts: named(row), speaks: true })),
    ...silent.map((row) => ({ facts: named(row), speaks: false })),
  ]
}
