import type { Call } from '../../shared/assessment.ts'
import { printMoney } from '../../shared/print.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import { findingOf } from '../findings/collect.ts'
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
  if (refusal) return findingOf(refusal, verdict.table).text
  const asked = practiceAsksMore(context, verdict)
  if (asked) return findingOf(asked, decision.buildTable).text
  return ofMoney(context, verdict)
}

/** The plan is kept: with what is there, or with what is called. */
function notLowered(context: CallContext): string {
  if (context.decision.wouldBe === 'keep-caps-and-bolts') {
    return 'The present caps and fasteners hold the plan as it is, so nothing of it has to be given up.'
  }
  const { found, asks, trial } = context.lowered
  if (asks) {
    return `No lower target answers what practice asks: “${asks.title}”. By the numbers the present caps and fasteners would hold in ${trial.result.holdsIn} of 100 sampled cases at ${loweredText(context)}.`
  }
  const holds = `The present caps and fasteners hold ${loweredText(context)}`
  return found ? `${holds}: less than the plan, which the call keeps.` : `${holds}.`
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
function ofMoney({ decision, trials }: CallContext, { trial, table }: RouteVerdict): string {
  const broke = withEffect(decision.choiceRules, 'cannot-afford')
  const price = table.get('costLikely')?.text ?? ''
  if (broke) {
    const budget = decision.buildTable.get('budget')?.text ?? ''
    return `It would hold, but costs ${price}, and the budget is ${budget}.`
  }
  const insurance = withEffect(decision.choiceRules, 'step-up')
  const called = trials.likelyCost(decision.wouldBe)
  if (decision.steppedUp && insurance && trial.likelyCost < called) {
    return findingOf(insurance, decision.choiceTable).text
  }
  if (trial.likelyCost > called) {
    const more = printMoney(trial.likelyCost - called, trials.build.currency)
    const extra = called > 0 ? `, ${more} more than the call` : ''
    return `It holds as well, but costs ${price}${extra}; nothing in this build asks for it.`
  }
  return trial.route.strength > strengthOfCalled(decision)
    ? 'It holds, and the called route changes less for the same money.'
    : 'It would hold by the numbers, but it changes less than a route that does not, so it is not trusted with more.'
}

function strengthOfCalled({ verdicts, wouldBe }: Decision): number {
  return verdicts.get(wouldBe)?.trial.route.strength ?? 0
}

function withEffect(rules: readonly Rule[], effect: string): Rule | undefined {
  return rules.find(({ outcome }) => outcome.effect === effect)
}
