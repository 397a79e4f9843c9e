import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'
import { isPeakSpeed } from './read-figures.ts'

const TORQUES = ['lb ft', 'N m']
const POWERS = ['hp', 'kW']

/**
 * "Peak torque on the dyno was 480 lb ft at 4,300", "520 hp at 6200 and 495 lb ft at
 * 4400": the speed after an engine's torque is that of its peak, where the sentence
 * says so or tells its power beside it. A torque by itself may be any point of a
 * curve, and one at the wheels or of a wrench is none.
 */
export function readTorquePeak(figure: Figure, parts: Parts, into: Findings): boolean {
  const { figures, input, scopes, figureMentions } = parts
  const before = figures[figures.indexOf(figure) - 1]
  if (!before || !isIn(before, TORQUES) || !isPeakSpeed(figure, before, parts)) return false
  const here = scopes.sentence[figure.from]
  if (input.wheels.some((at) => scopes.sentence[at] === here)) return false
  const named = figureMentions.some(
    ({ from, to, meanings }) =>
      to <= before.from &&
      scopes.sentence[from] === here &&
      meanings.some((m) => m.kind === 'cue' && m.fact === 'torquePeakRpm'),
  )
  const power = figures.some((other) => isIn(other, POWERS) && scopes.sentence[other.from] === here)
  const found = named || power ? candidateFor('torquePeakRpm', figure, input.money) : undefined
  if (!found || !('answer' in found)) return false
  const { from, to } = figure
  into.readings.push({ key: 'torquePeakRpm', answer: found.answer, from, to, strength: 2 })
  return true
}

function isIn({ unit }: Figure, symbols: readonly string[]): boolean {
  return unit?.kind === 'unit' && symbols.includes(unit.symbol)
}
