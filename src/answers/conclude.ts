import { UNKNOWN } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { takesPlace } from './changed-figure.ts'
import { deferredAt, unknownsIn } from './dont-know.ts'
import type { Findings, Reading } from './findings.ts'
import { type Intent, intentOf, type Told } from './intents.ts'
import { mentionsIn } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import { endsOnMark, isOnlyAsked } from './only-asked.ts'
import { placeOf, sentenceStart } from './question-words.ts'
import { argues } from './reasons-asked.ts'
import type { Request } from './requests.ts'
import { settle } from './settle.ts'
import { questionAfter } from './suppositions.ts'
import { leaveAsked, topicOf } from './topics.ts'
import { boundedAbove } from './upper-bounds.ts'

/** What a message comes to: one reading a fact at most, what it asks, and about what. */
export interface Conclusion {
  readonly readings: readonly Reading[]
  readonly intent: Intent
  readonly topic?: string
  readonly atMost?: readonly FactKey[]
}

/** Settle the readings, find the intent, and leave out facts that were only asked about. */
export function conclude(
  parts: Parts,
  asking: FactKey | undefined,
  findings: Findings,
): Conclusion {
  const { tokens, scopes, lexicon, requests } = parts
  const { settled, corrected } = settleMessage(parts, findings)
  const unknowns = unknownsIn(parts, settled, asking)
  const open = requests.filter((request) => !isGuess(request, settled, asking, parts))
  // That nobody knows what the caps have been through is one of the choices of that question.
  const history = unknowns.filter(({ key }) => key === 'capHistory' && key !== asking)
  // "No idea what the caps have been through", to that very question.
  const said = settled.filter(({ key, answer }) => !(key === asking && answer === UNKNOWN))
  const told = whatIsTold(parts, [...said, ...history], corrected, asking)
  const { intent, request } = intentOf(open, tokens, lexicon, told)
  // "I don't know what that is, I haven't measured it".
  if (intent === 'explain' && asking && request && shrugsAfter(request, parts)) {
    return { readings: [...settled, ...unknowns], intent: 'dont-know' }
  }
  if ((intent === 'why' || intent === 'explain') && request) {
    const after = topicOf(request, tokens, scopes, lexicon)
    const before = after ? undefined : topicBefore(request, parts)
    const about = new Set(saidAbout(request, settled, before !== undefined, parts))
    const topic = after ?? before ?? asking
    const readings = settled.filter((reading) => !about.has(reading))
    leaveAsked(request, tokens, scopes, findings)
    return { readings, intent, ...(topic ? { topic } : {}) }
  }
  if (intent === 'result') {
    const topic = request && routeAsked(request, parts)
    // A question commits nothing.
    const asked = settled.filter(({ from }) => endsOnMark(from, parts))
    const about = new Set([...(request?.job ? saidAfter(request, settled, parts) : []), ...asked])
    const own = settled.filter((reading) => !about.has(reading))
    return { readings: [...own, ...unknowns], intent, ...(topic ? { topic } : {}) }
  }
  if (intent === 'what-if' && request) {
    const supposed = supposedBy(request, settled, parts)
    const atMost = boundedAbove(supposed, parts)
    const bounds = atMost.length > 0 ? { atMost } : {}
    return { readings: [...supposed, ...unknowns], intent, ...bounds }
  }
  if (intent === 'tell' && takesPlace(settled, parts)) {
    return { readings: [...settled, ...unknowns], intent: 'change' }
  }
  const only = asking === undefined && intent === 'tell' && isOnlyAsked(settled, parts)
  if (only) return { readings: settled, intent: 'what-if' }
  if (intent !== 'undo' && intent !== 'restart') {
    return { readings: [...settled, ...unknowns], intent }
  }
  return { readings: withoutNoes(settled, parts), intent }
}

function takesBack({ requests }: Parts): boolean {
  return requests.some(({ intent }) => intent === 'undo' || intent === 'restart')
}

/** The no of "no no, one step back" answers nothing. */
function withoutNoes(settled: readonly Reading[], { tokens, lexicon }: Parts): Reading[] {
  const { no, yes } = lexicon.words.asking
  return settled.filter(({ from }) => {
    const said = tokens[from]?.text ?? ''
    return !no.has(said) && !yes.has(said)
  })
}

/** What the intent hangs on besides the requests. */
function whatIsTold(
  parts: Parts,
  settled: readonly Reading[],
  corrected: boolean,
  asking: FactKey | undefined,
): Told {
  const { tokens, scopes } = parts
  const { defers } = parts.lexicon.words.asking
  return {
    facts: countTold(parts, takesBack(parts) ? withoutNoes(settled, parts) : settled),
    near: (each) => figuresAfter(each, settled, parts).length,
    elsewhere: (each) =>
      settled.some(({ from }) => scopes.sentence[from] !== scopes.sentence[each.from]),
    corrected: corrected || isTakenBack(parts),
    dontKnow:
      (asking !== undefined && deferredAt(parts, asking) !== undefined) ||
      scopes.markers.some(
        (marker) =>
          marker.meanings.includes('dontKnow') &&
          !(asking === undefined && isOfThought(marker.from, parts)) &&
          // "Two bolt or four, I'd have to look" leaves open rather than answers.
          (asking !== undefined || !defers.has(tokens[marker.to - 1]?.text ?? '')),
      ),
  }
}

/** "Might spray it some day, who knows": what is not known is only what may come. */
function isOfThought(
  at: number,
  { tokens, lexicon, scopes: { sentence, outside } }: Parts,
): boolean {
  if (!lexicon.words.asking.musing.has(tokens[at]?.text ?? '')) return false
  for (let from = at - 1; from >= 0 && sentence[from] === sentence[at]; from -= 1) {
    if (outside[from] === 'hypothetical') return true
  }
  return false
}

