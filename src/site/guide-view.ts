import { type Answer, type Answers, UNKNOWN } from '../../shared/answers.ts'
import { type Assessment, stillOpen } from '../../shared/assessment.ts'
import { FACT_KEYS, type FactKey, fact, isFactKey } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import type { AppDeps } from '../api/deps.ts'
import type {
  Comparison,
  ConversationView,
  Exchange,
  Heard,
  KnownFact,
} from '../pages/conversation-view.ts'
import type { Preview } from '../pages/layout.ts'
import { pageHref, shopPart } from '../pages/page-href.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Shop } from '../shops/schema.ts'
import { callMayShow, neededButAssumed } from '../talk/call-so-far.ts'
import { helperOf } from './helper-view.ts'
import { unknownParts } from './link-extras.ts'
import { olderLinkOf } from './older-link.ts'
import { questionView, type Refused } from './question-view.ts'
import type { RequestView } from './request-view.ts'

export interface GuideExtras {
  /** The shop in whose frame the guide stands. */
  readonly shop?: Shop | undefined
  readonly preview?: Preview | undefined
  /** The earlier answer that the person wants to change. */
  readonly asking?: FactKey | undefined
  readonly refused?: Refused
  readonly heard?: Heard | undefined
  readonly typed?: string | undefined
  readonly compare?: Comparison | undefined
}

/** The conversation as the page draws it. */
export function guideView(
  { rulebook, content }: Pick<AppDeps, 'rulebook' | 'content'>,
  request: RequestView,
  assessment: Assessment,
  extras: GuideExtras = {},
): ConversationView {
  const { answers, link, units, problems } = request
  const hrefFor = (key: FactKey): string => pageHref('/', link, units, { ask: key })
  const asked = extras.asking ?? nextFact(assessment)
  return {
    units,
    link,
    exchanges: exchanges(rulebook, request, hrefFor, extras.shop),
    known: [...known(assessment, request, hrefFor, extras.shop), ...parked(request, hrefFor)],
    question: asked
      ? questionView({ rulebook, content }, request, assessment, asked, extras.refused)
      : null,
    heard: extras.heard,
    typed: extras.typed,
    compare: extras.compare,
    sofar: soFar(rulebook, request, assessment),
    left: assessment.next?.left ?? 0,
    givenUp: stillOpen(assessment.assumptions).filter(({ fact: key }) => isGivenUp(answers, key))
      .length,
    needed: assessment.next?.needed ?? 0,
    canUndo: request.state.before.size > 0,
    contradictions: assessment.contradictions.map(({ title, text }) => ({ title, text })),
    problems: [...problems, ...unknownParts(request.other, ['ask', 'said'])],
    helper: helperOf(request, extras.shop),
    older: olderLinkOf(rulebook, request.version),
    preview: extras.preview,
    presets: rulebook.presets.map(({ id, title, summary }) => ({
      id,
      title,
      summary,
      href: pageHref(`/preset/${id}`, shopPart(link), units),
    })),
  }
}

function isGivenUp(answers: Answers, key: string): boolean {
  return isFactKey(key) && answers[key] === UNKNOWN
}

function nextFact({ next }: Assessment): FactKey | undefined {
  return next && isFactKey(next.fact) ? next.fact : undefined
}

function exchanges(
  { questions }: Rulebook,
  { answers, extras }: RequestView,
  hrefFor: (key: FactKey) => string,
  shop: Shop | undefined,
): Exchange[] {
  const setBy = setterOf(shop)
  return questions.flatMap(({ fact: key, ask }): Exchange[] => {
    if (!isFactKey(key)) return []
    const answer = answers[key]
    if (answer === undefined) return []
    return [
      {
        fact: key,
        question: ask,
        answer: answer === UNKNOWN ? 'I don’t know' : printAnswer(key, answer),
        ...(extras.by.includes(key)
          ? { origin: 'helper', setBy }
          : { origin: answer === UNKNOWN ? 'unknown' : 'said' }),
        changeHref: hrefFor(key),
      },
    ]
  })
}

function setterOf(shop: Shop | undefined): string {
  return shop?.name ?? 'your helper'
}

function known(
  { build }: Assessment,
  { answers, extras }: RequestView,
  hrefFor: (key: FactKey) => string,
  shop: Shop | undefined,
): KnownFact[] {
  // An untouched start assumes everything; chips of it would only be noise.
  if (Object.keys(answers).length === 0) return []
  return FACT_KEYS.flatMap((key): KnownFact[] => {
    const entry = build[key]
    if (!entry || entry.state === 'not-needed') return []
    const { state, text, because } = entry
    const setBy = state === 'said' && extras.by.includes(key) ? setterOf(shop) : undefined
    return [{ key, short: fact(key).short, text, state, setBy, because, changeHref: hrefFor(key) }]
  })
}

function parked({ state }: RequestView, hrefFor: (key: FactKey) => string): KnownFact[] {
  return (Object.entries(state.parked) as [FactKey, Answer][]).map(([key, answer]) => ({
    key,
    short: fact(key).short,
    text: printAnswer(key, answer),
    state: 'parked',
    because: 'It does not count with your other answers; it comes back when they change.',
    changeHref: hrefFor(key),
  }))
}

function soFar(
  rulebook: Rulebook,
  { answers, link, units }: RequestView,
  assessment: Assessment,
): ConversationView['sofar'] {
  if (!callMayShow(rulebook, answers, assessment)) return null
  const { sentence, confidence, targetMoves } = assessment.call
  const isGuess = neededButAssumed(rulebook, assessment).length > 0
  return { sentence, confidence, isGuess, targetMoves, href: pageHref('/call', link, units) }
}
