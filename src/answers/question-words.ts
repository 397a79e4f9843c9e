import { addPhrases, longestAt, type PhraseTree, phraseTree } from './phrases.ts'
import type { QuestionVocabulary } from './question-vocabulary.ts'
import type { Token } from './tokens.ts'

/** The words of asking, supposing and taking back, ready to be looked up. */
export type QuestionWords = { readonly [name in keyof QuestionVocabulary]: PhraseTree<true> }

/** Make the words of questions ready. */
export function questionWords(vocabulary: QuestionVocabulary): QuestionWords {
  const trees = Object.entries(vocabulary).map(([name, phrases]) => {
    const tree = phraseTree<true>()
    addPhrases(tree, phrases, true)
    return [name, tree]
  })
  return Object.fromEntries(trees) as QuestionWords
}

/** Where the first phrase of a kind stands within a stretch of a message, or -1. */
export function placeOf(
  tree: PhraseTree<true>,
  tokens: readonly Token[],
  from: number,
  to: number,
): number {
  for (let at = from; at < to; at += 1) if (longestAt(tree, tokens, at)) return at
  return -1
}

/** Where nothing more follows. */
export const NOWHERE = Number.MAX_SAFE_INTEGER

/** For each token, where the next phrase of a kind stands, itself counted. */
export function nextPlaces(tree: PhraseTree<true>, tokens: readonly Token[]): number[] {
  const next = new Array<number>(tokens.length + 1).fill(NOWHERE)
  for (let at = tokens.length - 1; at >= 0; at -= 1) {
    next[at] = longestAt(tree, tokens, at) ? at : (next[at + 1] as number)
  }
  return next
}

/** The token after the sentence of a token. */
export function sentenceEnd(sentence: readonly number[], at: number): number {
  let end = at
  while (end < sentence.length && sentence[end] === sentence[at]) end += 1
  return end
}

/** The first token of the sentence of a token. */
export function sentenceStart(sentence: readonly number[], at: number): number {
  let start = at
  while (start > 0 && sentence[start - 1] === sentence[at]) start -= 1
  return start
}
