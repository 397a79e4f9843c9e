import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import type { Figure } from './plain-figure.ts'
import type { FigureInput } from './read-figures.ts'
import type { Token } from './tokens.ts'

/** "350 V8", "383 stroker", "5.7 V8": a bare number right before what the engine is. */
export function readSizeBefore(
  figure: Figure,
  layoutAt: (at: number) => boolean,
  input: FigureInput,
  into: Findings,
): boolean {
  if (figure.unit || figure.ratio || figure.scaled || figure.inWords || figure.low !== undefined)
    return false
  const { sized: sizes, names } = input.lexicon.words.engines
  const next = input.tokens[figure.to]
  if (isNamedEngine(figure, input)) return pushSize(figure, input, into)
  if (next?.gap !== 'space' || input.tokens[figure.from - 1]?.text === '/') return false
  const sized = layoutAt(figure.to) || sizes.has(next.text) || names.has(next.text)
  const cubic = !figure.decimal && figure.value >= 90 && figure.value <= 900
  const tenths = Math.abs(figure.value * 10 - Math.round(figure.value * 10)) < 1e-6
  const litres = figure.decimal && tenths && figure.value >= 0.6 && figure.value <= 10
  if (!sized || !(cubic || litres)) return false
  return pushSize(figure, input, into)
}

function pushSize(figure: Figure, input: FigureInput, into: Findings): boolean {
  const found = candidateFor('displacement', figure, input.money)
  if (!found || !('answer' in found)) return false
  into.readings.push({
    key: 'displacement',
    answer: found.answer,
    from: figure.from,
    to: figure.to,
    strength: 2,
  })
  return true
}

/** So far on, in words, a message still opens. */
const OPENING = 4

/** "From a 408, naturally aspirated", "motor's a 355": the size by which an engine is called. */
function isNamedEngine(
  { value, decimal, from, to }: Figure,
  { tokens, lexicon }: FigureInput,
): boolean {
  const { called, calledAfter, names } = lexicon.words.engines
  const [before, last] = [tokens[from - 2]?.text ?? '', tokens[from - 1]?.text ?? '']
  if (decimal || value < 230 || value > 620) return false
  if (from <= OPENING && calledAfter.has(last)) return true
  if (last !== 'a') return false
  const ends = (tokens[to]?.kind ?? 'mark') === 'mark' || tokens[to]?.text === 'with'
  return ends && (called.has(before) || names.has(before))
}

/** "Alloy heads 383 stroker": the size of the engine, whatever stands before it. */
export function isEngineSize(
  { value, unit, decimal, to }: Figure,
  tokens: readonly Token[],
  { words: { parts } }: Lexicon,
): boolean {
  const bare = !unit && !decimal && value >= 90 && value <= 900
  const [next, then] = [tokens[to]?.text ?? '', tokens[to + 1]?.text ?? '']
  return bare && parts.stroker.has(next) && !parts.crank.has(then)
}
