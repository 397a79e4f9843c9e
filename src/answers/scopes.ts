import { isLongAgo, isOfBefore, isOfToday } from './back-then.ts'
import type { Lexicon, Marker } from './lexicon.ts'
import { type Mention, mentionsIn } from './mentions.ts'
import { isAskedFor, isNotOfMine, isOfShop, isStillOfThis, type Place } from './of-this-engine.ts'
import { answersItself } from './reasons-asked.ts'
import { asksAt, breaksOf } from './sentences.ts'
import { takenBack } from './taken-back.ts'
import type { Token } from './tokens.ts'
import { supposes, weighs } from './weighed.ts'
import { isOther, isSomeones, wasAt } from './whose.ts'

/** Why a stretch of a message says nothing of this engine as it stands. */
export type Outside = 'other' | 'hypothetical' | 'past'

export interface Scopes {
  /** For each token, why it is outside, or undefined. */
  readonly outside: readonly (Outside | undefined)[]
  /** For each token, whether it is wished for or priced rather than there. */
  readonly planned: readonly boolean[]
  /** For each token, the sentence and the clause that it stands in. */
  readonly sentence: readonly number[]
  readonly clause: readonly number[]
  readonly markers: readonly Mention<Marker>[]
}

const PRONOUNS = new Set(['it', 'its', 'that', 'and', 'which', 'also', 'plus'])

/** Work out, token by token, whose engine and which state of it is spoken of. */
export function scopesOf(
  tokens: readonly Token[],
  lexicon: Lexicon,
  covered: (at: number) => boolean,
): Scopes {
  const { sentence, clause } = breaksOf(tokens, lexicon, (i, start) =>
    answersItself(tokens, i, start, lexicon),
  )
  const markers = [
    ...mentionsIn(lexicon.markers, tokens, covered),
    ...takenBack(tokens, lexicon),
  ].sort((a, b) => a.from - b.from)
  const at = new Map(markers.map((mention) => [mention.from, mention]))
  const outside = new Array<Outside | undefined>(tokens.length).fill(undefined)
  const planned = new Array<boolean>(tokens.length).fill(false)
  const state = newState()
  for (let i = 0; i < tokens.length; i += 1) {
    const opens = i === 0 || sentence[i] !== sentence[i - 1]
    if (i > 0 && opens) newSentence(state, tokens[i] as Token)
    if (opens) {
      state.planned = asksAt(i, tokens, sentence)
      state.past = wasAt(i, tokens) || isLongAgo(i, tokens, sentence, lexicon)
      state.sentenceLong = weighs(i, tokens, sentence) || supposes(i, tokens)
    } else if (i > 0 && clause[i] !== clause[i - 1]) {
      newClause(state)
      if (state.onlyPast && isOfToday(i, tokens, clause)) state.past = false
    }
    if (i === 0 || clause[i] !== clause[i - 1]) state.clausePast = isOfBefore(i, tokens, clause)
    const mention = at.get(i)
    if (isSomeones(tokens, i, lexicon)) state.other = true
    if (mention) {
      const place = { tokens, sentence, outside, clause, markers, lexicon, i, to: mention.to }
      apply(mention, state, { ...place, alsoPast: mention.meanings.includes('past') })
    } else if (covered(i) && OWNS.has((tokens[i] as Token).text)) state.other = false
    else if (endsWish(tokens[i] as Token, covered(i), at, i)) state.planned = false
    if (state.other && tells(tokens[i] as Token, lexicon)) state.told = true
    outside[i] = scopeOf(state)
    planned[i] = state.planned
  }
  return { outside, planned, sentence, clause, markers }
}

/** The my of "my budget", which is one phrase. */
const OWNS = new Set(['my', 'our', 'mine'])

const WHOSE = new Set(['for', 'on', 'by'])
const ARE = new Set(['is', 'was'])

/** "Want 600 hp on a two bolt block": past the figure and the "on", the block is there already. */
const WISH_ENDS = new Set(['on', 'for', 'in', 'at', 'because'])

function endsWish(
  token: Token,
  inPhrase: boolean,
  markers: ReadonlyMap<number, Mention<Marker>>,
  i: number,
): boolean {
  if (inPhrase) return false
  for (let back = i - 1; back >= 0 && back >= i - 4; back -= 1) {
    const mention = markers.get(back)
    if (mention && mention.to > i) return false
  }
  return token.kind === 'number' || WISH_ENDS.has(token.text)
}

interface State {
  other: boolean
  /** Whether the other is only who works on this engine: "the machinist says". */
  ofShop: boolean
  /** Whether something was said of the other: only then a sentence on "it" goes on about it. */
  told: boolean
  past: boolean
  /** Whether the past was only told by words such as "last year". */
  onlyPast: boolean
  clausePast: boolean
  sentenceLong: boolean
  clauseLong: boolean
  planned: boolean
}

function newState(): State {
  return {
    other: false,
    ofShop: false,
    told: false,
    past: false,
    onlyPast: false,
    clausePast: false,
    sentenceLong: false,
    clauseLong: false,
    planned: false,
  }
}

/** Whether a word says something of an engine. */
function tells({ kind, text }: Token, { speller }: Lexicon): boolean {
  return kind === 'number' || speller.telling.has(text)
}

function scopeOf(state: State): Outside | undefined {
  if (state.other) return 'other'
  if (state.past || state.clausePast) return 'past'
  return state.sentenceLong || state.clauseLong ? 'hypothetical' : undefined
}

