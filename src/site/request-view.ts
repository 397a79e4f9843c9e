import type { Context } from 'hono'
import { type Answers, withAnswer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import { currencyProblems } from '../api/currency.ts'
import type { UnitSystem } from '../pages/page-href.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Shop } from '../shops/schema.ts'
import { type TalkState, talkFromQuery, talkToQuery } from '../talk/state.ts'
import { extrasQuery, type LinkExtras, readExtras } from './link-extras.ts'

/** What every page reads from its link. */
export interface RequestView {
  readonly state: TalkState
  readonly answers: Answers
  readonly problems: readonly Problem[]
  readonly other: ReadonlyMap<string, string>
  readonly version: string | undefined
  readonly units: UnitSystem
  /** Who set some of the answers, and their note; in whose frame the case stands. */
  readonly extras: LinkExtras
  /** The case as a canonical query string, extras included. */
  readonly link: string
}

/**
 * Read a link: good answers are kept, bad ones named.
 *
 * @param shop - the shop in whose frame the page is shown, from `shopOf`
 */
export function viewOfQuery(rulebook: Rulebook, query: string, shop?: Shop): RequestView {
  const { state, problems, other, version } = talkFromQuery(query)
  const money = currencyProblems(rulebook, state.answers)
  const answers = money.reduce(
    (kept, { field }) => withAnswer(kept, field as FactKey, undefined),
    state.answers,
  )
  const good = { ...state, answers }
  const { extras, problems: unread } = readExtras(other, answers, shop?.id)
  return {
    state: good,
    answers,
    problems: [...problems, ...money, ...unread],
    other,
    version,
    units: unitsOf(other.get('units'), shop),
    extras,
    link: joined(talkToQuery(good, rulebook.version), extrasQuery(extras)),
  }
}

/** The same from a request. */
export function viewOf(rulebook: Rulebook, c: Context): RequestView {
  return viewOfQuery(rulebook, new URL(c.req.url).search.slice(1), shopOf(c))
}

/** The shop in whose frame a request is, as the app that serves that shop has set it. */
function shopOf(c: Context): Shop | undefined {
  return c.get('shop')
}

/**
 * The link after a turn. An answer that the person has changed is their own from then
 * on; starting over leaves nothing but the shop.
 */
export function linkAfter(rulebook: Rulebook, before: RequestView, state: TalkState): string {
  const { answers, extras } = before
  const same = (key: FactKey) => JSON.stringify(state.answers[key]) === JSON.stringify(answers[key])
  const left = Object.keys(state.answers).length > 0
  const after = left ? { ...extras, by: extras.by.filter(same) } : { ...extras, by: [], note: '' }
  return joined(talkToQuery(state, rulebook.version), extrasQuery(after))
}

/** A view whose answers were set by someone else before the person came. */
export function setBefore(rulebook: Rulebook, view: RequestView, answers: Answers): RequestView {
  const state = { ...view.state, answers }
  const by = Object.keys(answers) as FactKey[]
  const extras = { ...view.extras, by }
  const link = joined(talkToQuery(state, rulebook.version), extrasQuery(extras))
  return { ...view, state, answers, extras, link }
}

function joined(...parts: string[]): string {
  return parts.filter((part) => part !== '').join('&')
}

/** A shop's frame counts in the shop's units until the person chooses. */
function unitsOf(said: string | undefined, shop: Shop | undefined): UnitSystem {
  if (said === 'metric' || said === 'us') return said
  return shop?.units ?? 'us'
}
