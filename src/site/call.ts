import { Hono } from 'hono'
import type { Assessment } from '../../shared/assessment.ts'
import { assessOnce } from '../api/assess-once.ts'
import { clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import { callPage } from '../pages/call.ts'
import { errorPage } from '../pages/error-page.ts'
import { pageHref } from '../pages/page-href.ts'
import type { WorkStep } from '../pages/work-order.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { neededButAssumed } from '../talk/call-so-far.ts'
import { type ReachFound, reachOf } from '../what-if/reach.ts'
import { sinceText, sinceVersion } from '../what-if/since-version.ts'
import { noteCall } from './framed.ts'
import { unknownParts } from './link-extras.ts'
import { olderLinkOf } from './older-link.ts'
import { type RequestView, viewOf } from './request-view.ts'
import { canonicalLink, previewOf } from './share.ts'

/** `/call?…`: the call for the answers in the link. */
export function callRoutes(deps: AppDeps): Hono {
  const { rulebook } = deps
  const site = new Hono()
  site.get('/call', async (c) => {
    const request = viewOf(rulebook, c)
    const { answers, units, link } = request
    if (Object.keys(answers).length === 0) return c.html(nothingSaid(request), 422)
    const assessment = await assessOnce(rulebook, answers, { system: units }, clientOf(c))
    noteCall(c, assessment.call)
    return c.html(
      callPage({
        assessment,
        reach: reach(rulebook, request, assessment),
        units,
        link,
        forumHref: pageHref('/forum', link, units),
        shareHref: pageHref('/call', canonicalLink(rulebook, request), units),
        guessed: neededButAssumed(rulebook, assessment),
        problems: [...request.problems, ...unknownParts(request.other, ['ask', 'said'])],
        older: await olderCall(rulebook, request),
        preview: previewOf(deps, c, request, '/call'),
        steps: workSteps(rulebook, assessment),
        order: deps.shopRules.sheet.order,
      }),
    )
  })
  return site
}

/** An older link, with what has become of its call. */
async function olderCall(rulebook: Rulebook, { answers, version }: RequestView) {
  const older = olderLinkOf(rulebook, version)
  const since = await sinceVersion(answers, version, rulebook)
  return older && since ? { ...older, verdict: sinceText(since, rulebook) } : older
}

function nothingSaid({ units, link, problems }: RequestView) {
  return errorPage({
    units,
    link,
    path: '/call',
    title: 'There is no call without answers',
    text: 'This link says nothing about a build yet. Answer a few questions, or describe the build in your own words.',
    problems,
  })
}

function reach(
  rulebook: Rulebook,
  { answers }: RequestView,
  assessment: Assessment,
): ReachFound | null {
  const { routes, call } = assessment
  if (call.route === null) return null
  const possible = routes
    .filter((route) => route.possible && route.id !== 'lower-the-target')
    .map(({ id }) => id)
  const build = buildFromAnswers(rulebook, answers)
  const found = reaches.get(assessment) ?? reachOf(answers, build, possible, rulebook)
  reaches.set(assessment, found)
  return found
}

/** Kept as long as the assessment that it belongs to is. */
const reaches = new WeakMap<Assessment, ReachFound>()

/** The steps of the called route from strip-down to assembly, as rules/follow-on.json orders them. */
export function workSteps({ followOn }: Rulebook, { call }: Assessment): WorkStep[] {
  if (call.route === null) return []
  return Object.entries(followOn)
    .flatMap(([id, entry]) => {
      const counts = entry.always || call.mustDo.includes(id)
      return entry.step === undefined || !counts ? [] : [{ ...entry, id, step: entry.step }]
    })
    .sort((a, b) => a.step - b.step || (a.id < b.id ? -1 : 1))
    .map(({ id, title, text, at }) => ({ id, title, at: at ?? 'home', note: text }))
}
