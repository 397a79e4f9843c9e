import type { Rulebook } from '../rulebook/load.ts'
import type { Rule } from '../rulebook/schema.ts'
import { type FactLabels, lowerFirst } from './rule-words.ts'

/** What a rule does when it applies, in a sentence or two. */
export function outcomeInWords(rule: Rule, rulebook: Rulebook, labels: FactLabels): string {
  const { outcome } = rule
  switch (outcome.effect) {
    case 'at-least':
      return `No weaker route than “${routeTitle(outcome.route, rulebook)}” is called.`
    case 'contradiction':
      return contradiction(outcome, labels)
    case 'must-do':
      return `“${rulebook.followOn[outcome.id]?.title ?? outcome.id}” goes on the list of what must be done.`
    default:
      return PLAIN[outcome.effect]
  }
}

const PLAIN = {
  caution: 'A caution beside the call. It does not choose a route.',
  impossible: 'The route is not possible for this build, and is left out with this reason.',
  'does-not-hold': 'The route is taken not to hold, whatever its margins are.',
  for: 'A reason for the route, shown with it.',
  against: 'A reason against the route, shown with it.',
  'step-up': 'The next route up is called in its place, as insurance.',
  say: 'It is said beside the call. The call stays as it is.',
  'cannot-afford': 'The route is passed over, because the money does not reach.',
} as const

function contradiction(
  outcome: { between: string[]; likelierSlip: string | null; call: 'withhold' | 'hedge' },
  labels: FactLabels,
): string {
  const name = (key: string) => lowerFirst(labels(key)?.label ?? key)
  const pair = outcome.between.map(name)
  const both = `${pair.slice(0, -1).join(', ')} and ${pair.at(-1)}`
  const effect =
    outcome.call === 'withhold'
      ? 'No call is made until one of them is put right.'
      : 'The call is made, but is called likely and no more while they stand.'
  const slip = outcome.likelierSlip ? ` The likelier slip is ${name(outcome.likelierSlip)}.` : ''
  return `A contradiction between ${both}. ${effect}${slip}`
}

function routeTitle(id: string, rulebook: Rulebook): string {
  return rulebook.routes.find((route) => route.id === id)?.title ?? id
}
