import { describe, expect, it } from 'vitest'
import { factsIn } from '../../src/rulebook/conditions.ts'
import { isTrue } from '../../src/rulebook/evaluate.ts'
import { rulebook } from '../support/rulebook.ts'
import { EDGES, rowsOf } from './edges.ts'

describe('where each rule begins and ends to speak', () => {
  it('is written for every rule, and for no other', () => {
    expect(Object.keys(EDGES).sort()).toEqual(rulebook.rules.map(({ id }) => id).sort())
  })

  it.each(rulebook.rules.map((rule) => [rule.id, rule] as const))('%s', (id, { conditions }) => {
    expect(EDGES[id]?.facts).toEqual(factsIn(conditions))
    for (const { facts, speaks } of rowsOf(id)) {
      expect([Object.fromEntries(facts), isTrue(conditions, facts)]).toEqual([
        Object.fromEntries(facts),
        speaks,
      ])
    }
  })
})
