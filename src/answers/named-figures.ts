import type { Parts } from './message-parts.ts'
import type { Pair } from './pairing.ts'

/**
 * "590 g with pin and rings", to the question of a mass: the parts are what it counts in. "110 on
 * the mains, rods get 45": what follows a comma is another matter.
 */
export function isAnswerWith(pair: Pair, parts: Parts): boolean {
  const { figure, mention, use } = pair
  const { tokens, lexicon } = parts
  const later = mention.from > figure.to && isAcrossComma(pair, parts)
  const opens = tokens.slice(0, figure.from).every(({ text }) => lexicon.fillers.has(text))
  // "It was 8.5 before, new pistons put it at eleven".
  const was = tokens.slice(0, figure.from).some(({ text }) => text === 'was' || text === 'were')
  if (later && opens && !was) return true
  if (use.kind !== 'noise' || mention.from < figure.to || !figure.unit) return false
  return opens && lexicon.words.figures.including.has(tokens[figure.to]?.text ?? '')
}

/**
 * "No sorry, 9.8 with the thicker gasket", "no wait, I swapped the spring, 14 psi": a correction
 * before the figure counts first.
 */
export function isNoiseApart(pair: Pair, parts: Parts): boolean {
  const { figure, mention, use } = pair
  return use.kind === 'noise' && (mention.from >= figure.to || isAcrossComma(pair, parts))
}

/** "60 degree V6, 93 x 86 mm": the degree is another item's. */
export function isAcrossComma({ figure, mention }: Pair, { tokens }: Parts): boolean {
  const [from, to] = [Math.min(figure.to, mention.to), Math.max(figure.from, mention.from)]
  return tokens.slice(from, to).some(({ text }) => text === ',')
}
