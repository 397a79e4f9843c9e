import type { ChoiceInput } from './choice-input.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'

/** "Iron or aluminum block, still shopping": neither of what "or" joins, where both are of a kind. */
export function isOneOfTwo(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  { tokens }: ChoiceInput,
): boolean {
  const [before, mention] = [mentions[i - 1], mentions[i] as Mention<ChoiceMeaning>]
  if (tokens[mention.from - 1]?.text !== 'or' || before?.to !== mention.from - 1) return false
  // Two choices in full contradict each other, and are asked about.
  if (before.meanings.some(({ kind }) => kind === 'choice')) return false
  const kinds = new Set(before.meanings.flatMap(factsOf))
  return mention.meanings.flatMap(factsOf).some((key) => kinds.has(key))
}

/** The facts that words may settle, by themselves or of some part. */
function factsOf(meaning: ChoiceMeaning): string[] {
  if (meaning.kind === 'choice') return [meaning.fact]
  return meaning.kind === 'attribute' ? Object.values(meaning.of).flatMap(Object.keys) : []
}
