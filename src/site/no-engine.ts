import type { Context } from 'hono'
import { type Answers, withAnswer } from '../../shared/answers.ts'
import { fact } from '../../shared/fact-keys.ts'
import { toQuery } from '../../shared/share-link.ts'
import { atFaultInTurn } from '../api/assess-safely.ts'
import type { AtFault } from '../api/at-fault.ts'
import { clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { type CasePlace, NoEngineError } from '../api/no-engine-error.ts'
import type { DomainError } from '../mechanics/domain-error.ts'
import { errorPage, startAnew } from '../pages/error-page.ts'
import { pageHref, shopPart } from '../pages/page-href.ts'
import type { Mending, Way } from '../pages/ways-out.ts'
import { undone } from '../talk/undo.ts'
import { shownCase } from './framed.ts'
import { linkAfter, type RequestView, viewOf } from './request-view.ts'

/** How a case is called where a sentence begins. */
const CASES: Readonly<Record<CasePlace, string>> = {
  a: 'Case A makes',
  b: 'Case B makes',
  supposed: 'What you supposed makes',
}

/**
 * Answers that fit one by one and are no engine together: theirs to mend. The page names those at
 * fault and what would fit, and leads to where each can be mended or left open, and to a new start:
 * the guide itself, with these answers, would refuse them again.
 */
export async function noEnginePage(
  deps: AppDeps,
  refused: DomainError,
  c: Context,
): Promise<Response> {
  const request = shownCase(c) ?? viewOf(deps.rulebook, c)
  const error = withEarlier(refused, request)
  const found = await atFaultInTurn(deps.rulebook, error, clientOf(c))
  const { units, link } = request
  const subject = error.place === undefined ? 'These answers make' : CASES[error.place]
  const view = {
    units,
    link,
    path: c.req.path,
    title: `${subject} no engine that the guide can reckon with`,
    text: textOf(error.place, found),
    mendings: found.map((one) => mendingOf(deps, c, request, error, one)),
    ways: [...waysBack(request, error.place), startAnew(link, units)],
  }
  return c.html(errorPage(view), 422)
}

/** A link says what its last turn changed: that is what to look at first. */
function withEarlier(refused: DomainError, { answers, state }: RequestView): NoEngineError {
  const error = refused instanceof NoEngineError ? refused : new NoEngineError(refused, answers)
  if (error.place !== undefined || state.before.size === 0) return error
  return new NoEngineError(error, error.answers, undefined, undone(error.answers, state.before))
}

function textOf(place: CasePlace | undefined, found: readonly AtFault[]): string {
  const kept =
    place === 'supposed' ? 'nothing of it was taken' : 'everything else that was said is kept'
  const what =
    found.length > 1 ? 'Any of these can be mended or left open' : 'It can be mended or left open'
  const each = 'Each answer may be right, but together they leave what the equations cover.'
  return found.length === 0 ? each : `${each} ${what}; ${kept}.`
}

function mendingOf(
  { rulebook }: AppDeps,
  c: Context,
  request: RequestView,
  { place, answers, earlier }: NoEngineError,
  { key, problem, mended }: AtFault,
): Mending {
  const { units } = request
  const { short } = fact(key)
  const without = withAnswer(answers, key, undefined)
  const linkOf = (left: Answers) =>
    place === 'a' || place === 'b'
      ? joined(toQuery(left, rulebook.version), shopPart(request.link))
      : linkAfter(rulebook, request, { ...request.state, answers: left, before: new Map() })
  // A supposition took nothing: what is mended is what was said before it.
  const base = place === 'supposed' ? (earlier ?? without) : (mended ?? without)
  const open =
    place === 'a' || place === 'b'
      ? compareHref(c, request, place, toQuery(without, rulebook.version))
      : place === 'supposed'
        ? pageHref('/', linkOf(withAnswer(base, key, undefined)), units)
        : pageHref(samePage(c), joined(linkOf(without), measuredIn(request)), units)
  return {
    problem,
    ways: [
      {
        text: `Mend ${short} in the guide`,
        href: pageHref('/', linkOf(base), units, { ask: key }),
      },
      { text: `Leave ${short} open`, href: open },
    ],
  }
}

/** A shop's frame is put in by the link. */
function samePage(c: Context): string {
  return c.req.path === '/embed' ? '/' : c.req.path
}

/** Readings of a sheet or a check-in, which stand beside the answers. */
function measuredIn({ other }: RequestView): string {
  return new URLSearchParams([...other].filter(([name]) => name.startsWith('m.'))).toString()
}

/** The same two cases with one of them changed. */
function compareHref(c: Context, { link, units }: RequestView, side: 'a' | 'b', query: string) {
  const given = { a: c.req.query('a') ?? '', b: c.req.query('b') ?? '' }
  return pageHref('/compare', shopPart(link), units, { ...given, [side]: query })
}

/** What was there before the question stands, and may be gone back to. */
function waysBack({ units, link }: RequestView, place: CasePlace | undefined): Way[] {
  if (place === undefined) return []
  return place === 'supposed'
    ? [{ text: 'Back to the guide, as it stands', href: pageHref('/', link, units) }]
    : [{ text: 'Compare two other cases', href: pageHref('/compare', link, units) }]
}

function joined(...parts: string[]): string {
  return parts.filter((part) => part !== '').join('&')
}