/** "My buddy has a turbo. It makes 600": a sentence that opens on "it" goes on about the other. */
function newSentence(state: State, first: Token): void {
  if (!PRONOUNS.has(first.text) || !state.told || state.ofShop) state.other = false
  state.ofShop = false
  state.told = false
  state.past = false
  state.onlyPast = false
  state.sentenceLong = false
  newClause(state)
}

function newClause(state: State): void {
  state.clauseLong = false
  state.planned = false
}

function apply(mention: Mention<Marker>, state: State, place: Place): void {
  const said = place.tokens
    .slice(mention.from, mention.to)
    .map(({ text }) => text)
    .join(' ')
  for (const marker of mention.meanings) applyOne(marker, said, state, place)
}

function applyOne(marker: Marker, said: string, state: State, place: Place): void {
  if (marker === 'otherPerson') {
    if (isStillOfThis(said, place)) return
    if (isOfShop(said, place)) state.ofShop = true
    state.other ||= isOther(said, place.tokens, place.i, place.lexicon)
    // "Stock caps held 900 for my buddy".
    const before = place.tokens[place.i - 1]?.text ?? ''
    // "The turbo car is my brothers".
    const ends = (place.tokens[place.to]?.kind ?? 'mark') === 'mark'
    const theirs = ARE.has(before) && (/^my \w+s$/.test(said) || (ends && /^\w+ \w+s$/.test(said)))
    const whose = (WHOSE.has(before) || theirs) && state.other
    if (whose) backwards(place, (found) => found ?? 'other')
  } else if (marker === 'past') {
    state.past = !goesBack(said, place)
  } else if (marker === 'pastAfter') {
    if (goesBack(said, place)) return
    backwards(place, (found) => found ?? 'past', said === 'last time' ? RELATIVE : undefined)
    // "On my last build I used splayed caps".
    const { i, sentence } = place
    const opens = i === 0 || sentence[i - 1] !== sentence[i]
    state.past = place.alsoPast || (opens && / (my|our|the) (last|old|previous) /.test(said))
    state.onlyPast = place.alsoPast
  } else if (marker === 'planned') state.planned = true
  else if (marker === 'ownPerson') {
    if (!isNotOfMine(said, place)) own(said, state, place.tokens[place.i - 1]?.text)
  } else if (marker === 'correction') state.past = false
  else if (marker === 'present') present(said, state, place)
  else if (marker === 'thoughtAfter') {
    backwards(place, (found) => found ?? 'hypothetical')
    state.clauseLong = true
  } else if (marker === 'thoughtLong') state.sentenceLong = true
  else if (marker === 'hypothetical' && !isAskedFor(said, place)) {
    if (said.startsWith('if ')) state.sentenceLong = true
    else state.clauseLong = true
  }
}

/** "Before that, the compression is 9:1": a message that goes back to an earlier question. */
function goesBack(said: string, { i, to, tokens }: Place): boolean {
  return i === 0 && said.startsWith('before that') && [',', ':'].includes(tokens[to]?.text ?? '')
}

/** Words of oneself that end no account of how it was. */
const WEAK = new Set(['i', 'my', 'we', 'our', 'id'])
/** Words of oneself that a supposition goes on with: "if I win I'll buy one". */
const CONTINUES = new Set(['ive', 'ill', 'me', 'myself'])

function own(said: string, state: State, follows: string | undefined): void {
  state.other = false
  if (said !== 'i') state.planned = false
  if (!WEAK.has(said) || (said === 'i' && follows === 'so')) {
    state.past = false
    if (!CONTINUES.has(said)) state.sentenceLong = false
  }
}

function present(said: string, state: State, place: Place): void {
  const { i, clause } = place
  if (i > 0 && clause[i - 1] !== clause[i]) state.other = false
  state.past = false
  state.sentenceLong = false
  state.clauseLong = false
  state.planned = false
  const { now, fitted } = place.lexicon.words.times
  if (now.has(said) || fitted.has(said)) {
    const was = place.tokens.slice(0, place.i).map(({ text }) => text)
    const last = Math.max(was.lastIndexOf('was'), was.lastIndexOf('were'), was.lastIndexOf('had'))
    if (
      last >= 0 &&
      place.sentence[last] === place.sentence[place.i] &&
      place.clause[last] !== place.clause[place.i]
    ) {
      for (
        let back = place.i - 1;
        back >= 0 && (place.clause[back] ?? 0) >= (place.clause[last] ?? 0);
        back -= 1
      ) {
        if (place.clause[back] !== place.clause[place.i]) place.outside[back] ??= 'past'
      }
    }
  }
  // "It was 9:1 but …" leaves what was said before as it was; "10.5:1 now" does not.
  if (said !== 'but' && said !== 'mine' && said !== 'however') {
    backwards(place, (found) => (found === 'other' ? found : undefined), AND)
  }
}

const AND = new Set(['and'])

/** "Nodular caps that walked last time": what stands before "that" is so today. */
const RELATIVE = new Set(['that', 'which'])

function backwards(
  { outside, clause, sentence, tokens, lexicon, i: at }: Place,
  change: (found: Outside | undefined) => Outside | undefined,
  stopsAt?: ReadonlySet<string>,
): void {
  // "Was planning a blower but dropped that".
  const i = lexicon.words.asking.clauses.has(tokens[at - 1]?.text ?? '') ? at - 1 : at
  const opens = i > 0 && clause[i - 1] !== clause[i] && sentence[i - 1] === sentence[i]
  const own = opens && stopsAt !== AND ? clause[i - 1] : clause[i]
  for (
    let back = i - 1;
    back >= 0 && (clause[back] === clause[i] || clause[back] === own);
    back -= 1
  ) {
    if (stopsAt?.has(tokens[back]?.text ?? '')) return
    outside[back] = change(outside[back])
  }
}
