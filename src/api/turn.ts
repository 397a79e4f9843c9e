import type { Answer, Answers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { glossaryEntry } from '../pages/glossary.ts'
import { renderMarkdown } from '../pages/markdown.ts'
import { pageHref } from '../pages/page-href.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { callMayShow } from '../talk/call-so-far.ts'
import { replyTo } from '../talk/reply.ts'
import { says } from '../talk/says.ts'
import { type TalkState, talkToQuery } from '../talk/state.ts'
import type { Turn } from '../talk/turn.ts'
import type { AppDeps } from './deps.ts'
import type { TurnBody } from './turn-body.ts'
import type { TurnResponse } from './turn-response.ts'

/** What the answer to a turn is made from: where it stood, what the turn did, and the assessments. */
export interface TurnDone {
  readonly body: TurnBody
  readonly before: TalkState
  readonly turn: Turn
  readonly present: Assessment
  readonly supposed?: Assessment | undefined
}

/** The answer to one turn. Nothing is kept: the next request brings the state again. */
export function turnAnswer(deps: AppDeps, done: TurnDone): TurnResponse {
  const { rulebook } = deps
  const { turn, present, supposed, body } = done
  const { state, intent, understanding } = turn
  const link = talkToQuery(state, rulebook.version)
  const next = nextAsked(rulebook, present)
  const call =
    intent === 'result' || callMayShow(rulebook, state.answers, present) ? shortly(present) : null
  const markdown = says({
    before: done.before,
    turn,
    reply: reply(deps, done),
    compared: supposed && {
      present: present.call.sentence,
      supposed: supposed.call.sentence,
      isCall: call !== null,
    },
    call: call?.sentence,
    next: askedAfter(rulebook, done) ?? next ?? undefined,
  })
  const localHref = (href: string): string => pageHref(href, link, body.units)
  return {
    answers: { ...state.answers },
    parked: { ...state.parked },
    before: Object.fromEntries([...state.before].map(([key, answer]) => [key, answer ?? null])),
    intent,
    accepted: accepted(done),
    spans: [...(understanding?.spans ?? [])],
    unclear: [...(understanding?.unclear ?? [])],
    ...(understanding?.topic === undefined ? {} : { topic: understanding.topic }),
    says: { markdown, html: renderMarkdown(markdown, { localHref }) },
    ...(turn.supposed ? { supposed: { ...turn.supposed } } : {}),
    ...(supposed ? { compare: { present: side(present), supposed: side(supposed) } } : {}),
    next,
    call,
    link,
  }
}

function reply(
  { rulebook, content }: AppDeps,
  { turn, body, present }: TurnDone,
): string | undefined {
  const explain = (words: string) => glossaryEntry(content, words)
  const { questions, routes } = rulebook
  return replyTo({ questions, routes, explain }, turn, body.asking, present.call)
}

function nextAsked({ questions }: Rulebook, { next }: Assessment): TurnResponse['next'] {
  if (!next) return null
  return { ...next, ask: questions.find((one) => one.fact === next.fact)?.ask ?? next.label }
}

/** After a question of the person's own, the guide's last question stands; it is asked again. */
function askedAfter({ questions }: Rulebook, { turn, body }: TurnDone) {
  const asks = turn.intent === 'why' || turn.intent === 'explain'
  return asks ? questions.find((one) => one.fact === body.asking) : undefined
}

function shortly({ call: { route, sentence, confidence } }: Assessment) {
  return { route, sentence, confidence }
}

function side(assessment: Assessment) {
  const { loads, routes, call } = assessment
  return {
    ...shortly(assessment),
    holdsIn: routes.find(({ id }) => id === call.route)?.holdsIn ?? null,
    peakPressure: loads.peakPressure.value,
    worstPull: loads.worstPull.force,
    worstSide: loads.worstSide.force,
  }
}

/** What was taken, each with the words it came from; a what-if takes nothing. */
function accepted({ turn, body }: TurnDone): TurnResponse['accepted'] {
  const { understanding, state } = turn
  if (turn.supposed) return []
  const entry = (key: FactKey, answer: Answer, words: string) => ({
    key,
    short: fact(key).short,
    answer,
    text: printAnswer(key, answer),
    words,
  })
  if (!understanding) {
    const answer = body.asking && answerOf(state, body.asking)
    return body.asking && answer !== undefined ? [entry(body.asking, answer, '')] : []
  }
  return understanding.spans.flatMap(({ key, start, end }) => {
    const answer = understanding.facts[key]
    return answer === undefined ? [] : [entry(key, answer, (body.text ?? '').slice(start, end))]
  })
}

/** An answer may be parked the moment it is given. */
function answerOf({ answers, parked }: TalkState, key: FactKey): Answers[FactKey] {
  return answers[key] ?? parked[key]
}
