import { type Answers, choicesOf } from '../../shared/answers.ts'
import type { NextQuestion, TurningPoint } from '../../shared/assessment.ts'
import { fact } from '../../shared/fact-keys.ts'
import type { RouteId } from '../../shared/route-ids.ts'
import type { Build } from '../build/build.ts'
import { buildFactText, type UnitSystem } from '../facts/live-facts.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Next } from './next-question.ts'
import type { TurningValue } from './turning-points.ts'

function titleOf({ routes }: Rulebook, id: RouteId): string {
  return routes.find((route) => route.id === id)?.title ?? id
}

/** A route's title as it stands within a sentence. */
function inSentence(title: string): string {
  return title.charAt(0).toLowerCase() + title.slice(1)
}

function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** The next question as the API gives it. */
export function nextReport(next: Next | undefined, rulebook: Rulebook): NextQuestion | null {
  if (!next) return null
  const question = rulebook.questions.find(({ fact: key }) => key === next.key)
  const titles = next.separates.map((id) => inSentence(titleOf(rulebook, id)))
  const between = titles.length > 1 ? ` It can still decide between: ${titles.join('; ')}.` : ''
  return {
    fact: next.key,
    label: question?.ask ?? fact(next.key).label,
    why: `${question?.why ?? fact(next.key).help}${between}`,
    separates: [...next.separates],
    needed: next.needed,
    left: next.left,
  }
}

/** A turning point in words: "Below 11 psi: keep the caps and fit studs". */
export function turningReport(
  { key, direction, at, route }: TurningValue,
  build: Build,
  answers: Answers,
  rulebook: Rulebook,
  system: UnitSystem,
): TurningPoint {
  const entry = fact(key)
  const text = (value: number | string): string =>
    buildFactText({ key, state: 'assumed', value }, build, answers, system)
  const where = typeof at === 'string' ? (choicesOf(entry)[at] ?? at) : text(at)
  const title = titleOf(rulebook, route)
  const sentence =
    direction === 'is'
      ? `${startOfSentence(entry.short)} “${where}”: ${inSentence(title)}.`
      : `${startOfSentence(entry.short)} ${direction} ${where}: ${inSentence(title)}.`
  return {
    fact: key,
    label: entry.label,
    now: buildFactText(build.facts[key], build, answers, system),
    at: where,
    direction,
    route,
    text: sentence,
  }
}
