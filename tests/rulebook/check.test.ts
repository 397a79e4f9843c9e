import { describe, expect, it } from 'vitest'
import { checkRulebook } from '../../src/rulebook/check.ts'
import { neverTrue } from '../../src/rulebook/check-never-true.ts'
import { buildSeeds, generateAnswers } from '../../src/rulebook/generate-answers.ts'
import { loadRulebook, type Rulebook } from '../../src/rulebook/load.ts'
import type { Condition, Leaf, Rule } from '../../src/rulebook/schema.ts'
import { conflictsOf } from '../../src/tools/rules-conflicts.ts'
import { printReport, rulesReport } from '../../src/tools/rules-report.ts'
import { sweepRules } from '../../src/tools/rules-sweep.ts'
import { rulebook, ruleTexts, STREET_V8, said } from '../support/rulebook.ts'

const leaf = (fact: string, operator: Leaf['operator'], value: Leaf['value']): Leaf => ({
  fact,
  operator,
  value,
})

describe('conditions that are never true', () => {
  it.each<[string, Condition]>([
    [
      'above 5 and below 3',
      { all: [leaf('boost', 'greaterThan', 5), leaf('boost', 'lessThan', 3)] },
    ],
    [
      'above 5 and at most 5',
      { all: [leaf('boost', 'greaterThan', 5), leaf('boost', 'lessThanInclusive', 5)] },
    ],
    [
      'two choices at once',
      { all: [leaf('use', 'equal', 'street'), leaf('use', 'equal', 'drag')] },
    ],
    [
      'a choice and not it',
      { all: [leaf('use', 'equal', 'street'), leaf('use', 'notIn', ['street', 'drag'])] },
    ],
    [
      'deeper down',
      { all: [{ all: [leaf('boost', 'greaterThan', 5)] }, leaf('boost', 'equal', 4)] },
    ],
    [
      'every way of an any',
      {
        any: [
          { all: [leaf('boost', 'greaterThan', 5), leaf('boost', 'lessThan', 3)] },
          { all: [leaf('boost', 'equal', 1), leaf('boost', 'equal', 2)] },
        ],
      },
    ],
  ])('%s', (_, condition) => {
    expect(neverTrue(condition)).not.toEqual([])
  })

  it.each<[string, Condition]>([
    [
      'at least 5 and at most 5',
      { all: [leaf('boost', 'greaterThanInclusive', 5), leaf('boost', 'lessThanInclusive', 5)] },
    ],
    [
      'one way of an any',
      {
        any: [
          leaf('boost', 'equal', 1),
          { all: [leaf('boost', 'equal', 1), leaf('boost', 'equal', 2)] },
        ],
      },
    ],
    [
      'overlapping lists',
      { all: [leaf('use', 'in', ['street', 'drag']), leaf('use', 'in', ['drag', 'track'])] },
    ],
  ])('but not %s', (_, condition) => {
    expect(neverTrue(condition)).toEqual([])
  })
})

/** The real rulebook with one rule put beside the others. */
function withRule(rule: object): Rulebook {
  return loadRulebook(ruleTexts().set('added.json', JSON.stringify([rule])))
}

const ADDED = {
  id: 'added-rule',
  title: 'A rule that a test has added',
  scope: 'route',
  because: 'Only the tests of the check ask for this.',
  source: { kind: 'practice' },
}

describe('reading the rulebook', () => {
  it('finds no fault in the real one', () => {
    expect(checkRulebook(rulebook).faults).toEqual([])
  })

  it('finds a rule that contradicts another on the same conditions', () => {
    const holds = rulebook.rules.find(({ id }) => id === 'holds-by-numbers') as Rule
    const spoilt = withRule({
      ...ADDED,
      conditions: holds.conditions,
      outcome: { effect: 'does-not-hold' },
    })
    expect(checkRulebook(spoilt).faults).toEqual([
      'main-caps/margins.json: holds-by-numbers: contradicts added-rule, which has the same conditions',
    ])
  })

  it('finds a rule that can never fire, by name', () => {
    const conditions = { all: [leaf('boost', 'greaterThan', 5), leaf('boost', 'lessThan', 3)] }
    const spoilt = withRule({ ...ADDED, conditions, outcome: { effect: 'against' } })
    expect(checkRulebook(spoilt).faults).toEqual([
      'added.json: added-rule: conditions: what is asked of boost is never true',
    ])
  })
})

describe('trying the rulebook on builds', () => {
  const builds = (count: number) => buildSeeds(count).map(generateAnswers)

  it('the same seed gives the same build, and neighbours differ', () => {
    expect(generateAnswers(12)).toEqual(generateAnswers(12))
    expect(generateAnswers(12)).not.toEqual(generateAnswers(13))
  })

  it('a small sweep finds no outcomes that fight', async () => {
    const sweep = await sweepRules(rulebook, builds(250), conflictsOf)
    expect([...sweep.conflicts.keys()]).toEqual([])
    expect(sweep.builds).toBeGreaterThan(240)
    // Nearly every rule speaks in so few builds already; the command tries more.
    const silent = [...sweep.fired].filter(([, count]) => count === 0)
    expect(silent.length).toBeLessThan(rulebook.rules.length / 4)
  })

  it('names a rule that stays silent, a route that is never called, and ends with faults', async () => {
    const conditions = { all: [leaf('boost', 'greaterThan', 57.9)] }
    const spoilt = withRule({ ...ADDED, conditions, outcome: { effect: 'against' } })
    const sweep = await sweepRules(spoilt, [said(STREET_V8)], conflictsOf)
    const report = rulesReport(spoilt, checkRulebook(spoilt), sweep)
    expect(report.faults).toContain('added.json: added-rule: never fires in 1 builds')
    expect(report.faults).toContain('routes.json: stronger-block: never called in 1 builds')
    expect(printReport(report)).toMatch(/Faults\n(.|\n)*\d+ faults\.\n$/)
  })

  it.each([
    [
      'a route that is called although a rule makes it impossible with all above it',
      {
        outcome: { effect: 'impossible' },
        conditions: {
          all: [leaf('route', 'in', ['steel-caps', 'four-bolt-conversion', 'stronger-block'])],
        },
      },
      /compression-13-on-ordinary-caps asks for steel-caps, and it is impossible with all above it/,
    ],
    [
      'a route that holds and does not',
      {
        outcome: { effect: 'does-not-hold' },
        conditions: { all: [leaf('route', 'equal', 'steel-caps')] },
      },
      /steel-caps: holds-by-numbers against added-rule/,
    ],
  ])('finds %s', async (_, rule, words) => {
    const spoilt = withRule({ ...ADDED, ...rule })
    const race = said({ ...STREET_V8, compressionRatio: 13.5, fuel: 'race-gasoline' })
    const sweep = await sweepRules(spoilt, [race], conflictsOf)
    expect([...sweep.conflicts.keys()].join('\n')).toMatch(words)
  })

  it('finds work that no must-do speaks of', async () => {
    const spoilt = {
      ...rulebook,
      rules: rulebook.rules.filter(({ id }) => id !== 'new-caps-line-bore'),
    }
    const race = said({ ...STREET_V8, compressionRatio: 13.5, fuel: 'race-gasoline' })
    const sweep = await sweepRules(spoilt, [race], conflictsOf)
    expect([...sweep.conflicts.keys()]).toEqual([
      'steel-caps brings line-bore, and the must-do list lacks it',
    ])
  })
})
