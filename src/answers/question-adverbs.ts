import type { Lexicon } from './lexicon.ts'
import type { Token } from './tokens.ts'

/** "What precisely is a girdle", "how exactly do I": without the adverb after the question word. */
export function withoutAdverbs(tokens: readonly Token[], { words }: Lexicon): readonly Token[] {
  const { questioning, adverbs } = words.asking
  return tokens.filter(
    ({ text }, at) => !(adverbs.has(text) && questioning.has(tokens[at - 1]?.text ?? '')),
  )
}
