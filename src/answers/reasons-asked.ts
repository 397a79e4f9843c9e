import type { Lexicon } from './lexicon.ts'
import { longestAt } from './phrases.ts'
import { placeOf, sentenceEnd, sentenceStart } from './question-words.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/** "Why ask, its only 9 psi": after the question something is told, as in a new sentence. */
export function answersItself(
  tokens: readonly Token[],
  at: number,
  start: number,
  { intents, leads, questions }: Lexicon,
): boolean {
  const own = longestAt(questions.asserts, tokens, at)
  if (!own || (longestAt(questions.believes, tokens, at)?.to ?? 0) >= own.to) return false
  let from = start
  while (from < at && leads.has(tokens[from]?.text ?? '')) from += 1
  const asks = longestAt(intents, tokens, from)?.meanings ?? []
  return asks.includes('why') || asks.includes('none')
}

/** Whether a "why" or "explain" asks whatever figures it names: "why 4 bolts at 9 psi". */
export function asksOpenly(
  from: number,
  tokens: readonly Token[],
  { questions }: Pick<Lexicon, 'questions'>,
): boolean {
  return longestAt(questions.openly, tokens, from) !== undefined
}

/** "Why do studs clamp better": how things work, not why it is asked or called. */
export function asksHowItWorks(
  { from, to }: { readonly from: number; readonly to: number },
  tokens: readonly Token[],
  { sentence }: Pick<Scopes, 'sentence'>,
  { questions, words }: Lexicon,
): boolean {
  const end = sentenceEnd(sentence, from)
  if (
    !words.asking.why.has(tokens[from]?.text ?? '') ||
    placeOf(questions.reasons, tokens, from, to) >= 0
  )
    return false
  const works = placeOf(questions.mechanisms, tokens, to, end) >= 0
  return works && placeOf(questions.reasons, tokens, to, end) < 0
}

/** "What's the budget got to do with it": why, by the words of what it is. */
export function asksRelevance(
  from: number,
  tokens: readonly Token[],
  { sentence }: Pick<Scopes, 'sentence'>,
  { questions }: Lexicon,
): boolean {
  return placeOf(questions.relevance, tokens, from, sentenceEnd(sentence, from)) >= 0
}

/** "480 for a bore seems daft": what is held against a call, not told of the engine. */
export function argues(
  at: number,
  tokens: readonly Token[],
  { sentence }: Pick<Scopes, 'sentence'>,
  { questions }: Lexicon,
): boolean {
  const [start, end] = [sentenceStart(sentence, at), sentenceEnd(sentence, at)]
  return placeOf(questions.opinions, tokens, start, end) >= 0
}
