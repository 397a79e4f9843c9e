import { Engine } from 'json-rules-engine'
import { describe, expect, it } from 'vitest'
import { ROUTE_IDS } from '../../shared/route-ids.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { buildValues } from '../../src/facts/live-facts.ts'
import { newMemory } from '../../src/facts/memory.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { randomStream } from '../../src/mechanics/seeded-random.ts'
import { factsIn, leaves } from '../../src/rulebook/conditions.ts'
import type { FactValue } from '../../src/rulebook/evaluate.ts'
import { generateAnswers } from '../../src/rulebook/generate-answers.ts'
import { runRules, runRulesNow } from '../../src/rulebook/run.ts'
import type { Rule, Scope } from '../../src/rulebook/schema.ts'
import { rulebook } from '../support/rulebook.ts'

const SCOPES: readonly Scope[] = ['build', 'route', 'choice', 'follow-on']
const ids = (rules: readonly Rule[]) => rules.map(({ id }) => id)

/** Flat facts at random, near the figures that the rules compare with, some of them missing. */
function randomFacts(seed: number): Map<string, FactValue> {
  const random = randomStream(seed)
  const facts = new Map<string, FactValue>()
  const compared = rulebook.rules.flatMap(({ conditions }) => leaves(conditions))
  const values = new Map<string, FactValue[]>()
  for (const { fact, value } of compared) {
    const list = values.get(fact) ?? []
    for (const one of Array.isArray(value) ? value : [value])
      if (typeof one !== 'object') list.push(one)
    values.set(fact, list)
    if (typeof value === 'object' && 'fact' in value && !values.has(value.fact))
      values.set(value.fact, [50])
  }
  for (const [name, list] of values) {
    const near = list.length > 0 ? list[random.below(list.length)] : 50
    if (random.fraction() < 0.02) continue
    if (typeof near === 'number') facts.set(name, near + [-1, 0, 0, 1][random.below(4)]!)
    else if (typeof near === 'boolean') facts.set(name, random.fraction() < 0.5)
    else facts.set(name, random.fraction() < 0.8 ? (near as string) : 'something else')
  }
  return facts
}

describe('running the rules', () => {
  it('the engine and the synchronous evaluator agree over thousands of random facts', async () => {
    let fired = 0
    for (let seed = 1; seed <= 1500; seed++) {
      const facts = randomFacts(seed)
      for (const scope of SCOPES) {
        const now = ids(runRulesNow(rulebook.rules, scope, facts))
        if (seed % 10 === 0) expect(ids(await runRules(rulebook.rules, scope, facts))).toEqual(now)
        else if (ids(await runRules(rulebook.rules, scope, facts)).join() !== now.join())
          throw new Error(`seed ${seed}, scope ${scope}`)
        fired += now.length
      }
    }
    expect(fired).toBeGreaterThan(10_000)
  })

  it('they agree on real builds too', async () => {
    const memory = newMemory()
    let judged = 0
    for (let seed = 1; judged < 60; seed++) {
      try {
        const trials = trialsOf(buildFromAnswers(rulebook, generateAnswers(seed)), rulebook, memory)
        const facts = new Map<string, FactValue>([...buildValues(trials.build), ...trials.facts])
        const route = new Map([...facts, ...trials.trial('steel-caps').facts])
        for (const [scope, seen] of [
          ['build', facts],
          ['route', route],
        ] as const) {
          const now = ids(runRulesNow(rulebook.rules, scope, seen))
          expect(ids(await runRules(rulebook.rules, scope, seen))).toEqual(now)
        }
        judged++
      } catch (error) {
        if (!(error instanceof DomainError)) throw error
      }
    }
    expect(judged).toBe(60)
  })

  it('says what the engine says of all rules of the scope, given as they are written', async () => {
    let fired = 0
    for (let seed = 1; seed <= 200; seed++) {
      const facts = randomFacts(seed)
      facts.set('route', ROUTE_IDS[seed % ROUTE_IDS.length]!)
      for (const scope of SCOPES) {
        const known = rulebook.rules.filter(
          (rule) =>
            rule.scope === scope && factsIn(rule.conditions).every((name) => facts.has(name)),
        )
        const engine = new Engine()
        for (const { id, conditions } of known) {
          engine.addRule({ name: id, conditions: conditions as never, event: { type: id } })
        }
        const { results, failureResults } = await engine.run(Object.fromEntries(facts))
        expect(results.length + failureResults.length).toBe(known.length)
        const plain = new Set(results.map(({ name }) => name))
        const expected = ids(known).filter((id) => plain.has(id))
        expect(ids(await runRules(rulebook.rules, scope, facts))).toEqual(expected)
        expect(ids(runRulesNow(rulebook.rules, scope, facts))).toEqual(expected)
        fired += expected.length
      }
    }
    expect(fired).toBeGreaterThan(1000)
  })

  it('runs that overlap do not disturb each other', async () => {
    const builds = Array.from({ length: 40 }, (_, seed) => randomFacts(seed + 1))
    const alone: string[][] = []
    for (const facts of builds) alone.push(ids(await runRules(rulebook.rules, 'route', facts)))
    const together = await Promise.all(
      builds.map(async (facts) => ids(await runRules(rulebook.rules, 'route', facts))),
    )
    expect(together).toEqual(alone)
  })

  it('a rule on a fact that is not known is not run, not even by notEqual', async () => {
    const facts = randomFacts(3)
    facts.delete('capMaterial')
    const silent = rulebook.rules.filter(({ conditions }) =>
      factsIn(conditions).includes('capMaterial'),
    )
    const fired = ids(await runRules(rulebook.rules, 'build', facts))
    expect(silent.length).toBeGreaterThan(0)
    for (const { id } of silent) expect(fired).not.toContain(id)
  })
})
