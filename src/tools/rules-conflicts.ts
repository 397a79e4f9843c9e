import type { RouteId } from '../../shared/route-ids.ts'
import { strengthOf } from '../call/ladder.ts'
import type { RouteVerdict } from '../call/look.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Rule } from '../rulebook/schema.ts'
import type { Judged } from './rules-sweep.ts'

/**
 * Outcomes of one build that cannot both be meant. Each is a sentence that names
 * the rules, so that the same fight in many builds counts as one.
 */
export function conflictsOf(judged: Judged, rulebook: Rulebook): string[] {
  return [
    ...calledAgainstRules(judged),
    ...holdsAndDoesNot(judged),
    ...askedInVain(judged, rulebook),
    ...weakerThanAsked(judged, rulebook),
    ...moneyFights(judged),
    ...workWithoutText(judged),
    ...withheldAndHedged(judged),
  ]
}

function fires(rules: readonly Rule[], effect: string): Rule[] {
  return rules.filter(({ outcome }) => outcome.effect === effect)
}

function names(rules: readonly Rule[]): string {
  return rules.map(({ id }) => id).join(', ')
}

function calledVerdict({ decision }: Judged): RouteVerdict {
  const verdict = decision.verdicts.get(decision.wouldBe)
  if (!verdict) throw new RangeError(`${decision.wouldBe} was not looked at`)
  return verdict
}

function calledAgainstRules(judged: Judged): string[] {
  const { wouldBe } = judged.decision
  const { fired, possible, holds } = calledVerdict(judged)
  if (wouldBe === 'lower-the-target') {
    return possible
      ? []
      : [`lower-the-target is impossible by ${names(fires(fired, 'impossible'))}`]
  }
  return [
    ...(possible
      ? []
      : [`${wouldBe} is called and impossible by ${names(fires(fired, 'impossible'))}`]),
    ...(holds
      ? []
      : [`${wouldBe} is called and does not hold by ${names(fires(fired, 'does-not-hold'))}`]),
  ]
}

/** A rule that says a route holds beside one that says it does not. */
function holdsAndDoesNot({ decision }: Judged): string[] {
  return [...decision.verdicts].flatMap(([route, { fired }]) => {
    const not = fires(fired, 'does-not-hold')
    const holds = fires(fired, 'for').filter(({ id }) => id.startsWith('holds'))
    return not.length > 0 && holds.length > 0
      ? [`${route}: ${names(holds)} against ${names(not)}`]
      : []
  })
}

/** Practice asks for a route that is impossible, and nothing stronger is possible either. */
function askedInVain({ decision }: Judged, rulebook: Rulebook): string[] {
  return fires(decision.buildRules, 'at-least').flatMap((rule) => {
    if (rule.outcome.effect !== 'at-least') return []
    const least = strengthOf(rulebook, rule.outcome.route)
    const open = [...decision.verdicts].some(
      ([id, { possible }]) =>
        id !== 'lower-the-target' && possible && strengthOf(rulebook, id) >= least,
    )
    return open
      ? []
      : [`${rule.id} asks for ${rule.outcome.route}, and it is impossible with all above it`]
  })
}

function weakerThanAsked({ decision }: Judged, rulebook: Rulebook): string[] {
  const strength = strengthOf(rulebook, decision.wouldBe)
  return fires(decision.buildRules, 'at-least').flatMap(({ id, outcome }) =>
    outcome.effect === 'at-least' && strengthOf(rulebook, outcome.route) > strength
      ? [`${id} asks for ${outcome.route}, and ${decision.wouldBe} is called`]
      : [],
  )
}

function moneyFights({ decision }: Judged): string[] {
  const { choiceRules, steppedUp, wouldBe } = decision
  const broke = fires(choiceRules, 'cannot-afford')
  return [
    ...(steppedUp && broke.length > 0
      ? [`insurance is called and ${names(broke)} refuses it`]
      : []),
    ...(broke.length > 0 && wouldBe !== 'lower-the-target'
      ? [`${names(broke)} fires and ${wouldBe} is called`]
      : []),
  ]
}

/** Work that the called route brings and that no must-do speaks of, and the other way round. */
function workWithoutText(judged: Judged): string[] {
  const { work } = calledVerdict(judged).trial
  return (['line-bore', 'line-hone'] as const).flatMap((item) => {
    const [brought, said] = [work.includes(item), judged.mustDo.includes(item)]
    if (brought === said) return []
    const route: RouteId = judged.decision.wouldBe
    return [
      `${route} ${brought ? 'brings' : 'does not bring'} ${item}, and the must-do list ${said ? 'has' : 'lacks'} it`,
    ]
  })
}

/** One pair of facts judged both ways at once. */
function withheldAndHedged({ decision }: Judged): string[] {
  const seen = new Map<string, Rule>()
  return fires(decision.buildRules, 'contradiction').flatMap((rule) => {
    const { outcome } = rule
    if (outcome.effect !== 'contradiction') return []
    const pair = [...outcome.between].sort().join(' and ')
    const other = seen.get(pair)
    seen.set(pair, rule)
    return other && other.outcome.effect === 'contradiction' && other.outcome.call !== outcome.call
      ? [`${rule.id} and ${other.id} judge ${pair} differently`]
      : []
  })
}
