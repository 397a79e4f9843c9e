import { type Answer, UNKNOWN } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import type { AppDeps } from '../api/deps.ts'
import type { Question } from '../pages/conversation-view.ts'
import type { Content } from '../pages/markdown.ts'
import { explanationOf } from '../pages/measuring.ts'
import { pageHref } from '../pages/page-href.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { RequestView } from './request-view.ts'

/** A refused answer, with what was typed. */
export interface Refused {
  readonly problem: Problem
  readonly value: string
  readonly unit: string
}

/** One question as the page asks it. */
export function questionView(
  { rulebook, content }: Pick<AppDeps, 'rulebook' | 'content'>,
  request: RequestView,
  { build, next }: Assessment,
  key: FactKey,
  refused: Refused | undefined,
): Question {
  const { answers } = request
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
    ...toRead(content, request, key),
    ...(present === undefined || present === UNKNOWN ? {} : fieldOf(present)),
    ...(refused ? { value: refused.value, unit: refused.unit, problem: refused.problem } : {}),
  }
}

/** Where a person reads more about the subject of a question. */
function toRead(
  content: Content,
  { link, units }: RequestView,
  key: FactKey,
): Pick<Question, 'learnHref' | 'explained'> {
  const found = explanationOf(content, key)
  return {
    learnHref: pageHref(`/learn/measuring#${key}`, link, units),
    ...(found
      ? { explained: { title: found.title, href: pageHref(`/learn/${found.slug}`, link, units) } }
      : {}),
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

/** A choice's words inside a sentence: “inline four”, but “V8” and “SAE grade 8”. */
function inSentence(key: FactKey, text: string): string {
  if (fact(key).kind !== 'choice') return text
  return `“${/^[A-Z][a-z]/.test(text) ? `${text.charAt(0).toLowerCase()}${text.slice(1)}` : text}”`
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
    return `The guide then takes ${inSentence(key, entry.text)}. ${entry.because ?? because}`
  if (said && because) return `The guide then takes a usual value. ${because}`
  return 'The guide then leaves it out.'
}
