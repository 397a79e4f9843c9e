import type { Lexicon } from './lexicon.ts'
import { longestAt } from './phrases.ts'
import type { Token } from './tokens.ts'

/** "Grandfather's tractor", "Sam's car": a name or a kin, and what is theirs. */
export function isSomeones(tokens: readonly Token[], i: number, lexicon: Lexicon): boolean {
  const { speller } = lexicon
  const [token, next] = [tokens[i], tokens[i + 1]]
  if (!token?.owner || next?.kind !== 'word' || next.gap !== 'space') return false
  if (lexicon.words.persons.contracted.has(token.text) || isOutOf(tokens, i, lexicon)) return false
  const person = longestAt(lexicon.markers, [{ ...token, text: token.text.slice(0, -1) }], 0)
  if (person?.meanings.includes('otherPerson')) return true
  if (isVehicleOf({ ...token, text: token.text.slice(0, -1) }, next.text, lexicon)) return true
  return !speller.known.has(token.text) && !speller.known.has(token.text.slice(0, -1))
}

/** "The boss's race car", "the mayor's boat": not the motor of "the truck's motor". */
function isVehicleOf(owner: Token, next: string, { words, choices, figures }: Lexicon): boolean {
  const { vehicles, customers } = words.persons
  if (!vehicles.has(next) || vehicles.has(owner.text) || customers.has(owner.text)) return false
  return [choices, figures].every((tree) => longestAt<unknown>(tree, [owner], 0) === undefined)
}

/** "Pulled it out of grandad's pickup": where it is from. */
function isOutOf(tokens: readonly Token[], i: number, { words }: Lexicon): boolean {
  const { bought } = words.persons
  if (!['of', 'from'].includes(tokens[i - 1]?.text ?? '')) return false
  return tokens.slice(Math.max(0, i - 7), i).some(({ text }) => bought.has(text))
}

/** Not so the guys of "the shop has 3 guys", nor the "he" who is the customer. */
export function isOther(
  said: string,
  tokens: readonly Token[],
  i: number,
  { words, vocabulary }: Lexicon,
): boolean {
  const { customers, he, theyParts } = words.persons
  const before = tokens[i - 1]
  if (before?.kind === 'number' || Object.hasOwn(vocabulary.numbers.ones, before?.text ?? ''))
    return false
  if (
    said.startsWith('they ') &&
    tokens.slice(Math.max(0, i - 15), i).some(({ text }) => theyParts.has(text))
  )
    return false
  if (!he.has(said)) return true
  return !isHisWord(i, tokens, words) && !tokens.slice(0, i).some(({ text }) => customers.has(text))
}

/** "Was 8 to 1 stock", "had a 12 to 1 before": with its subject left out. */
export function wasAt(i: number, tokens: readonly Token[]): boolean {
  const self = ['i', 'we'].includes(tokens[i]?.text ?? '')
  // "We tried 18 psi and it knocked, so 14 it is".
  if (tokens[self ? i + 1 : i]?.text === 'tried')
    return tokens[self ? i + 2 : i + 1]?.kind === 'number'
  const [was, next] = [tokens[i]?.text, tokens[i + 1]]
  const article = next?.text === 'a' || next?.text === 'an'
  return (was === 'was' && (next?.kind === 'number' || article)) || (was === 'had' && article)
}

/** How far back, in words, "he" may be the machinist. */
const BACK = 25

/** "The machinist bored it. He says it is 4.03": who works on this engine. */
export function isHisWord(
  i: number,
  tokens: readonly Token[],
  { persons: { he, shops } }: Lexicon['words'],
): boolean {
  if (!he.has(tokens[i]?.text ?? '')) return false
  return tokens.slice(Math.max(0, i - BACK), i).some(({ text }) => shops.has(text))
}
