import type { Context } from 'hono'
import { type Answers, withAnswer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import { currencyProblems } from '../api/currency.ts'
import type { UnitSystem } from '../pages/page-href.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { type TalkState, talkFromQuery, talkToQuery } from '../talk/state.ts'

/** What every page reads from its link. */
export interface RequestView {
  readonly state: TalkState
  readonly answers: Answers
  readonly problems: readonly Problem[]
  readonly other: ReadonlyMap<string, string>
  readonly version: string | undefined
  readonly units: UnitSystem
  /** The case as a canonical query string. */
  readonly link: string
}

/** Read a link: good answers are kept, bad ones named. */
export function viewOfQuery(rulebook: Rulebook, query: string): RequestView {
  const { state, problems, other, version } = talkFromQuery(query)
  const money = currencyProblems(rulebook, state.answers)
  const answers = money.reduce(
    (kept, { field }) => withAnswer(kept, field as FactKey, undefined),
    state.answers,
  )
  const good = { ...state, answers }
  return {
    state: good,
    answers,
    problems: [...problems, ...money],
    other,
    version,
    units: other.get('units') === 'metric' ? 'metric' : 'us',
    link: talkToQuery(good, rulebook.version),
  }
}

/** The same from a request. */
export function viewOf(rulebook: Rulebook, c: Context): RequestView {
  return viewOfQuery(rulebook, new URL(c.req.url).search.slice(1))
}
