import type { ChoiceMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'

/** Words that join a figure to what it is said of. */
const LINKS = new Set(['is', 'are', 'at', ':', '=', 'was', 'were', 'has', 'of', 'set', 'takes'])
const ARTICLES = new Set(['the', 'a', 'an', 'its', 'my', 'this', 'that', 'each', 'our'])
const JOINERS = new Set([',', 'and', '(', '/', '&', '+', 'with'])

/**
 * Whether a figure is said of a part that is none of the engine's held crank: "the
 * roller door opener is 12 psi", "600 hp gearbox". The next words about it are an
 * other part's, or a noun that the vocabulary does not know.
 */
export function isOfForeignPart(figure: Figure, parts: Parts): boolean {
  const { tokens, choiceMentions } = parts
  const words = parts.lexicon.words.parts
  if (isOfFluid(figure, parts)) return true
  // "420 kW at the crank out of 3.0 L".
  const size = figure.unit?.kind === 'unit' && ['L', 'cc', 'cu in'].includes(figure.unit.symbol)
  if (size && ['of', 'from'].includes(tokens[figure.from - 1]?.text ?? '')) return false
  const after = choiceMentions.find(({ from }) => from === figure.to)
  // "2.3 litre twin screw supercharger": the size of what it is charged by.
  if (size && after && words.chargers.has(tokens[after.to - 1]?.text ?? '')) return true
  // "10:1 pistons" make the ratio; "600 hp gearbox" makes no power.
  const crank = words.crank.has(tokens[figure.to]?.text ?? '')
  if (after && !crank && !figure.ratio && isOther(after) && tokens[figure.to]?.gap === 'space')
    return true
  const at = subjectBefore(figure, parts)
  if (at === undefined) return false
  const named = choiceMentions.find(({ from, to }) => from <= at && at < to)
  const linked = isLinked(at + 1, figure.from, parts)
  if (named) return isOther(named) && linked
  if (parts.lexicon.speller.known.has(tokens[at]?.text ?? '')) return false
  return linked && (ARTICLES.has(tokens[at - 1]?.text ?? '') || opensClause(at, parts))
}

/** "Oil sits about 45 psi there": a pressure in a clause that opens on a fluid is its own. */
function isOfFluid({ from, unit }: Figure, { tokens, scopes, lexicon }: Parts): boolean {
  if (unit?.kind !== 'unit' || !['psi', 'bar', 'kPa', 'lb'].includes(unit.symbol)) return false
  for (let at = from - 1; at >= 0 && scopes.clause[at] === scopes.clause[from]; at -= 1) {
    const word = tokens[at]?.text ?? ''
    if (lexicon.words.figures.boosters.has(word)) return false
    if (lexicon.words.figures.fluids.has(word)) return true
  }
  return false
}

function isOther({ meanings }: Mention<ChoiceMeaning>): boolean {
  return meanings.some((m) => m.kind === 'shadow' || (m.kind === 'noun' && m.noun === 'other'))
}

/** The last word before a figure, in its clause, that is no small word. */
function subjectBefore(
  { from }: Figure,
  { tokens, scopes, lexicon, figures }: Parts,
): number | undefined {
  for (let at = from - 1; at >= 0 && scopes.clause[at] === scopes.clause[from]; at -= 1) {
    const { text, kind } = tokens[at] as { text: string; kind: string }
    // "Since I milled the heads it is 11.2": said of the engine.
    if (text === 'it' || text === 'its') return undefined
    if (JOINERS.has(text) || kind === 'number' || figures.some((f) => f.from <= at && at < f.to))
      return undefined
    if (!LINKS.has(text) && !lexicon.fillers.has(text)) return kind === 'word' ? at : undefined
  }
  return undefined
}

function isLinked(from: number, to: number, { tokens }: Parts): boolean {
  for (let at = from; at < to; at += 1) if (LINKS.has(tokens[at]?.text ?? '')) return true
  return false
}

function opensClause(at: number, { scopes }: Parts): boolean {
  return at === 0 || scopes.clause[at - 1] !== scopes.clause[at]
}
