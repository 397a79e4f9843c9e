import { type Context, Hono } from 'hono'
import { type Answers, withAnswer } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'
import { toQuery } from '../../shared/share-link.ts'
import { assessOnce } from '../api/assess-once.ts'
import { clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { originOf } from '../api/origin-of.ts'
import { callPost, postTexts } from '../forum/call-post.ts'
import { helperPost } from '../forum/helper-post.ts'
import { saidWords } from '../forum/said-words.ts'
import { errorPage } from '../pages/error-page.ts'
import { type ForumView, forumPage } from '../pages/forum.ts'
import { pageHref } from '../pages/page-href.ts'
import { safetyWords } from '../pages/safety-words.ts'
import { neededButAssumed } from '../talk/call-so-far.ts'
import { extrasQuery, LONGEST_NOTE } from './link-extras.ts'
import { type RequestView, viewOf } from './request-view.ts'
import { canonicalLink } from './share.ts'

/** `/forum?…`: the call as a text to paste, and a helper's link that leaves questions open. */
export function forumRoutes(deps: AppDeps): Hono {
  const { rulebook } = deps
  const site = new Hono()
  site.get('/forum', async (c) => {
    const request = viewOf(rulebook, c)
    const { answers, units, link } = request
    if (Object.keys(answers).length === 0) return c.html(nothingSaid(request), 422)
    const assessment = await assessOnce(rulebook, answers, { system: units }, clientOf(c))
    const own = canonicalLink(rulebook, request)
    const href = `${originOf(deps, c)}${pageHref('/call', own, units)}`
    const end = safetyWords(deps.content, 'end-of-post')
    const isGuess = neededButAssumed(rulebook, assessment).length > 0
    const query = new URL(c.req.url).searchParams
    const isHanded = query.get('hand') === 'on'
    const isSet = (key: FactKey): boolean => !isHanded || query.getAll('set').includes(key)
    return c.html(
      forumPage({
        units,
        link,
        sentence: assessment.call.sentence,
        call: postTexts(callPost({ assessment, isGuess, said: saidWords(answers), href, end })),
        answers: shownAnswers(answers, isSet),
        note: request.extras.note,
        longestNote: LONGEST_NOTE,
        handedOn: isHanded ? handedOn(deps, c, request, isSet) : undefined,
      }),
    )
  })
  return site
}

function nothingSaid({ units, link, problems }: RequestView) {
  return errorPage({
    units,
    link,
    path: '/forum',
    title: 'There is nothing to post yet',
    text: 'This link says nothing about a build. Answer a few questions first; then the call can be copied.',
    problems,
  })
}

function shownAnswers(answers: Answers, isSet: (key: FactKey) => boolean): ForumView['answers'] {
  return FACT_KEYS.flatMap((key) => {
    const answer = answers[key]
    if (answer === undefined) return []
    return [{ key, label: fact(key).label, text: printAnswer(key, answer), isSet: isSet(key) }]
  })
}

/** The asker's link: what the helper set, marked as such, and the note. */
function handedOn(
  deps: AppDeps,
  c: Context,
  { answers, extras, units }: RequestView,
  isSet: (key: FactKey) => boolean,
): NonNullable<ForumView['handedOn']> {
  const open = FACT_KEYS.filter((key) => answers[key] !== undefined && !isSet(key))
  const set = open.reduce<Answers>((kept, key) => withAnswer(kept, key, undefined), answers)
  const by = Object.keys(set) as FactKey[]
  const { note, shop } = extras
  const query = [toQuery(set, deps.rulebook.version), extrasQuery({ by, note, shop })]
  const path = pageHref('/', query.filter((part) => part !== '').join('&'), units)
  const href = `${originOf(deps, c)}${path}`
  const names = open.map((key) => fact(key).short)
  return { href, texts: postTexts(helperPost({ set: saidWords(set), open: names, note, href })) }
}
