import { jobQuestionsIn } from './job-questions.ts'
import { LEADS } from './leads.ts'
import type { IntentName, Lexicon } from './lexicon.ts'
import { type Mention, mentionsIn } from './mentions.ts'
import { asksHowItWorks, asksOpenly } from './reasons-asked.ts'
import type { Scopes } from './scopes.ts'
import { suppositionsIn } from './suppositions.ts'
import type { Token } from './tokens.ts'

export type Intent =
  | 'tell'
  | 'dont-know'
  | 'why'
  | 'explain'
  | 'what-if'
  | 'change'
  | 'undo'
  | 'restart'
  | 'result'

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
  /** Whether it asks whatever figures it names: "why 4 bolts at 9 psi". */
  readonly openly?: boolean
}

/** Every request of a message, left to right. */
export function requestsIn(tokens: readonly Token[], lexicon: Lexicon, scopes: Scopes): Request[] {
  const said = mentionsIn(lexicon.intents, tokens).flatMap((mention) =>
    mention.meanings.flatMap((intent) =>
      intent === 'none' ||
      (intent === 'what-if' && isMusing(mention, tokens, scopes)) ||
      (intent === 'explain' && isUnknownFact(mention, tokens, scopes))
        ? []
        : [
            {
              intent:
                intent === 'why' && asksHowItWorks(mention, tokens, scopes, lexicon)
                  ? 'explain'
                  : intent,
              from: mention.from,
              to: mention.to,
              opens: opens(mention, tokens, scopes),
              aside: scopes.outside[mention.from] !== undefined,
              openly: asksOpenly(mention.from, tokens, lexicon),
            },
          ],
    ),
  )
  if (said.some(({ intent, opens, aside }) => intent !== 'result' && opens && !aside)) return said
  const whole = { opens: true, aside: false }
  const supposed = suppositionsIn(tokens, lexicon, scopes)
    .filter(({ from }) => !hasThought(from, scopes))
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

/** "If I go to 15 psi later I'd add studs": a thought about some day, no question. */
function isMusing(mention: Mention<IntentName>, tokens: readonly Token[], scopes: Scopes): boolean {
  if (tokens[mention.from]?.text !== 'if') return false
  const sentence = tokens.filter((_, at) => scopes.sentence[at] === scopes.sentence[mention.from])
  return !sentence.some(({ text }) => text === '?') && hasThought(mention.from, scopes)
}

/** "No idea what a line hone costs" says what is not known; "no clue what a girdle is" asks. */
function isUnknownFact(
  { from, to }: Mention<IntentName>,
  tokens: readonly Token[],
  scopes: Scopes,
) {
  const [first, last] = [tokens[from]?.text ?? '', tokens[to - 1]?.text ?? '']
  if (!['no', 'not', 'dont', 'clueless'].includes(first) || !['a', 'an'].includes(last))
    return false
  const end = tokens.findLastIndex(
    ({ kind }, at) => scopes.sentence[at] === scopes.sentence[from] && kind === 'word',
  )
  return !['is', 'are', 'means', 'does'].includes(tokens[end]?.text ?? '')
}

/** Whether its sentence ends on "some day" or the like. */
function hasThought(from: number, { sentence, markers }: Scopes): boolean {
  return markers.some(
    (marker) =>
      sentence[marker.from] === sentence[from] && marker.meanings.includes('thoughtAfter'),
  )
}

function opens(mention: Mention<IntentName>, tokens: readonly Token[], scopes: Scopes): boolean {
  for (let at = mention.from - 1; at >= 0; at -= 1) {
    if (scopes.clause[at] !== scopes.clause[mention.from] && tokens[mention.from]?.gap !== 'none')
      return true
    if (!LEADS.has(tokens[at]?.text ?? '')) return tokens[at]?.text === ','
  }
  return true
}

/** Asks for the end even beside facts. */
const INSISTS = new Set([
  'just',
  'verdict',
  'skip',
  'enough',
  'answer',
  'stop',
  'quit',
  'bottom',
  'chase',
  'result',
  'results',
])
/** What-if words that are one only with something to suppose. */
const LOOSE_WHAT_IF = new Set([
  'would',
  'will',
  'about',
  'assume',
  'assuming',
  'say',
  'take',
  'with',
  'at',
  'on',
  'imagine',
])

export interface Told {
  /** Facts told outside the sentence of the request. */
  readonly facts: number
  /** Facts in the sentence of the request. */
  readonly near: (request: Request) => number
  /** Whether facts are told outside the sentence of the request. */
  readonly elsewhere: (request: Request) => boolean
  readonly corrected: boolean
  readonly dontKnow: boolean
}

/** The intent of the whole message, and the request that carries it. */
export function intentOf(
  requests: readonly Request[],
  tokens: readonly Token[],
  told: Told,
): { intent: Intent; request?: Request } {
  const any = told.facts > 0
  const request = askedFor(requests, tokens, told)
  if (request) return { intent: request.intent, request }
  if (told.dontKnow && !any) return { intent: 'dont-know' }
  const change = requests.find((r) => r.intent === 'change' && changes(r, tokens, told))
  if (change) return { intent: 'change', request: change }
  return { intent: any && opensOnDenial(tokens) ? 'change' : 'tell' }
}

/** What a message asks for, the strongest request first. */
function askedFor(
  requests: readonly Request[],
  tokens: readonly Token[],
  told: Told,
): Request | undefined {
  const words = tokens.filter(({ kind }) => kind !== 'mark').length
  const find = (intent: IntentName, fits: (request: Request) => boolean): Request | undefined =>
    requests.find((request) => request.intent === intent && fits(request))
  const covers = (request: Request): boolean =>
    (request.to - request.from) / Math.max(1, words) >= 0.33
  const long = ({ from, to }: Request): boolean => to - from >= 3
  const brief = ({ from, to }: Request): boolean => to - from >= 2 && words <= 12
  const any = told.facts > 0
  const asks = ({ openly }: Request): boolean => openly === true
  return (
    find(
      'undo',
      (r) => (!any && r.opens && (covers(r) || long(r) || brief(r))) || (r.from === 0 && long(r)),
    ) ??
    find(
      'restart',
      (r) => r.opens && (covers(r) || (!any && (long(r) || brief(r) || r.from === 0))),
    ) ??
    find(
      'what-if',
      (r) => r.opens && whatIfFits(r, tokens, told) && !(r.job && told.elsewhere(r)),
    ) ??
    find('result', (r) => resultFits(r, tokens, told, covers(r))) ??
    find('why', (r) => r.opens && (asks(r) || ((!any || long(r)) && told.near(r) === 0))) ??
    find('explain', (r) => r.opens && (asks(r) || told.near(r) === 0))
  )
}

function changes(request: Request, tokens: readonly Token[], told: Told): boolean {
  const first = firstIn(request, tokens) || !told.corrected || admits(request, tokens)
  const own = request.opens && !request.aside && !isWish(request, tokens)
  return own && first && changeFits(request, tokens, told.facts > 0)
}

/** "Not 98 mm, the bore is 89": a figure that is taken back. */
function opensOnDenial(tokens: readonly Token[]): boolean {
  const now = tokens.findIndex(({ text }) => text === 'now')
  // "It's studs now, not bolts".
  if (now > 0 && tokens[now + 1]?.text === ',' && tokens[now + 2]?.text === 'not') return true
  return tokens[0]?.text === 'not' && tokens[1]?.kind === 'number'
}

function whatIfFits(request: Request, tokens: readonly Token[], told: Told): boolean {
  const last = tokens[request.to - 1]?.text ?? ''
  if (request.needsFacts && told.facts === 0) return false
  return told.facts > 0 || !LOOSE_WHAT_IF.has(last)
}

function resultFits(
  request: Request,
  tokens: readonly Token[],
  told: Told,
  covers: boolean,
): boolean {
  const said = tokens.slice(request.from, request.to).map(({ text }) => text)
  if (request.job) return !told.elsewhere(request) && told.near(request) === 0
  if (told.facts > 0) return said.some((word) => INSISTS.has(word)) && said.length >= 2
  return covers || (said.length >= 3 && request.opens)
}

/** "So I want to switch to studs": a plan, no change of what was said. */
function isWish({ from }: Request, tokens: readonly Token[]): boolean {
  return tokens[from]?.text === 'switch' && tokens[from - 1]?.text === 'to'
}

/** "I told you two bolt. I was wrong": no slip of the tongue. */
function admits({ from, to }: Request, tokens: readonly Token[]): boolean {
  return tokens[from]?.text === 'i' && to - from >= 2
}

function firstIn(request: Request, tokens: readonly Token[]): boolean {
  for (let at = 0; at < request.from; at += 1) if (!LEADS.has(tokens[at]?.text ?? '')) return false
  return true
}

const SINGLE_CHANGE = new Set([
  'set',
  'wrong',
  'wait',
  'sorry',
  'oops',
  'instead',
  'nope',
  'typo',
  'edit',
  'whoops',
  'change',
])

function changeFits(request: Request, tokens: readonly Token[], any: boolean): boolean {
  if (any) return true
  const word = tokens[request.from]?.text ?? ''
  return request.to - request.from >= 2 || !SINGLE_CHANGE.has(word) || word === 'change'
}
