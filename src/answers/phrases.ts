import type { Token } from './tokens.ts'
import { tokenise } from './tokens.ts'

/** A set of phrases, looked up word by word; each leads to what it stands for. */
export interface PhraseTree<T> {
  readonly next: Map<string, PhraseTree<T>>
  readonly meanings: T[]
}

export interface PhraseMatch<T> {
  readonly from: number
  /** The token after the phrase. */
  readonly to: number
  readonly meanings: readonly T[]
}

export function phraseTree<T>(): PhraseTree<T> {
  return { next: new Map(), meanings: [] }
}

const PLAIN = /^[a-z]+(?: [a-z]+)*$/

/** The words of a phrase as the reader cuts a message; most phrases are plain words. */
export function wordsOf(phrase: string): string[] {
  if (PLAIN.test(phrase)) return phrase.split(' ')
  return tokenise(phrase.toLowerCase().replaceAll('°', ' deg ')).map(({ text }) => text)
}

/** Add a phrase. Case, apostrophes and hyphens do not count. */
export function addPhrase<T>(tree: PhraseTree<T>, phrase: string, meaning: T): void {
  let node = tree
  for (const text of wordsOf(phrase)) {
    let next = node.next.get(text)
    if (!next) {
      next = phraseTree<T>()
      node.next.set(text, next)
    }
    node = next
  }
  if (node !== tree) node.meanings.push(meaning)
}

export function addPhrases<T>(tree: PhraseTree<T>, phrases: readonly string[], meaning: T): void {
  for (const phrase of phrases) addPhrase(tree, phrase, meaning)
}

/** The longest phrase that starts at a token. A spaced dash never lies inside a phrase. */
export function longestAt<T>(
  tree: PhraseTree<T>,
  tokens: readonly Token[],
  from: number,
): PhraseMatch<T> | undefined {
  let node: PhraseTree<T> | undefined = tree
  let found: PhraseMatch<T> | undefined
  for (let at = from; node && at < tokens.length; at += 1) {
    const token = tokens[at] as Token
    if (at > from && token.gap === 'dash') break
    node = node.next.get(token.text)
    if (node && node.meanings.length > 0) found = { from, to: at + 1, meanings: node.meanings }
  }
  return found
}
