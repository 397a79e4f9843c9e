import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'
import { isRevised } from './revisions.ts'

/**
 * "Bore 4.030, no wait, 4.040": a figure after a correction is the last fact's, a bare one right
 * after it, one whose unit says as much further on. "Six grand, call it 6,500": so is one that
 * says the last figure anew, and takes its place.
 */
export function readCorrected(figure: Figure, parts: Parts, into: Findings): boolean {
  const { scopes, input } = parts
  if (figure.ratio) return false
  const last = into.readings
    .filter(({ to }) => to <= figure.from)
    .sort((a, b) => a.to - b.to)
    .at(-1)
  if (!last) return false
  const isSince = (at: number): boolean =>
    at >= last.to && scopes.sentence[at] === scopes.sentence[figure.from]
  const marked = (kind: 'correction' | 'restated'): boolean =>
    scopes.markers.some(
      ({ meanings, from, to }) =>
        meanings.includes(kind) &&
        ((to <= figure.from && (figure.from - to <= 3 || (figure.unit && isSince(from)))) ||
          (kind === 'restated' && from === figure.to)),
    )
  const anew = marked('restated')
  const found =
    anew || marked('correction') || isRevised(figure, parts)
      ? candidateFor(last.key, figure, input.money)
      : undefined
  if (!found || !('answer' in found) || (figure.unit && !found.unitSaid)) return false
  if (anew) into.readings.splice(into.readings.indexOf(last), 1)
  into.readings.push({ ...last, answer: found.answer, from: figure.from, to: figure.to })
  return true
}

/** Where words take back what was said before them. */
export function correctionsIn({ scopes }: Parts): number[] {
  return scopes.markers
    .filter(({ meanings }) => meanings.includes('correction'))
    .map(({ from }) => from)
}

/** "The gate is 10, I turn it up to 18": where it is turned to counts. */
export function turnsIn({ scopes, tokens }: Parts): number[] {
  return scopes.markers
    .filter(({ meanings, to }) => meanings.includes('changing') && tokens[to]?.text === 'to')
    .map(({ from }) => from)
}

/** Whether a figure stands after a correction that another of its unit stands before. */
export function mends({ from, unit }: Figure, open: readonly Figure[], parts: Parts): boolean {
  const { sentence } = parts.scopes
  if (unit?.kind !== 'unit') return false
  const cut = correctionsIn(parts).find((at) => at < from && sentence[at] === sentence[from])
  return open.some(
    (other) =>
      cut !== undefined &&
      other.to <= cut &&
      sentence[other.from] === sentence[from] &&
      other.unit?.kind === 'unit' &&
      other.unit.symbol === unit.symbol,
  )
}
