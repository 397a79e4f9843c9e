import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { isReported } from './answer-asked.ts'
import { opensOnShrug } from './dont-know.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'
import { isPriceOfWork, keyOfLast } from './price-of-last.ts'

/** Whether a figure counts although others told it: a quote, or an answer passed on. */
export function isTold(figure: Figure, asking: FactKey | undefined, parts: Parts): boolean {
  return isQuoted(figure, parts) || isPassedOn(figure, asking, parts)
}

/** "He said 400, 450 tops", to the question of a price; "the card says 95". */
function isPassedOn(figure: Figure, asking: FactKey | undefined, parts: Parts): boolean {
  const { scopes, input, tokens, lexicon, figures, pairs } = parts
  if (!asking || input.negations.denies(figure)) return false
  // "Dunno, my brother's is 4.125 but I never measured mine".
  if (opensOnShrug(parts)) return false
  const use = pairs.find((pair) => pair.figure === figure)?.use
  // "Only ever measured bigger ones, on my brother's 4 inch bore".
  if (use?.kind === 'fact' && use.key !== asking) return false
  // "The tuner says 7500, I say 6600".
  const own = figures.some(
    (other) => other !== figure && scopes.outside[other.to - 1] === undefined,
  )
  if (own) return false
  const outside = scopes.outside[figure.to - 1]
  if (outside === 'other' && fact(asking).topic === 'money') return true
  // "12 to 15 psi according to him".
  const told = outside === 'hypothetical' && tokens.some(({ text }) => text === 'according')
  return told || ((outside === 'other' || outside === 'past') && isReported(tokens, lexicon))
}

/** "He said $500 to line bore it": a quote is always somebody else's; what a friend paid is none. */
function isQuoted(figure: Figure, parts: Parts): boolean {
  const { scopes, tokens, input, pairs, lexicon } = parts
  if (scopes.outside[figure.to - 1] !== 'other') return false
  const use = pairs.find((pair) => pair.figure === figure)?.use
  // "Line bore is 450, he said the hone is 225", "line boring included, he charges 350".
  const charged = lexicon.words.prices.charges.has(tokens[figure.from - 1]?.text ?? '')
  const bare = charged || isSecondPrice(figure, parts)
  if (figure.unit?.kind !== 'money' && (figure.unit || !bare)) return false
  const key = use ? (use.kind === 'fact' ? use.key : undefined) : keyOfLast(figure, parts)
  if (!key || !isPriceOfWork(key)) return false
  if (input.negations.denies(figure)) return false
  return !tokens.some(
    ({ text }, at) =>
      scopes.sentence[at] === scopes.sentence[figure.from] && lexicon.words.prices.paid.has(text),
  )
}

/** Whether another price of the sentence is of this engine without doubt. */
function isSecondPrice({ from }: Figure, { pairs, scopes }: Parts): boolean {
  return pairs.some(
    ({ figure, use }) =>
      use.kind === 'fact' &&
      fact(use.key).kind === 'money' &&
      scopes.sentence[figure.from] === scopes.sentence[from] &&
      scopes.outside[figure.to - 1] === undefined,
  )
}
