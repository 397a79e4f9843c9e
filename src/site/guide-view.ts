import { type Answer, type Answers, UNKNOWN } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { FACT_KEYS, type FactKey, fact, isFactKey } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import type { Problem } from '../../shared/problem.ts'
import { toQuery } from '../../shared/share-link.ts'
import type {
  Comparison,
  ConversationView,
  Exchange,
  Heard,
  KnownFact,
  Question,
} from '../pages/conversation-view.ts'
import { pageHref } from '../pages/page-href.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { callMayShow } from '../talk/call-so-far.ts'
import { learnHrefFor } from './learn-links.ts'
import type { RequestView } from './request-view.ts'

export interface GuideExtras {
  /** The earlier answer that the person wants to change. */
  readonly asking?: FactKey | undefined
  /** A refused answer, with what was typed. */
  readonly refused?: { readonly problem: Problem; readonly value: string; readonly unit: string }
  readonly heard?: Heard | undefined
  readonly typed?: string | undefined
  readonly compare?: Comparison | undefined
}

/** The conversation as the page draws it. */
export function guideView(
  rulebook: Rulebook,
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
    exchanges: exchanges(rulebook, answers, hrefFor),
    known: [...known(assessment, answers, hrefFor), ...parked(request, hrefFor)],
    question: asked ? question(rulebook, request, assessment, asked, extras) : null,
    heard: extras.heard,
    typed: extras.typed,
    compare: extras.compare,
    sofar: soFar(rulebook, request, assessment),
    left: assessment.next?.left ?? 0,
    contradictions: assessment.contradictions.map(({ title, text }) => ({ title, text })),
    problems,
    presets: rulebook.presets.map(({ id, title, summary }) => ({
      id,
      title,
      summary,
      href: pageHref(`/preset/${id}`, '', units),
    })),
  }
}

function nextFact({ next }: Assessment): FactKey | undefined {
  return next && isFactKey(next.fact) ? next.fact : undefined
}

function exchanges(
  { questions }: Rulebook,
  answers: Answers,
  hrefFor: (key: FactKey) => string,
): Exchange[] {
  return questions.flatMap(({ fact: key, ask }): Exchange[] => {
    if (!isFactKey(key)) return []
    const answer = answers[key]
    if (answer === undefined) return []
    return [
      {
        fact: key,
        question: ask,
        answer: answer === UNKNOWN ? 'I don’t know' : printAnswer(key, answer),
        origin: answer === UNKNOWN ? 'unknown' : 'said',
        changeHref: hrefFor(key),
      },
    ]
  })
}

function known(
  { build }: Assessment,
  answers: Answers,
  hrefFor: (key: FactKey) => string,
): KnownFact[] {
  // An untouched start assumes everything; chips of it would only be noise.
  if (Object.keys(answers).length === 0) return []
  return FACT_KEYS.flatMap((key): KnownFact[] => {
    const entry = build[key]
    if (!entry || entry.state === 'not-needed') return []
    const { state, text, because } = entry
    return [{ key, short: fact(key).short, text, state, because, changeHref: hrefFor(key) }]
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

function question(
  rulebook: Rulebook,
  { answers, link, units }: RequestView,
  { build, next }: Assessment,
  key: FactKey,
  { refused }: GuideExtras,
): Question {
  const entry = fact(key)
  const asked = rulebook.questions.find((one) => one.fact === key)
  const present = answers[key]
  return {
    fact: key,
    ask: asked?.ask ?? entry.label,
    why: next?.fact === key ? next.why : (asked?.why ?? entry.help),
    assumes: assumes(rulebook, key, build[key], present !== undefined && present !== UNKNOWN),
    help: entry.help,
    measure: entry.measure,
    learnHref: learnHrefFor(key, link, units),
    ...(present === undefined || present === UNKNOWN ? {} : fieldOf(present)),
    ...(refused ? { value: refused.value, unit: refused.unit, problem: refused.problem } : {}),
  }
}

function fieldOf(answer: Answer): { value: string; unit?: string } {
  if (typeof answer !== 'object') return { value: String(answer) }
  const { value } = answer
  if ('unit' in answer) return { value: String(value), unit: answer.unit }
  return 'currency' in answer
    ? { value: String(value), unit: answer.currency }
    : { value: String(value) }
}

/** What stands in for an answer that the person does not have. */
function assumes(
  { assumptions }: Rulebook,
  key: FactKey,
  entry: Assessment['build'][string] | undefined,
  said: boolean,
): string {
  if (entry?.state === 'derived')
    return `The guide works it out from your other answers: ${entry.text}.`
  const because = (Object.hasOwn(assumptions, key) && assumptions[key]?.because) || ''
  if (entry?.state === 'assumed')
    return `The guide then takes ${entry.text}. ${entry.because ?? because}`
  if (said && because) return `The guide then takes a usual value. ${because}`
  return 'The guide then leaves it out.'
}

function soFar(
  rulebook: Rulebook,
  { answers, link, units }: RequestView,
  assessment: Assessment,
): ConversationView['sofar'] {
  if (!callMayShow(rulebook, answers, assessment)) return null
  const { sentence, confidence } = assessment.call
  return { sentence, confidence, href: pageHref('/call', link, units) }
}

/** A supposed case beside the present one. */
export function comparison(
  rulebook: Rulebook,
  request: RequestView,
  present: Assessment,
  supposed: { answers: Answers; assessment: Assessment },
): Comparison {
  const changed = FACT_KEYS.filter(
    (key) => JSON.stringify(request.answers[key]) !== JSON.stringify(supposed.answers[key]),
  )
  const row = (label: string, now: string, other: string) => ({ label, now, other })
  const holds = ({ routes, call }: Assessment): string => {
    const route = routes.find(({ id }) => id === call.route)
    return route ? `${route.holdsIn} of 100` : 'withheld'
  }
  const other = supposed.assessment
  return {
    title: changed
      .map((key) => `${fact(key).short} ${printAnswer(key, supposed.answers[key] as Answer)}`)
      .join(', '),
    present: present.call.sentence,
    other: other.call.sentence,
    rows: [
      ...changed.map((key) =>
        row(fact(key).label, present.build[key]?.text ?? '', other.build[key]?.text ?? ''),
      ),
      row(
        'Peak cylinder pressure, bar',
        String(present.loads.peakPressure.value),
        String(other.loads.peakPressure.value),
      ),
      row(
        'Greatest pull on a cap, kN',
        String(present.loads.worstPull.force),
        String(other.loads.worstPull.force),
      ),
      row(
        'Greatest side push, kN',
        String(present.loads.worstSide.force),
        String(other.loads.worstSide.force),
      ),
      row('The called route holds in', holds(present), holds(other)),
    ],
    keepHref: pageHref(
      '/',
      toQuery(supposed.answers, rulebook.version, request.state.parked),
      request.units,
    ),
  }
}
