import { fromSi, toSi } from '../../shared/units.ts'
import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'

/** Shares that a driveline may lose; common practice, no published source. */
const LEAST = 5
const MOST = 40

/**
 * "425 hp at the wheels, figuring 15 percent driveline loss": power at the crank, by
 * the loss that was stated, with a word that it was converted. Without a stated loss
 * power at the wheels is no fact.
 *
 * @returns the figures that it took
 */
export function readWheelPower(parts: Parts, into: Findings): Figure[] {
  const { figures, scopes, tokens, input } = parts
  const wheel = figures.filter(({ unit }) => unit?.kind === 'wheel')
  const losses = figures.filter((figure) => isLoss(figure, parts))
  const [power, loss] = [wheel[0], losses[0]]
  if (!power || !loss || wheel.length > 1 || losses.length > 1) return []
  // "425 at the wheels. Figure 15 percent drivetrain loss."
  const apart = (scopes.sentence[loss.from] ?? 0) - (scopes.sentence[power.from] ?? 0)
  if (apart < 0 || apart > 1) return []
  if (scopes.outside[power.from] || input.negations.denies(power)) return []
  const symbol = /kw/.test(tokens[power.to - 1]?.text ?? '') ? 'kW' : 'hp'
  const crank = toSi(power.value, symbol) / (1 - loss.value / 100)
  const value = Number(fromSi(crank, symbol).toPrecision(3))
  const { low: _low, high: _high, ...plain } = power
  const unit = { kind: 'unit' as const, symbol, to: power.to }
  const found = candidateFor('targetPower', { ...plain, value, unit }, input.money)
  if (!found || !('answer' in found)) return []
  const [from, to] = [Math.min(power.from, loss.from), Math.max(power.to, loss.to)]
  into.readings.push({ key: 'targetPower', answer: found.answer, from, to, strength: 3 })
  into.doubts.push({
    from,
    to,
    why: `converted from the wheels by the loss you state: ${value} ${symbol} at the crank. Losses are seldom known so well`,
  })
  return [power, loss]
}

function isLoss({ unit, value, from, to }: Figure, { tokens, lexicon }: Parts): boolean {
  if (unit?.kind !== 'unit' || unit.symbol !== '%' || value < LEAST || value > MOST) return false
  const near = tokens.slice(Math.max(0, from - 4), to + 4)
  return near.some(({ text }) => lexicon.words.figures.lost.has(text))
}
