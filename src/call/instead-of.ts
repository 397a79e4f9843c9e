import type { Call } from '../../shared/assessment.ts'
import { printMoney } from '../../shared/print.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { textOf } from '../findings/collect.ts'
import { say } from '../rulebook/places.ts'
import type { Rule } from '../rulebook/schema.ts'
import type { CallContext } from './call-report.ts'
import type { Decision } from './decide.ts'
import { strengthOf } from './ladder.ts'
import type { RouteVerdict } from './look.ts'
import { loweredText } from './lowered-text.ts'

/**
 * Why each of the other routes is not called: the first that suffices of impossible,
 * does not hold, practice asks for more, the money does not reach, insurance, dearer.
 */
export function insteadOf(context: CallContext): Call['insteadOf'] {
  const { decision } = context
  return [...decision.verdicts].flatMap(([route, verdict]) =>
    route === decision.wouldBe ? [] : [{ route, why: whyNot(context, route, verdict) }],
  )
}

function whyNot(context: CallContext, route: RouteId, verdict: RouteVerdict): string {
  const { decision } = context
  if (route === 'lower-the-target') return notLowered(context)
  const refusal =
    withEffect(verdict.fired, 'impossible') ?? withEffect(verdict.fired, 'does-not-hold')
  if (refusal) return textOf(refusal, verdict.table)
  const asked = practiceAsksMore(context, verdict)
  if (asked) return textOf(asked, decision.buildTable)
  return ofMoney(context, verdict)
}

/** The plan is kept: with what is there, or with what is called. */
function notLowered(context: CallContext): string {
  const says = context.rulebook.callWords.insteadOf
  const { decision, lowered } = context
  if (lowered.asPlanned || decision.wouldBe === 'keep-caps-and-bolts') return says.planHolds
  const { found, asks, trial } = lowered
  const target = loweredText(context)
  if (asks) {
    const holdsIn = `${trial.result.holdsIn}`
    return say(says.practiceAsks, { asked: asks.title, holdsIn, target })
  }
  return say(found ? says.targetFound : says.targetNotFound, { target })
}

function practiceAsksMore(
  { decision, rulebook }: CallContext,
  { trial }: RouteVerdict,
): Rule | undefined {
  return decision.buildRules.find(
    ({ outcome }) =>
      outcome.effect === 'at-least' && strengthOf(rulebook, outcome.route) > trial.route.strength,
  )
}

/** Routes that hold and that nothing forbids: money decides between them. */
function ofMoney(
  { decision, trials, rulebook }: CallContext,
  { trial, table }: RouteVerdict,
): string {
  const says = rulebook.callWords.insteadOf
  const broke = withEffect(decision.choiceRules, 'cannot-afford')
  const price = table.get('costLikely')?.text ?? ''
  if (broke) {
    const budget = decision.buildTable.get('budget')?.text ?? ''
    return say(says.beyondBudget, { price, budget })
  }
  const insurance = withEffect(decision.choiceRules, 'step-up')
  const called = trials.likelyCost(decision.wouldBe)
  if (decision.steppedUp && insurance && trial.likelyCost < called) {
    return textOf(insurance, decision.choiceTable)
  }
  if (trial.likelyCost > called) {
    const more = printMoney(trial.likelyCost - called, trials.build.currency)
    return called > 0 ? say(says.dearerThanCall, { price, more }) : say(says.dearer, { price })
  }
  return trial.route.strength > strengthOfCalled(decision) ? says.changesMore : says.notTrusted
}

function strengthOfCalled({ verdicts, wouldBe }: Decision): number {
  return verdicts.get(wouldBe)?.trial.route.strength ?? 0
}

function withEffect(rules: readonly Rule[], effect: string): Rule | undefined {
  return rules.find(({ outcome }) => outcome.effect === effect)
}
