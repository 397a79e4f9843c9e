import type { Lexicon } from './lexicon.ts'
import { normaliseText } from './normalise-text.ts'
import { longestAt, type PhraseTree } from './phrases.ts'
import { tokenise } from './tokens.ts'

/** Whether a message says, and says no more than, that what was supposed is to stay: "yes, keep it". */
export function saysKeep(text: string, lexicon: Lexicon): boolean {
  return saysOnly(lexicon.keeping, text, lexicon)
}

/** Whether a message says, and says no more than, that nothing of it is to stay: "no, leave it". */
export function saysLeave(text: string, lexicon: Lexicon): boolean {
  return saysOnly(lexicon.leaving, text, lexicon)
}

function saysOnly(phrases: PhraseTree<true>, text: string, { leads }: Lexicon): boolean {
  const tokens = tokenise(normaliseText(text).text)
  let from = 0
  while (from < tokens.length && leads.has(tokens[from]?.text ?? '')) from += 1
  const found = longestAt(phrases, tokens, from)
  if (!found) return false
  return tokens.slice(found.to).every(({ text: word, kind }) => kind === 'mark' || leads.has(word))
}
