import type { Answer, Answers } from '../../shared/answers.ts'
import type { Assessment, RouteReport } from '../../shared/assessment.ts'
import { FACT_KEYS, type FactKey, fact } from '../../shared/fact-keys.ts'
import { printAnswer, printMoney } from '../../shared/print.ts'
import type { Comparison } from '../pages/conversation-view.ts'
import type { UnitSystem } from '../pages/page-href.ts'
import { printIn } from '../pages/person-units.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { callMayShow } from '../talk/call-so-far.ts'
import { changedFrom } from '../talk/undo.ts'
import { linkAfter, type RequestView } from './request-view.ts'

/** A supposed case beside the present one; undefined when nothing in it differs. */
export function comparison(
  rulebook: Rulebook,
  request: RequestView,
  present: Assessment,
  supposed: { answers: Answers; assessment: Assessment },
): Comparison | undefined {
  const changed = FACT_KEYS.filter(
    (key) => JSON.stringify(request.answers[key]) !== JSON.stringify(supposed.answers[key]),
  )
  if (changed.length === 0) return undefined
  const other = supposed.assessment
  return {
    title: capital(
      changed
        .map((key) => `${fact(key).short} ${printAnswer(key, supposed.answers[key] as Answer)}`)
        .join(', '),
    ),
    present: present.call.sentence,
    other: other.call.sentence,
    notYet: notYet(
      callMayShow(rulebook, request.answers, present),
      callMayShow(rulebook, supposed.answers, other),
    ),
    rows: rowsOf(changed, present, other, request.units),
    keepLink: linkAfter(rulebook, request, {
      answers: supposed.answers,
      parked: request.state.parked,
      before: changedFrom(request.answers, supposed.answers),
    }),
  }
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** Which sides rest on assumptions for answers that a call needs. */
function notYet(present: boolean, other: boolean): Comparison['notYet'] {
  if (present && other) return undefined
  return present ? 'other' : other ? 'present' : 'both'
}

function rowsOf(
  changed: readonly FactKey[],
  present: Assessment,
  other: Assessment,
  units: UnitSystem,
): Comparison['rows'] {
  const after = figures(other, units)
  return [
    ...changed.map((key) => ({
      label: fact(key).label,
      now: present.build[key]?.text ?? '',
      other: other.build[key]?.text ?? '',
    })),
    ...figures(present, units).map(([label, now], index) => ({
      label,
      now,
      other: after[index]?.[1] ?? '',
    })),
    ...routeRows(present, other),
    ...costRows(present, other),
  ]
}

/** The figures that a change of plan moves, in the person's own units. */
function figures({ loads }: Assessment, units: UnitSystem): [string, string][] {
  return [
    ['Peak cylinder pressure', printIn(loads.peakPressure.value, 'bar', units)],
    ['Greatest pull on a cap', printIn(loads.worstPull.pull, 'kN', units)],
    ['Greatest side push', printIn(loads.worstSide.side, 'kN', units)],
  ]
}

/** Each called route in both columns: two routes' figures side by side would not compare. */
function routeRows(present: Assessment, other: Assessment): Comparison['rows'] {
  const called = new Set([present.call.route, other.call.route])
  return [...called].flatMap((id) => {
    const [now, then] = [present, other].map(({ routes }) => routes.find((one) => one.id === id))
    const title = now?.title ?? then?.title
    if (title === undefined) return []
    return [{ label: `${title} holds in`, now: holds(now), other: holds(then) }]
  })
}

function holds(route: RouteReport | undefined): string {
  return route?.possible ? `${route.holdsIn} of 100` : 'not possible'
}

/** What each column's own call costs, and whether the budget covers it if one was said. */
function costRows(present: Assessment, other: Assessment): Comparison['rows'] {
  const [now, then] = [costOf(present), costOf(other)]
  const rows = [{ label: 'Likely cost of the call', now: now.text, other: then.text }]
  if (present.cost.budget === null && other.cost.budget === null) return rows
  return [...rows, { label: 'Within the budget', now: now.within, other: then.within }]
}

function costOf({ call, routes, cost }: Assessment): { text: string; within: string } {
  const route = routes.find(({ id }) => id === call.route)
  if (!route) return { text: 'withheld', within: 'withheld' }
  const { likely, currency } = route.cost
  const over = cost.budget === null ? undefined : likely - cost.budget
  const within =
    over === undefined ? 'none said' : over <= 0 ? 'yes' : `no, ${printMoney(over, currency)} over`
  return { text: printMoney(likely, currency), within }
}