/** "Lets say 9", "assume 10": to a question of a figure that is an answer. */
function isGuess(
  { intent, from: start, to }: Request,
  settled: readonly Reading[],
  asking: FactKey | undefined,
  { tokens, lexicon }: Parts,
): boolean {
  const { supposing } = lexicon.words.asking
  const said = tokens.slice(start, to)
  const guesses = intent === 'what-if' && said.some(({ text }) => supposing.has(text))
  if (!guesses || tokens.some(({ text }) => text === '?')) return false
  return settled.length > 0 && settled.every(({ key, from }) => key === asking && from - to <= 2)
}

function settleMessage(
  { scopes, requests }: Parts,
  findings: Findings,
): { settled: Reading[]; corrected: boolean } {
  const at = scopes.markers
    .filter(({ meanings }) => meanings.includes('correction'))
    .map(({ from }) => from)
  at.push(...requests.flatMap(({ anewFrom }) => anewFrom ?? []))
  const whatIf = requests.find(({ intent, opens }) => intent === 'what-if' && opens)
  return settle(findings, { at, ...(whatIf ? { anewFrom: whatIf.from } : {}) })
}

/** "10… wait no, 9.4": a figure, then words that take it back. */
function isTakenBack({ figures, scopes }: Parts): boolean {
  return scopes.markers.some(
    ({ from, meanings }) => meanings.includes('correction') && figures.some(({ to }) => to <= from),
  )
}

function shrugsAfter({ to }: Request, { scopes, tokens }: Parts): boolean {
  const marker = scopes.markers.find(
    ({ from, meanings }) => from >= to && meanings.includes('dontKnow'),
  )
  return (
    marker !== undefined &&
    scopes.clause[marker.from] !== scopes.clause[to - 1] &&
    tokens.length > to
  )
}

/** The route that a question about the job names: "do I need a girdle?" */
function routeAsked(
  request: Request,
  { tokens, scopes: { sentence }, lexicon }: Parts,
): string | undefined {
  const named = mentionsIn(lexicon.routesAsked, tokens)
  return named.find(({ from }) => sentence[from] === sentence[request.from])?.meanings[0]
}

/** "Cap walk - what does that mean?": the words before the question are what it asks about. */
function topicBefore(
  { from, intent }: Request,
  { tokens, scopes, lexicon }: Parts,
): string | undefined {
  if (intent !== 'explain' || from === 0 || from > 6) return undefined
  const words = tokens.slice(0, from).filter(({ kind }) => kind === 'word')
  const own = scopes.sentence[0] === scopes.sentence[from] || scopes.sentence[from] === 1
  const topic = words
    .filter(({ text }) => !lexicon.leads.has(text))
    .map(({ text }) => text)
    .join(' ')
  return own && topic !== '' ? topic : undefined
}

function saidAbout(
  request: Request,
  settled: readonly Reading[],
  before: boolean,
  parts: Parts,
): Reading[] {
  const { tokens, scopes, lexicon } = parts
  const earlier = before ? settled.filter(({ to }) => to <= request.from) : []
  const argued = settled.filter(({ from }) => argues(from, tokens, scopes, lexicon))
  return [...earlier, ...saidAfter(request, settled, parts), ...argued]
}

/** What is supposed, without what is only asked beside it. */
function supposedBy(request: Request, settled: readonly Reading[], parts: Parts): Reading[] {
  const { tokens, lexicon, scopes } = parts
  const end = questionAfter(request.from, tokens, lexicon, scopes)
  const { verdicts } = lexicon.questions
  const asked = ({ from }: Reading): boolean =>
    from >= end &&
    (scopes.sentence[from] === scopes.sentence[request.from] ||
      placeOf(verdicts, tokens, sentenceStart(scopes.sentence, from), from) >= 0)
  const supposed = settled.some(({ from }) => from >= request.from && from < end)
  return supposed ? settled.filter((reading) => !asked(reading)) : [...settled]
}

/** Readings in the sentence of a request, from the request on. */
function saidAfter(request: Request, settled: readonly Reading[], { scopes }: Parts): Reading[] {
  return settled.filter(
    ({ from }) => from >= request.from && scopes.sentence[from] === scopes.sentence[request.from],
  )
}

/** Figures after "what is" make it no question of words: "what is my cap margin at 12 psi". */
function figuresAfter(request: Request, settled: readonly Reading[], parts: Parts): Reading[] {
  const { tokens, scopes } = parts
  // "What does 7/16-14 mean?"
  const meaning = tokens.some(
    ({ text }, at) =>
      text.startsWith('mean') && scopes.sentence[at] === scopes.sentence[request.from],
  )
  return saidAfter(request, settled, parts).filter(({ key }) => {
    const { kind } = fact(key)
    return kind !== 'choice' && !(kind === 'thread' && meaning)
  })
}

/** Facts told, not counting those that a "why" or "what is" only names. */
function countTold(parts: Parts, settled: readonly Reading[]): number {
  const { requests, scopes } = parts
  const asks = requests.find(
    ({ intent, opens }) => opens && (intent === 'explain' || intent === 'why'),
  )
  if (!asks || (!asks.openly && figuresAfter(asks, settled, parts).length > 0))
    return settled.length
  const elsewhere = ({ from }: Reading): boolean =>
    scopes.sentence[from] !== scopes.sentence[asks.from]
  return settled.filter(elsewhere).length
}
