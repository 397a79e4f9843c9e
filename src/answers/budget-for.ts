import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import type { Pair } from './pairing.ts'
import type { Figure } from './plain-figure.ts'

export function isPartPrice({ use }: Pair): boolean {
  return use.kind === 'fact' && (use.key === 'capsPrice' || use.key === 'studsPrice')
}

/**
 * "My budget for caps, studs and machine work is 1,800": what it is for may be a long list, in
 * which nothing is priced.
 *
 * @returns whether the figure was read
 */
export function readBudgetFor(figure: Figure, parts: Parts, into: Findings): boolean {
  const { figureMentions, figures, tokens, scopes, input } = parts
  const index = figures.indexOf(figure)
  const before = figures[index - 1]?.to ?? 0
  const budget = figureMentions.find(
    ({ from, to, meanings }) =>
      from >= before &&
      to <= figure.from &&
      scopes.sentence[from] === scopes.sentence[figure.from] &&
      tokens.slice(from, to + 1).some(({ text }) => text === 'for' || text === 'on') &&
      meanings.some((m) => m.kind === 'cue' && m.fact === 'budget'),
  )
  // "1,800 bucks budget for the caps, studs are 175": the figure before it is the budget.
  const taken = into.readings.some(({ key }) => key === 'budget')
  const led = budget && figures.some(({ to, unit }) => to === budget.from && unit?.kind === 'money')
  if (taken || led) return false
  const found = budget && candidateFor('budget', figure, input.money)
  if (!budget || !found || !('answer' in found) || !found.unitSaid) return false
  const { from } = budget
  into.readings.push({ key: 'budget', answer: found.answer, from, to: figure.to, strength: 3 })
  return true
}
