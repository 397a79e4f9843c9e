import { longestAt, type PhraseTree } from './phrases.ts'
import type { Token } from './tokens.ts'

/** A phrase of the vocabulary found in a message: tokens from `from` up to, not with, `to`. */
export interface Mention<T> {
  readonly from: number
  readonly to: number
  readonly meanings: readonly T[]
}

/** All phrases of a tree in a message, leftmost longest, never overlapping. */
export function mentionsIn<T>(
  tree: PhraseTree<T>,
  tokens: readonly Token[],
  blocked: (at: number) => boolean = () => false,
): Mention<T>[] {
  const found: Mention<T>[] = []
  let at = 0
  while (at < tokens.length) {
    const match = blocked(at) ? undefined : longestAt(tree, tokens, at)
    if (match) found.push(match)
    at = match ? match.to : at + 1
  }
  return found
}

/** For each token, whether any of the mentions covers it. */
export function coverage(
  length: number,
  mentions: readonly { readonly from: number; readonly to: number }[],
): boolean[] {
  const covered = new Array<boolean>(length).fill(false)
  for (const { from, to } of mentions) covered.fill(true, from, to)
  return covered
}
