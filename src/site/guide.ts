import { type Context, Hono } from 'hono'
import { readAnswer, UNKNOWN } from '../../shared/answers.ts'
import { type FactKey, fact, isFactKey, isQuantity } from '../../shared/fact-keys.ts'
import { assessOnce } from '../api/assess-once.ts'
import { clientOf } from '../api/client.ts'
import { currencyProblems } from '../api/currency.ts'
import type { AppDeps } from '../api/deps.ts'
import { conversationPage } from '../pages/conversation.ts'
import { pageHref } from '../pages/page-href.ts'
import { firstAnswers } from '../shops/priced-rulebook.ts'
import type { TalkState } from '../talk/state.ts'
import { answerTurn, messageTurn } from '../talk/turn.ts'
import { noteCall, noteCase } from './framed.ts'
import { type GuideExtras, guideView } from './guide-view.ts'
import { heardFrom, isAnswered, saidIn, saidParameters, turnSaid } from './heard-message.ts'
import { linkAfter, type RequestView, setBefore, viewOf, viewOfQuery } from './request-view.ts'
import { previewOf } from './share.ts'

/**
 * The conversation, by plain links and form posts.
 *
 * @param path - `/`, or `/embed` in a shop's frame
 */
export function guideRoutes(deps: AppDeps, path: '/' | '/embed' = '/'): Hono {
  const site = new Hono()
  site.get(path, async (c) => {
    const request = started(deps, viewOf(deps.rulebook, c))
    const ask = request.other.get('ask')
    const asking = ask && isFactKey(ask) ? ask : undefined
    const text = saidIn(request)
    if (text === undefined) return show(deps, c, request, { asking })
    const turn = turnSaid(deps, request.state, text, asking)
    return show(
      deps,
      c,
      request,
      await heardFrom(deps, request, { turn, text, asking, client: clientOf(c) }),
    )
  })
  site.post(path, async (c) => {
    const form = new URLSearchParams(await c.req.text())
    const request = viewOfQuery(
      deps.rulebook,
      `${form.get('state') ?? ''}&units=${form.get('units') === 'metric' ? 'metric' : 'us'}`,
      deps.shop,
    )
    const named = form.get('fact') ?? ''
    const asking = isFactKey(named) ? named : undefined
    const text = form.get('text')
    const supposed = form.get('supposed')
    if (text !== null && supposed && deps.reader.keepsSupposed(text)) {
      // "Keep it", beside a what-if: as the link that keeps it.
      const kept = viewOfQuery(deps.rulebook, supposed, deps.shop)
      if (kept.problems.length === 0) return goOn(deps, c, request, kept.state, TO_QUESTION)
    }
    if (text !== null && supposed && deps.reader.leavesSupposed(text)) {
      return goOn(deps, c, request, request.state, {
        path: '/#heard',
        own: saidParameters(text, asking),
      })
    }
    if (text !== null) return takeMessage(deps, c, request, text, asking)
    if (asking) return takeAnswer(deps, c, request, asking, form)
    return show(deps, c, request, {}, 422)
  })
  return site
}

/** A shop's frame begins with the answers that the shop knows; anyone can change them. */
function started({ rulebook, shop }: AppDeps, request: RequestView): RequestView {
  if (!shop || Object.keys(request.answers).length > 0) return request
  return setBefore(rulebook, request, firstAnswers(shop))
}

async function show(
  deps: AppDeps,
  c: Context,
  request: RequestView,
  extras: GuideExtras,
  status: 200 | 422 = 200,
): Promise<Response> {
  // Before anything can refuse it: a form says its case in its body.
  noteCase(c, request)
  const assessment = await assessOnce(
    deps.rulebook,
    request.answers,
    { system: request.units, withoutTurningPoints: true, talking: true },
    clientOf(c),
  )
  const preview = previewOf(deps, c, request, '/')
  const view = guideView(deps, request, assessment, { ...extras, shop: deps.shop, preview })
  if (view.sofar) noteCall(c, assessment.call)
  return c.html(conversationPage(view), status)
}

/** Without script a new page opens at its top; what is new stands further down. */
const TO_QUESTION = { path: '/#question' }

/** To the new state by redirect, so that the back button and reload do no harm. */
function goOn(
  { rulebook }: AppDeps,
  c: Context,
  request: RequestView,
  state: TalkState,
  to: { path?: string; own?: Record<string, string> } = {},
): Response {
  const link = linkAfter(rulebook, request, state)
  return c.redirect(pageHref(to.path ?? '/', link, request.units, to.own), 303)
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
  return goOn(
    deps,
    c,
    request,
    answerTurn(rulebook, request.state, key, read.ok).state,
    TO_QUESTION,
  )
}

/** The field's text with its unit; a unit typed into the field itself wins. */
function written(key: FactKey, value: string, unit: string): string {
  const entry = fact(key)
  const hasUnit = /[a-z"%]\s*$/i.test(value)
  if (isQuantity(entry) || entry.kind === 'money')
    return hasUnit ? value : `${value} ${unit}`.trim()
  return value
}

/** A message: what it does to the case goes into the link, and its words with it, to be read back. */
async function takeMessage(
  deps: AppDeps,
  c: Context,
  request: RequestView,
  text: string,
  asking: FactKey | undefined,
): Promise<Response> {
  const turn = messageTurn(deps, request.state, text, asking)
  const { intent, state } = turn
  if (intent === 'restart') return goOn(deps, c, request, state)
  if (intent === 'undo') return goOn(deps, c, request, state, TO_QUESTION)
  if (intent === 'result') return goOn(deps, c, request, state, { path: '/call' })
  if (!isAnswered(deps, request, turn, asking)) {
    const extras = await heardFrom(deps, request, { turn, text, asking, client: clientOf(c) })
    return show(deps, c, request, { ...extras, typed: text, asking }, 422)
  }
  return goOn(deps, c, request, state, { path: '/#heard', own: saidParameters(text, asking) })
}
