import { type Context, Hono } from 'hono'
import { readAnswer, UNKNOWN } from '../../shared/answers.ts'
import { type FactKey, fact, isFactKey, isQuantity } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { currencyProblems } from '../api/currency.ts'
import type { AppDeps } from '../api/deps.ts'
import { assess } from '../assess.ts'
import { conversationPage } from '../pages/conversation.ts'
import type { Heard } from '../pages/conversation-view.ts'
import { glossaryEntry } from '../pages/glossary.ts'
import { renderMarkdown } from '../pages/markdown.ts'
import { pageHref } from '../pages/page-href.ts'
import { replyTo } from '../talk/reply.ts'
import { talkToQuery } from '../talk/state.ts'
import { answerTurn, messageTurn, type Turn } from '../talk/turn.ts'
import { comparison, type GuideExtras, guideView } from './guide-view.ts'
import { type RequestView, viewOf, viewOfQuery } from './request-view.ts'

/** The conversation at `/`, by plain links and form posts. */
export function guideRoutes(deps: AppDeps): Hono {
  const site = new Hono()
  site.get('/', (c) => {
    const request = viewOf(deps.rulebook, c)
    const ask = request.other.get('ask')
    return show(deps, c, request, { asking: ask && isFactKey(ask) ? ask : undefined })
  })
  site.post('/', async (c) => {
    const form = new URLSearchParams(await c.req.text())
    const request = viewOfQuery(
      deps.rulebook,
      `${form.get('state') ?? ''}&units=${form.get('units') === 'metric' ? 'metric' : 'us'}`,
    )
    const named = form.get('fact') ?? ''
    const asking = isFactKey(named) ? named : undefined
    const text = form.get('text')
    if (text !== null) return takeMessage(deps, c, request, text, asking)
    if (asking) return takeAnswer(deps, c, request, asking, form)
    return show(deps, c, request, {}, 422)
  })
  return site
}

async function show(
  deps: AppDeps,
  c: Context,
  request: RequestView,
  extras: GuideExtras,
  status: 200 | 422 = 200,
): Promise<Response> {
  const assessment = await assess(deps.rulebook, request.answers, {
    system: request.units,
    withoutTurningPoints: true,
  })
  const view = guideView(deps.rulebook, request, assessment, extras)
  return c.html(conversationPage(view), status)
}

/** To the new state by redirect, so that the back button and reload do no harm. */
function goOn(deps: AppDeps, c: Context, { units }: RequestView, turn: Turn): Response {
  return c.redirect(pageHref('/', talkToQuery(turn.state, deps.rulebook.version), units), 303)
}

async function takeAnswer(
  deps: AppDeps,
  c: Context,
  request: RequestView,
  key: FactKey,
  form: URLSearchParams,
): Promise<Response> {
  const { rulebook } = deps
  const value = (form.get('value') ?? '').trim()
  const unit = form.get('unit') ?? ''
  const raw =
    form.get('know') === 'no' ? UNKNOWN : (form.get('choice') ?? written(key, value, unit))
  const read = readAnswer(key, raw)
  const problem =
    'problem' in read ? read.problem : currencyProblems(rulebook, { [key]: read.ok })[0]
  if (problem) {
    return show(deps, c, request, { asking: key, refused: { problem, value, unit } }, 422)
  }
  if ('problem' in read) throw new TypeError('unreachable')
  return goOn(deps, c, request, answerTurn(rulebook, request.state, key, read.ok))
}

/** The field's text with its unit; a unit typed into the field itself wins. */
function written(key: FactKey, value: string, unit: string): string {
  const entry = fact(key)
  const hasUnit = /[a-z"%]\s*$/i.test(value)
  if (isQuantity(entry) || entry.kind === 'money')
    return hasUnit ? value : `${value} ${unit}`.trim()
  return value
}

async function takeMessage(
  deps: AppDeps,
  c: Context,
  request: RequestView,
  text: string,
  asking: FactKey | undefined,
): Promise<Response> {
  const { rulebook } = deps
  const turn = messageTurn(rulebook, request.state, text, asking)
  const { intent, understanding } = turn
  if (intent === 'restart' || intent === 'undo') return goOn(deps, c, request, turn)
  if (intent === 'result') {
    return c.redirect(
      pageHref('/call', talkToQuery(turn.state, rulebook.version), request.units),
      303,
    )
  }
  const next = viewOfQuery(
    rulebook,
    `${talkToQuery(turn.state, rulebook.version)}&units=${request.units}`,
  )
  const reply = replyHtml(deps, turn, asking, next)
  const nothing = Object.keys(understanding?.facts ?? {}).length === 0 && reply === undefined
  const heard: Heard = {
    accepted: accepted(turn, text),
    unclear: understanding?.unclear ?? [],
    reply,
  }
  const extras: GuideExtras = {
    heard,
    ...(nothing ? { typed: text, asking } : {}),
    ...(turn.supposed ? { compare: await beside(deps, next, turn.supposed) } : {}),
    ...(intent === 'why' || intent === 'explain' ? { asking } : {}),
  }
  return show(deps, c, next, extras, nothing && intent !== 'dont-know' ? 422 : 200)
}

function replyHtml(
  { rulebook, content }: AppDeps,
  turn: Turn,
  asking: FactKey | undefined,
  { link, units }: RequestView,
): string | undefined {
  const explain = (words: string) => glossaryEntry(content, words)
  const reply = replyTo({ questions: rulebook.questions, explain }, turn, asking)
  const localHref = (href: string): string => pageHref(href, link, units)
  return reply === undefined ? undefined : renderMarkdown(reply, { localHref })
}

function accepted({ understanding, supposed }: Turn, text: string): Heard['accepted'] {
  if (!understanding || supposed) return []
  return understanding.spans.flatMap(({ key, start, end }) => {
    const answer = understanding.facts[key]
    if (answer === undefined) return []
    const words = text.slice(start, end)
    return [{ key, short: fact(key).short, text: printAnswer(key, answer), words }]
  })
}

async function beside(
  { rulebook }: AppDeps,
  request: RequestView,
  supposed: NonNullable<Turn['supposed']>,
) {
  const options = { system: request.units, withoutWhatIf: true }
  const present = await assess(rulebook, request.answers, options)
  const other = await assess(rulebook, supposed, options)
  return comparison(rulebook, request, present, { answers: supposed, assessment: other })
}
