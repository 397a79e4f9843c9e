import { jobQuestionsIn } from './job-questions.ts'
import type { IntentName, Lexicon } from './lexicon.ts'
import { type Mention, mentionsIn } from './mentions.ts'
import { sentenceEnd } from './question-words.ts'
import { asksHowItWorks, asksOpenly, asksRelevance } from './reasons-asked.ts'
import { revisionsIn } from './revisions.ts'
import type { Scopes } from './scopes.ts'
import { suppositionsIn } from './suppositions.ts'
import type { Token } from './tokens.ts'

/** A request found in a message, before it is known which facts the message tells. */
export interface Request {
  readonly intent: Exclude<IntentName, 'none'>
  readonly from: number
  readonly to: number
  /** Whether it opens the message or a sentence of it. */
  readonly opens: boolean
  /** Whether it is said of a thought or of others: "I could bump it to 12". */
  readonly aside: boolean
  /** Whether it is a question that only the call can answer. */
  readonly job?: boolean
  /** Whether it is a request only if its sentence names facts. */
  readonly needsFacts?: boolean
  /** Where what is said anew begins: "I said two bolt, turns out it is four". */
  readonly anewFrom?: number
  /** Whether it takes something back by its words alone, whatever is told. */
  readonly plainly?: boolean
  /** Whether it asks whatever figures it names: "why 4 bolts at 9 psi". */
  readonly openly?: boolean
}

/** Every request of a message, left to right. */
export function requestsIn(tokens: readonly Token[], lexicon: Lexicon, scopes: Scopes): Request[] {
  const said = [...saidIn(tokens, lexicon, scopes), ...revisionsIn(tokens, lexicon, scopes)]
  if (said.some(({ intent, opens, aside }) => intent !== 'result' && opens && !aside)) return said
  const thoughts = thoughtSentences(scopes)
  const whole = { opens: true, aside: false }
  const supposed = suppositionsIn(tokens, lexicon, scopes)
    .filter(({ from }) => !thoughts.has(scopes.sentence[from] as number))
    .map((place) => ({ ...place, ...whole, intent: 'what-if' as const }))
  if (supposed.length > 0) return [...said, ...supposed]
  const job = jobQuestionsIn(tokens, lexicon, scopes).map(({ asks, ...question }) => ({
    ...question,
    ...whole,
    intent: asks,
    job: true,
  }))
  return [...said, ...job]
}

/** The requests that phrases of the vocabulary make. */
function saidIn(tokens: readonly Token[], lexicon: Lexicon, scopes: Scopes): Request[] {
  const thoughts = thoughtSentences(scopes)
  return mentionsIn(lexicon.intents, tokens).flatMap((mention) =>
    mention.meanings.flatMap((intent) =>
      intent === 'none' ||
      mention.meanings.includes('none') ||
      (intent === 'what-if' && isMusing(mention, tokens, scopes, thoughts)) ||
      (intent === 'why' && isAnswered(mention, tokens, lexicon)) ||
      (intent === 'explain' && isUnknownFact(mention, tokens, lexicon, scopes))
        ? []
        : [
            {
              intent: asked(intent, mention, tokens, lexicon, scopes),
              from: mention.from,
              to: mention.to,
              opens: opens(mention, tokens, lexicon, scopes) || isLookUp(mention, tokens, lexicon),
              aside: isAside(intent, mention, scopes),
              openly:
                asksOpenly(mention.from, tokens, lexicon) ||
                asksHowItWorks(mention, tokens, scopes, lexicon),
            },
          ],
    ),
  )
}

/** The "would" of "would your call be different with studs" supposes, and is no thought aside. */
function isAside(
  intent: Request['intent'],
  { from }: Mention<IntentName>,
  { outside }: Scopes,
): boolean {
  return outside[from] !== undefined && !(intent === 'what-if' && outside[from] === 'hypothetical')
}

/** A "why" that asks how things work explains; a "what is" may ask what it has to do with it. */
function asked(
  intent: Request['intent'],
  mention: Mention<IntentName>,
  tokens: readonly Token[],
  lexicon: Lexicon,
  scopes: Scopes,
): Request['intent'] {
  if (intent === 'why' && asksHowItWorks(mention, tokens, scopes, lexicon)) return 'explain'
  if (intent === 'explain' && asksRelevance(mention.from, tokens, scopes, lexicon)) return 'why'
  return intent
}

/** "Why? Because I can": answered by whoever asks it. */
function isAnswered(
  { to }: Mention<IntentName>,
  tokens: readonly Token[],
  { words }: Lexicon,
): boolean {
  const after = tokens[to]?.text === '?' ? tokens[to + 1] : tokens[to]
  return words.asking.because.has(after?.text ?? '')
}

/** "If I go to 15 psi later I'd add studs": a thought about some day, no question. */
function isMusing(
  { from }: Mention<IntentName>,
  tokens: readonly Token[],
  { sentence }: Scopes,
  thoughts: ReadonlySet<number>,
): boolean {
  if (tokens[from]?.text !== 'if' || !thoughts.has(sentence[from] as number)) return false
  return tokens[sentenceEnd(sentence, from) - 1]?.text !== '?'
}

/** "No idea what a line hone costs" says what is not known; "no clue what a girdle is" asks. */
function isUnknownFact(
  { from, to }: Mention<IntentName>,
  tokens: readonly Token[],
  { words }: Lexicon,
  scopes: Scopes,
) {
  const [first, last] = [tokens[from]?.text ?? '', tokens[to - 1]?.text ?? '']
  if (!words.asking.shrugs.has(first)) return false
  if (!['a', 'an', 'what'].includes(last)) return false
  let end = sentenceEnd(scopes.sentence, from) - 1
  while (end > to && tokens[end]?.kind === 'mark') end -= 1
  // "No idea what the compression is" names a fact; "what that means" never does.
  const asks = last === 'what' ? ['means', 'mean'] : ['is', 'are', 'means', 'does']
  return !asks.includes(tokens[end]?.text ?? '')
}

/** The sentences that end on "some day" or the like. */
function thoughtSentences({ sentence, markers }: Scopes): Set<number> {
  const after = markers.filter(({ meanings }) => meanings.includes('thoughtAfter'))
  return new Set(after.map(({ from }) => sentence[from] as number))
}

/** "Splayed meaning", "girdle definition": as people type it to look a word up. */
function isLookUp(
  { to, from }: Mention<IntentName>,
  tokens: readonly Token[],
  { words }: Lexicon,
): boolean {
  const short = tokens.length <= 6 && from > 0 && to - from === 1
  return short && words.asking.lookedUp.has(tokens[from]?.text ?? '') && isEndAt(to, tokens)
}

function isEndAt(at: number, tokens: readonly Token[]): boolean {
  return at === tokens.length || (at === tokens.length - 1 && tokens[at]?.kind === 'mark')
}

function opens(
  mention: Mention<IntentName>,
  tokens: readonly Token[],
  { leads }: Lexicon,
  scopes: Scopes,
): boolean {
  for (let at = mention.from - 1; at >= 0; at -= 1) {
    if (scopes.clause[at] !== scopes.clause[mention.from] && tokens[mention.from]?.gap !== 'none')
      return true
    if (!leads.has(tokens[at]?.text ?? '')) return tokens[at]?.text === ','
  }
  return true
}
