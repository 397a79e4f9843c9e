import type { IntentName, Lexicon } from './lexicon.ts'
import type { Request } from './requests.ts'
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

type Asking = Lexicon['words']['asking']

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
  lexicon: Lexicon,
  told: Told,
): { intent: Intent; request?: Request } {
  const any = told.facts > 0
  const request = askedFor(requests, tokens, lexicon, told)
  if (request) return { intent: request.intent, request }
  if (told.dontKnow && !any) return { intent: 'dont-know' }
  const change = requests.find((r) => r.intent === 'change' && changes(r, tokens, lexicon, told))
  if (change) return { intent: 'change', request: change }
  return { intent: any && opensOnDenial(tokens, lexicon) ? 'change' : 'tell' }
}

/** What a message asks for, the strongest request first. */
function askedFor(
  requests: readonly Request[],
  tokens: readonly Token[],
  { words: { asking } }: Lexicon,
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
  // "New build but factory caps".
  const names = ({ from }: Request): boolean => any && asking.anew.has(tokens[from]?.text ?? '')
  // "Is the rev limit important? Mine is 6250" tells.
  const asks = (r: Request): boolean => r.openly === true && !(r.job && told.elsewhere(r))
  return (
    find(
      'undo',
      (r) =>
        (!any && r.opens && (covers(r) || long(r) || brief(r) || isUndo(r, tokens))) ||
        (r.from === 0 && long(r)),
    ) ??
    find(
      'restart',
      (r) => r.opens && !names(r) && (covers(r) || (!any && (long(r) || brief(r) || r.from === 0))),
    ) ??
    find(
      'what-if',
      (r) => r.opens && whatIfFits(r, tokens, asking, told) && !(r.job && told.elsewhere(r)),
    ) ??
    find('result', (r) => resultFits(r, tokens, asking, told, covers(r))) ??
    verdictAsked(requests, tokens, asking, told) ??
    find('why', (r) => r.opens && (asks(r) || ((!any || long(r)) && told.near(r) === 0))) ??
    find('explain', (r) => r.opens && (asks(r) || told.near(r) === 0))
  )
}

/** "What's the verdict with what you have": supposes nothing, so it asks for the call. */
function verdictAsked(
  requests: readonly Request[],
  tokens: readonly Token[],
  { insists }: Asking,
  { facts }: Told,
): Request | undefined {
  const asked = requests.find(
    ({ intent, opens, from, to }) =>
      intent === 'what-if' && opens && tokens.slice(from, to).some(({ text }) => insists.has(text)),
  )
  return asked && facts === 0 ? { ...asked, intent: 'result' } : undefined
}

/** "Undo, that was wrong". */
function isUndo({ from }: Request, tokens: readonly Token[]): boolean {
  return from === 0 && tokens[0]?.text === 'undo'
}

function changes(
  request: Request,
  tokens: readonly Token[],
  lexicon: Lexicon,
  told: Told,
): boolean {
  if (request.anewFrom !== undefined) return told.corrected || request.plainly === true
  const first =
    firstIn(request, tokens, lexicon) ||
    opensOnDenial(tokens, lexicon) ||
    !told.corrected ||
    admits(request, tokens)
  const own = request.opens && !request.aside && !isWish(request, tokens)
  return own && first && changeFits(request, tokens, lexicon.words.asking, told.facts > 0)
}

/** "Not 98 mm, the bore is 89": a figure that is taken back. */
function opensOnDenial(tokens: readonly Token[], { words }: Lexicon): boolean {
  const now = tokens.findIndex(({ text }) => text === 'now')
  // "It's studs now, not bolts".
  if (now > 0 && tokens[now + 1]?.text === ',' && tokens[now + 2]?.text === 'not') return true
  const [first, second] = tokens
  if (first?.text === 'not' && second?.kind === 'number') return true
  // "Nope, bore's 4.060, not 4.030", "no no no, a turbo".
  if (!words.asking.no.has(first?.text ?? '')) return false
  if (first?.text === 'no' && second?.text === 'no') return true
  return second?.kind === 'mark' && tokens.some(isDenied)
}

function isDenied({ kind }: Token, at: number, tokens: readonly Token[]): boolean {
  return kind === 'number' && tokens[at - 1]?.text === 'not'
}

function whatIfFits(
  request: Request,
  tokens: readonly Token[],
  { looseWhatIf }: Asking,
  told: Told,
): boolean {
  const last = tokens[request.to - 1]?.text ?? ''
  if (request.needsFacts && told.facts === 0) return false
  return told.facts > 0 || !looseWhatIf.has(last)
}

function resultFits(
  request: Request,
  tokens: readonly Token[],
  { insists, ofTheEnd, ends }: Asking,
  told: Told,
  covers: boolean,
): boolean {
  const said = tokens.slice(request.from, request.to).map(({ text }) => text)
  if (request.job) return !told.elsewhere(request) && told.near(request) === 0
  const first = said[0] ?? ''
  if (told.facts > 0) {
    const names = ofTheEnd.has(first) && told.near(request) > 0
    return said.some((word) => insists.has(word)) && said.length >= 2 && !names
  }
  if (ends.has(first) && tokens.some(({ kind }) => kind === 'number')) return false
  return covers || (said.length >= 3 && request.opens)
}

/** "So I want to switch to studs": a plan, no change of what was said. */
function isWish({ from }: Request, tokens: readonly Token[]): boolean {
  return tokens[from]?.text === 'switch' && tokens[from - 1]?.text === 'to'
}

/** "I told you two bolt. I was wrong", "383 not 350, sorry": no slip of the tongue. */
function admits({ from, to }: Request, tokens: readonly Token[]): boolean {
  const denied = tokens[from - 2]
  if (denied && tokens[from - 1]?.text === ',' && isDenied(denied, from - 2, tokens)) return true
  // "The bore is 4.030, typed it wrong": not "no that's wrong, 4.040", which goes on.
  const wrong = tokens.slice(from, to).some(({ text }) => text === 'wrong')
  return (
    (wrong && !tokens.slice(to).some(({ kind }) => kind !== 'mark')) ||
    // "Bore 4.125, sorry I meant 4.155" is a slip of the tongue after all.
    (tokens[from]?.text === 'i' && to - from >= 2 && !/^mean/.test(tokens[from + 1]?.text ?? ''))
  )
}

function firstIn(request: Request, tokens: readonly Token[], { leads }: Lexicon): boolean {
  for (let at = 0; at < request.from; at += 1) if (!leads.has(tokens[at]?.text ?? '')) return false
  return true
}

function changeFits(
  request: Request,
  tokens: readonly Token[],
  { singleChange }: Asking,
  any: boolean,
): boolean {
  if (any) return true
  const word = tokens[request.from]?.text ?? ''
  return request.to - request.from >= 2 || !singleChange.has(word) || word === 'change'
}
