import type { Lexicon, Marker } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Outside } from './scopes.ts'
import type { Token } from './tokens.ts'
import { isHisWord } from './whose.ts'

/** A marker in its message, while scopes are worked out from left to right. */
export interface Place {
  readonly tokens: readonly Token[]
  readonly sentence: readonly number[]
  readonly outside: (Outside | undefined)[]
  readonly clause: readonly number[]
  readonly markers: readonly Mention<Marker>[]
  readonly lexicon: Lexicon
  readonly i: number
  readonly to: number
  /** Whether the same words also tell how it was: "when it was stock it had". */
  readonly alsoPast: boolean
}

/** Whether words of another person leave the message about this engine after all. */
export function isStillOfThis(said: string, place: Place): boolean {
  if (isCalled(place) || isTogether(place) || isMadeFor(place) || actsOnThis(said, place))
    return true
  // "Not supercharged like the one in the picture".
  if (said.startsWith('the one') && isLikened(place)) return true
  if (isBoughtFrom(place) || isAddressed(said, place) || isMeasuredByShop(said, place)) return true
  const { words } = place.lexicon
  if (!words.persons.says.has(said)) return false
  return isReadOff(place) || isHisWord(place.i - 1, place.tokens, words)
}

/** "The machinist looked at the block and says": who speaks works on this engine. */
export function isOfShop(said: string, { i, tokens, lexicon }: Place): boolean {
  if (!lexicon.words.persons.says.has(said)) return false
  return tokens
    .slice(Math.max(0, i - 8), i)
    .some(({ text }) => lexicon.words.persons.shops.has(text))
}

/** "My machinist cc'd everything and says 10.2": what the shop found on this engine. */
function isMeasuredByShop(said: string, place: Place): boolean {
  const { i, tokens, sentence, lexicon } = place
  const { measures } = lexicon.words.persons
  if (!isOfShop(said, place)) return false
  return tokens.some(({ text }, at) => at < i && sentence[at] === sentence[i] && measures.has(text))
}

/** Whether words of oneself do not bring a message back to one's own engine. */
export function isNotOfMine(said: string, place: Place): boolean {
  return isRelative(said, place) || isLikened(place) || isWhereabouts(said, place)
}

/** "Could you set the boost to 12": asked for, not supposed. */
export function isAskedFor(said: string, { tokens, to, lexicon }: Place): boolean {
  return ['could', 'would'].includes(said) && lexicon.words.asking.you.has(tokens[to]?.text ?? '')
}

/** "The guy I bought it from said": still the guy. */
function isRelative(said: string, { i, markers, tokens, lexicon }: Place): boolean {
  const before = markers.find(({ to }) => to === i)
  const person = before?.meanings.includes('otherPerson') ?? false
  return said === 'i' && person && !lexicon.words.persons.says.has(tokens[i - 1]?.text ?? '')
}

/** "Everyone in my class", "a fella in our club": where they are, not what is mine. */
function isWhereabouts(said: string, { i, tokens, lexicon }: Place): boolean {
  if (
    !(said === 'my' || said === 'our') ||
    !lexicon.words.persons.places.has(tokens[i - 1]?.text ?? '')
  )
    return false
  const next = tokens[i + 1]?.text ?? ''
  return lexicon.words.persons.haunts.has(next) || !lexicon.speller.telling.has(next)
}

/** "The tag on the engine says 302": read off a thing, not said by a person. */
function isReadOff({ i, tokens, clause, lexicon }: Place): boolean {
  for (let at = i; at >= 0 && clause[at] === clause[i]; at -= 1) {
    if (lexicon.words.persons.readOff.has(tokens[at]?.text ?? '')) return true
  }
  return false
}

/** "Same block as mine": likened to mine, and not mine. */
function isLikened({ i, tokens }: Place): boolean {
  return ['as', 'like', 'than'].includes(tokens[i - 1]?.text ?? '')
}

/** "Son, this is a V8", "hi mate!": spoken to, not of. */
function isCalled({ i, to, tokens, sentence }: Place): boolean {
  const before = tokens[i - 1]
  // "Just a street motor, guys".
  const called = tokens[i]?.text === 'guys' && to === i + 1
  if (called && before?.kind === 'word' && [',', '!', '.'].includes(tokens[to]?.text ?? ''))
    return true
  const opens = !before || before.kind === 'mark' || sentence[i - 1] !== sentence[i]
  const after = tokens[to]
  return opens && (after === undefined || [',', '!', '.'].includes(after.text))
}

/** "Building a V8 for my dad's pickup": the engine is the one that is built. */
function isMadeFor({ i, tokens, sentence, lexicon }: Place): boolean {
  if (!['for', 'with'].includes(tokens[i - 1]?.text ?? '')) return false
  for (let at = i; at >= 0 && sentence[at] === sentence[i]; at -= 1) {
    if (lexicon.words.persons.builds.has(tokens[at]?.text ?? '')) return true
  }
  return false
}

/** "Bought it from my uncle, two bolt iron": where it is from, and what it is. */
function isBoughtFrom({ i, tokens, lexicon }: Place): boolean {
  const out = tokens[i - 1]?.text === 'of' && tokens[i - 2]?.text === 'out'
  if (!out && !['from', 'off'].includes(tokens[i - 1]?.text ?? '')) return false
  const before = tokens.slice(Math.max(0, i - 6), i).map(({ text }) => text)
  return before.some((word) => lexicon.words.persons.bought.has(word))
}

/** "To recap for anyone joining late": who is told, not whose engine. */
function isAddressed(said: string, { i, tokens, lexicon }: Place): boolean {
  return (
    lexicon.words.persons.told.has(said) &&
    ['for', 'to', 'thanks'].includes(tokens[i - 1]?.text ?? '')
  )
}

/** "Me and my son are doing one": ours. */
function isTogether({ i, to, tokens }: Place): boolean {
  const [before, first] = [tokens[i - 1]?.text, tokens[i - 2]?.text ?? '']
  const [after, second] = [tokens[to]?.text, tokens[to + 1]?.text ?? '']
  const own = ['me', 'i', 'myself', 'us']
  const and = ['and', 'n']
  const mine = (joiner: string | undefined, one: string): boolean =>
    and.includes(joiner ?? '') && own.includes(one)
  return mine(before, first) || mine(after, second)
}

/** "Somebody put steel caps on this", "the last owner fitted studs": of this engine after all. */
function actsOnThis(said: string, { i, to, tokens, clause, lexicon }: Place): boolean {
  const { fits, before } = lexicon.words.persons
  // "Line honed two years ago by the previous owner".
  if (tokens[i - 1]?.text === 'by' && before.has(said)) return true
  let acts = -1
  for (let at = to; at < to + 3 && acts < 0; at += 1) {
    // "The last owner had 10 psi in it", "had it at 8 psi" says how it was.
    const [next, then] = [tokens[at + 1], tokens[at + 2]]
    const set = next?.text === 'it' && then?.text === 'at'
    const states = tokens[at]?.text === 'had' && (next?.kind === 'number' || set)
    if (fits.has(tokens[at]?.text ?? '') && !states) acts = at
  }
  if (acts < 0) return false
  if (before.has(said)) return true
  for (let at = acts; at < tokens.length && clause[at] === clause[i]; at += 1) {
    const [word, next] = [tokens[at]?.text ?? '', tokens[at + 1]?.text ?? '']
    const onto = at === acts || ['on', 'in', 'to'].includes(word)
    if (onto && ['it', 'this', 'mine', 'my'].includes(next)) return true
  }
  return false
}
