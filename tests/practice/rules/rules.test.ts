import { describe, expect, it } from 'vitest'
import type { Assessment } from '../../../shared/assessment.ts'
import { assess } from '../../../src/assess.ts'
import type { Rule } from '../../../src/rulebook/schema.ts'
import { routeOf, rulebook, said } from '../../support/rulebook.ts'
import { askedOf, CASES, type Case, RULE_CASES, ruleOf, speaks } from './cases.ts'

describe('rules, by whole builds on either side of what they say', () => {
  it('has builds for every rule of the rulebook', () => {
    const named = new Set(RULE_CASES.map(({ rule }) => rule))
    expect(rulebook.rules.map(({ id }) => id).filter((id) => !named.has(id))).toEqual([])
  })

  it.each(CASES.map((one) => [one.name, one] as const))('%s', async (_, one) => {
    const rule = ruleOf(one)
    const { asked, wouldBe } = await askedOf(one)
    expect(asked.length).toBeGreaterThan(0)
    if (one.route && ['choice', 'follow-on'].includes(rule.scope)) expect(wouldBe).toBe(one.route)
    for (const [fact, [low, high]] of Object.entries(one.where)) {
      const value = Number(asked[0]?.facts.get(fact))
      expect(value, `${fact}: the row has moved`).toBeGreaterThanOrEqual(low)
      expect(value, `${fact}: the row has moved`).toBeLessThanOrEqual(high)
    }
    expect(speaks(rule, asked)).toBe(one.speaks)
  })
})

// What asks for a stronger route, and what money says, shows in the route that is called.
const SHOWN = ['caution', 'contradiction', 'must-do', 'for', 'against', 'does-not-hold']
const shown = CASES.filter((one) => SHOWN.includes(ruleOf(one).outcome.effect))

describe('what a rule says reaches the person', () => {
  const impossible = CASES.filter(
    (one) => one.speaks && ruleOf(one).outcome.effect === 'impossible',
  )
  it.each(impossible.map((one) => [one.name, one] as const))('%s', async (_, one) => {
    const found = await assess(rulebook, said(one.answers), { withoutWhatIf: true })
    expect(reported(found, one).possible).toBe(false)
    expect(found.call.route).not.toBe(one.route)
  })

  it.each(shown.map((one) => [one.name, one] as const))('%s', async (_, one) => {
    const found = await assess(rulebook, said(one.answers), { withoutWhatIf: true })
    expect(isSeen(found, one)).toBe(one.speaks)
  })
})

/** Whether the assessment shows a rule, wherever rules of its kind are shown. */
function isSeen(found: Assessment, one: Case): boolean {
  const rule = ruleOf(one)
  const ids = (findings: readonly { rule: string }[]) => findings.map((finding) => finding.rule)
  switch (rule.outcome.effect) {
    case 'caution':
      return ids(found.cautions).includes(rule.id)
    case 'contradiction':
      return ids(found.contradictions).includes(rule.id)
    case 'must-do':
      return found.call.followOn.some((step) => step.id === stepOf(rule))
    case 'for':
      return ids(reported(found, one).for).includes(rule.id)
    case 'against':
      return ids(reported(found, one).against).includes(rule.id)
    case 'does-not-hold':
      return !reported(found, one).holds
    default:
      throw new RangeError(`${rule.id} shows in the route that is called`)
  }
}

function stepOf({ outcome }: Rule): string | undefined {
  return outcome.effect === 'must-do' ? outcome.id : undefined
}

function reported(found: Assessment, { route, name }: Case) {
  if (!route) throw new RangeError(`${name} names no route`)
  return routeOf(found, route)
}
