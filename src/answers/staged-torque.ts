import { candidateFor } from './candidates.ts'
import { isFastened } from './fastened.ts'
import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'

const TORQUES = ['lb ft', 'N m']
/** Furthest that the word of the last step stands from its figure. */
const NEAR = 3

/**
 * "Seventy foot pounds on the first pass and then a hundred and five for the final":
 * of torques that climb to one which is called the last, that one is what the
 * fasteners get; those before it are steps on the way.
 *
 * @returns the figures that were read or set aside
 */
export function readStagedTorque(
  open: readonly Figure[],
  asked: boolean,
  parts: Parts,
  into: Findings,
): readonly Figure[] {
  const { scopes, input } = parts
  const steps = open.filter((figure) => isStep(figure, parts))
  const last = steps.filter((figure) => isLast(figure, steps, parts)).at(-1)
  if (!last) return []
  const here = scopes.sentence[last.from]
  const before = steps.filter(
    ({ from, value }) =>
      from < last.from &&
      scopes.sentence[from] === here &&
      value < last.value &&
      value * 4 > last.value,
  )
  const unit = last.unit ?? before.find((figure) => figure.unit)?.unit ?? afterwards(last, steps)
  const named = asked || isFastened(last, parts) || [last, ...before].some((f) => isNamed(f, parts))
  if (before.length === 0 || !named || isOfOther([last, ...before], parts)) return []
  const found = candidateFor('fastenerTorque', unit ? { ...last, unit } : last, input.money)
  if (!found || !('answer' in found)) return []
  const { from, to } = last
  into.readings.push({ key: 'fastenerTorque', answer: found.answer, from, to, strength: 3 })
  for (const step of before) {
    into.doubts.push({ from: step.from, to: step.to, why: 'a step on the way to the last torque' })
  }
  return [last, ...before]
}

function afterwards(last: Figure, steps: readonly Figure[]): Figure['unit'] {
  return steps.find(({ from, unit }) => from > last.from && unit)?.unit
}

/** A torque, or a bare whole number that may be one. */
function isStep({ unit, decimal, ratio, value, low }: Figure, { tokens, lexicon }: Parts): boolean {
  if (ratio || low !== undefined) return false
  if (unit) return unit.kind === 'unit' && TORQUES.includes(unit.symbol)
  const spoken = tokens.some(({ text }) => lexicon.words.fasteners.torques.has(text))
  return spoken && !decimal && value >= 10 && value <= 200
}

/** "105 for the final", "final 95", "100 to finish". */
function isLast(
  { from, to }: Figure,
  steps: readonly Figure[],
  { tokens, lexicon }: Parts,
): boolean {
  const { last } = lexicon.words.fasteners
  const within = (at: number): boolean => steps.some((one) => one.from <= at && at < one.to)
  for (let at = to; at < to + NEAR && !within(at); at += 1) {
    if (last.has(tokens[at]?.text ?? '')) return true
    if (tokens[at]?.kind === 'mark') break
  }
  for (let at = from - 1; at >= from - NEAR && at >= 0 && !within(at); at -= 1) {
    if (last.has(tokens[at]?.text ?? '')) return true
    if (tokens[at]?.kind === 'mark') break
  }
  return false
}

function isNamed(figure: Figure, { pairs }: Parts): boolean {
  return pairs.some(
    (pair) =>
      pair.figure === figure && pair.use.kind === 'fact' && pair.use.key === 'fastenerTorque',
  )
}

/** Steps of rods and heads are none of the mains'. */
function isOfOther([first]: readonly Figure[], { tokens, scopes, lexicon }: Parts): boolean {
  const here = scopes.sentence[first?.from ?? 0]
  const { otherParts } = lexicon.words.fasteners
  return tokens.some(({ text }, at) => scopes.sentence[at] === here && otherParts.has(text))
}
