import { choicesOf } from '../../shared/answers.ts'
import type { Call, CostReport, Finding, LiveFact } from '../../shared/assessment.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { choiceOf, figureOf, has } from '../build/build.ts'
import { computed, type FactTable, over } from '../facts/live-facts.ts'
import { findingOf, inOrder, sourceOf } from '../findings/collect.ts'
import { fillPlaces } from '../findings/fill-places.ts'
import { breakEvenChance } from '../mechanics/stake.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { say } from '../rulebook/places.ts'
import type { Route } from '../rulebook/schema.ts'
import type { Decision } from './decide.ts'
import { followOnRules, followOnTable, mustDoIds } from './follow-on.ts'
import { insteadOf } from './instead-of.ts'
import { strengthOf } from './ladder.ts'
import type { DecideInput } from './look.ts'
import type { LoweredTarget } from './lower-target.ts'
import { loweredText, loweredWords } from './lowered-text.ts'

/** What the report of a call is written from. */
export interface CallContext extends DecideInput {
  readonly decision: Decision
  readonly lowered: LoweredTarget
  readonly confidence: Call['confidence']
  readonly settledBy: string | null
  /** Open facts that move a lowered target most. */
  readonly movedBy: readonly FactKey[]
}

/** The call in words: the route, why, what must be done, and why not the others. */
export async function callReport(context: CallContext): Promise<Call> {
  const { decision, rulebook } = context
  const route = rulebook.routes.find(({ id }) => id === decision.wouldBe)
  if (!route) throw new RangeError(`no route is called ${decision.wouldBe}`)
  const table = followOnTable(context, decision, context.lowered)
  const words = wordsOf(route, context)
  const mustDo = mustDoIds(await followOnRules(context, table))
  const withheld = decision.route === null
  return {
    route: decision.route,
    title: withheld ? rulebook.callWords.withheld.title : words.title,
    sentence: withheld
      ? withheldSentence(context)
      : fillPlaces(words.call, sentenceTable(context, table)),
    confidence: context.confidence,
    settledBy: context.settledBy,
    ...targetMoves(context),
    reasons: withheld ? [] : reasonsFor(context),
    mustDo: withheld ? [] : mustDo,
    followOn: withheld ? [] : mustDo.map((id) => followOn(rulebook, id)),
    insteadOf: withheld ? [] : insteadOf(context),
  }
}

/** The route's title and call, as they fit this engine and a target that is found or not. */
function wordsOf(route: Route, { lowered, decision }: CallContext): Pick<Route, 'title' | 'call'> {
  if (route.id === 'lower-the-target') return loweredWords(route, lowered, true)
  const isSplit = decision.buildTable.get('splitCase')?.value === true
  return (isSplit ? route.splitCase : undefined) ?? route
}

/** A settled route says nothing of how far a target goes down. */
function targetMoves({ decision, lowered, movedBy, rulebook }: CallContext): Partial<Call> {
  if (decision.route !== 'lower-the-target' || !lowered.found || movedBy.length === 0) return {}
  const facts = movedBy.map((key) => fact(key).short).join(', ')
  return { targetMoves: say(rulebook.callWords.lowered.moves, { facts }) }
}

function withheldSentence({ decision, rulebook }: CallContext): string {
  const titles = decision.buildRules.flatMap(({ outcome, title }) =>
    outcome.effect === 'contradiction' && outcome.call === 'withhold' ? [title] : [],
  )
  const contradictions = titles.join('; ').toLowerCase()
  return say(rulebook.callWords.withheld.sentence, { contradictions })
}

/** Facts of the called route, with the words that its sentence needs. */
function sentenceTable(context: CallContext, base: FactTable): FactTable {
  const { rulebook, system, trials } = context
  const table = new Map<string, LiveFact>()
  const words = { currency: trials.build.currency, system }
  const use = choicesOf(fact('use'))[choiceOf(trials.build, 'use')] ?? ''
  table.set('useText', computed(rulebook, 'useText', use, { ...words, text: use.toLowerCase() }))
  const { work } = trials.trial(context.decision.wouldBe)
  const machining = machiningText(work, rulebook)
  table.set('machiningText', computed(rulebook, 'machiningText', machining, words))
  const lowered = loweredText(context)
  table.set('loweredText', computed(rulebook, 'loweredText', lowered, { ...words, text: lowered }))
  const { asks, trial } = context.lowered
  table.set('loweredHoldsIn', computed(rulebook, 'loweredHoldsIn', trial.result.holdsIn, words))
  table.set('practiceText', computed(rulebook, 'practiceText', asks?.title ?? '', words))
  return over({ get: (name) => table.get(name), value: (name) => table.get(name)?.value }, base)
}

/** What a kept cap still needs at the shop, as the sentence of the call says it. */
function machiningText(work: readonly string[], { callWords: { kept } }: Rulebook): string {
  if (work.includes('line-bore')) return kept.bored
  return work.includes('line-hone') ? kept.honed : ''
}

function followOn({ followOn: texts }: Rulebook, id: string): Call['followOn'][number] {
  const entry = texts[id]
  if (!entry) throw new RangeError(`follow-on.json has no ${id}`)
  return { id, title: entry.title, text: entry.text, source: sourceOf(entry.source) }
}

/** The smallest sufficient reasons: what the route's own rules say for it, what practice asked, what money said. */
function reasonsFor({ decision, rulebook }: CallContext): Finding[] {
  const verdict = decision.verdicts.get(decision.wouldBe)
  const own =
    decision.wouldBe === 'lower-the-target'
      ? nothingHolds(decision)
      : (verdict?.fired ?? [])
          .filter(({ outcome }) => outcome.effect === 'for')
          .map((rule) => findingOf(rule, (verdict as NonNullable<typeof verdict>).table))
  const practice = decision.buildRules
    .filter(
      ({ outcome }) =>
        outcome.effect === 'at-least' &&
        strengthOf(rulebook, outcome.route) <= strengthOf(rulebook, decision.wouldBe),
    )
    .map((rule) => findingOf(rule, decision.buildTable))
  const money = decision.choiceRules
    .filter(({ outcome }) => decision.steppedUp || outcome.effect !== 'step-up')
    .map((rule) => findingOf(rule, decision.choiceTable))
  return [...inOrder(practice), ...inOrder(money), ...inOrder(own)]
}

/** Why each possible route was refused; said once for each rule, for the present hardware first. */
function nothingHolds({ verdicts }: Decision): Finding[] {
  const keep = verdicts.get('keep-caps-and-bolts')
  return (keep?.fired ?? [])
    .filter(({ outcome }) => outcome.effect === 'does-not-hold')
    .map((rule) => findingOf(rule, (keep as NonNullable<typeof keep>).table))
}

/** Cost of the called route against what is at stake. */
export function costReport({ decision, trials }: CallContext): CostReport {
  const { build } = trials
  const cost = trials.trial(decision.wouldBe).cost()
  const stake = figureOf(build, 'invested')
  const budget = has(build, 'budget') ? figureOf(build, 'budget') : null
  return {
    low: cost.low,
    likely: cost.likely,
    high: cost.high,
    currency: build.currency,
    route: decision.route,
    items: cost.items,
    stake,
    stakeState: build.facts.invested.state === 'said' ? 'said' : 'assumed',
    breakEvenChance: stake > 0 ? Math.min(1, breakEvenChance(cost.likely, stake)) : null,
    budget,
    beforeTax: figureOf(build, 'taxRate') === 0,
  }
}
