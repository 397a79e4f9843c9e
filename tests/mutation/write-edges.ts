/**
 * Writes tests/rulebook/edges.json anew from the rules as they are. What it writes is to be read
 * against the sources that the rules name before it is committed.
 */
import { writeFileSync } from 'node:fs'
import { factsIn, leaves } from '../../src/rulebook/conditions.ts'
import { type FactValue, isTrue } from '../../src/rulebook/evaluate.ts'
import type { Leaf, Rule } from '../../src/rulebook/schema.ts'
import { rulebook } from '../support/rulebook.ts'
import { mutantsOf } from './rule-mutants.ts'

const MOST = 60_000
/** As near to a threshold as a reading is. */
const NEAR = 0.01

const edges = Object.fromEntries(rulebook.rules.map((rule) => [rule.id, edgesOf(rule)]))
const text = JSON.stringify(edges, null, 1).replace(/\[\s+([^[\]]*?)\s+\]/g, (_, row: string) => {
  return `[${row.replace(/\s*\n\s*/g, ' ')}]`
})
writeFileSync(new URL('../rulebook/edges.json', import.meta.url), `${text}\n`)

/** A few rows that tell the rule from every slip in it that can be told. */
function edgesOf(rule: Rule) {
  const facts = factsIn(rule.conditions)
  const rows = product(facts.map((fact) => candidates(fact, leaves(rule.conditions))))
  const judge = (one: Rule, row: readonly FactValue[]) =>
    isTrue(one.conditions, new Map(facts.map((name, n) => [name, row[n] as FactValue])))
  const truths = rows.map((row) => judge(rule, row))
  const chosen = new Set<number>([truths.indexOf(true), truths.indexOf(false)])
  for (const { rule: mutant } of mutantsOf(rule)) {
    const tells = (n: number) => judge(mutant, rows[n] as FactValue[]) !== truths[n]
    if ([...chosen].some(tells)) continue
    const found = rows.findIndex((_, n) => tells(n))
    if (found >= 0) chosen.add(found)
  }
  const picked = (truth: boolean) =>
    [...chosen].filter((n) => n >= 0 && truths[n] === truth).map((n) => rows[n])
  return { facts, fires: picked(true), silent: picked(false) }
}

function candidates(fact: string, all: readonly Leaf[]): FactValue[] {
  const found = new Set<FactValue>()
  for (const { fact: left, value } of all) {
    const other = typeof value === 'object' && 'fact' in value ? value.fact : undefined
    if (other !== undefined && (left === fact || other === fact))
      for (const n of [1, 2, 3]) found.add(n)
    if (left !== fact || other !== undefined) continue
    for (const one of [value].flat() as FactValue[]) {
      found.add(one)
      if (typeof one === 'boolean') found.add(!one)
      if (typeof one === 'string') found.add('another')
      if (typeof one !== 'number') continue
      const step = Math.max(Math.abs(one) * NEAR, one === 0 ? NEAR : 0)
      for (const near of [one - step, one + step]) found.add(Number(near.toPrecision(6)))
    }
  }
  return [...found]
}

function product(lists: readonly FactValue[][]): FactValue[][] {
  let rows: FactValue[][] = [[]]
  for (const list of lists) rows = rows.flatMap((row) => list.map((one) => [...row, one]))
  if (rows.length > MOST) throw new RangeError(`${rows.length} rows are too many`)
  return rows
}
