import type { RouteId } from '../../shared/route-ids.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { decide } from '../../src/call/decide.ts'
import { followOnRules, followOnTable } from '../../src/call/follow-on.ts'
import type { DecideInput } from '../../src/call/look.ts'
import { lowerTarget } from '../../src/call/lower-target.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import { factsIn } from '../../src/rulebook/conditions.ts'
import { isTrue, type Readable } from '../../src/rulebook/evaluate.ts'
import { runRulesNow } from '../../src/rulebook/run.ts'
import type { Rule, Scope } from '../../src/rulebook/schema.ts'
import { rulebook, said } from './rulebook.ts'

/** Facts that the rules of one scope were asked about. */
export interface Asked {
  readonly scope: Scope
  readonly facts: Readable
}

/** Every question that a build puts to the rulebook, and the route that would be called. */
export async function rulesAsked(
  raw: Readonly<Record<string, unknown>>,
): Promise<{ asked: readonly Asked[]; wouldBe: RouteId; called: RouteId | null }> {
  const asked: Asked[] = []
  const answers = said(raw)
  const input: DecideInput = {
    answers,
    trials: trialsOf(buildFromAnswers(rulebook, answers), rulebook),
    rulebook,
    run: (rules, scope, facts) => {
      asked.push({ scope, facts })
      return runRulesNow(rules, scope, facts)
    },
    system: 'us',
    everyRoute: true,
  }
  const decision = await decide(input)
  const lowered = lowerTarget(input.trials, rulebook)
  await followOnRules(input, followOnTable(input, decision, lowered))
  return { asked, wouldBe: decision.wouldBe, called: decision.route }
}

/** Whether a rule speaks to facts; it is not asked where one that it reads is not known. */
export function speaksTo(rule: Rule, { scope, facts }: Asked): boolean {
  if (rule.scope !== scope) return false
  return factsIn(rule.conditions).every((name) => facts.has(name)) && isTrue(rule.conditions, facts)
}
