import { Hono } from 'hono'
import type { RouteId } from '../../shared/route-ids.ts'
import { assessOnce } from '../api/assess-once.ts'
import { type Client, clientOf } from '../api/client.ts'
import type { AppDeps } from '../api/deps.ts'
import { checkIn } from '../check-in/check-in.ts'
import { checkInCsv } from '../check-in/csv.ts'
import { assemblyNotes } from '../pages/assembly-notes.ts'
import { checkInPage } from '../pages/check-in.ts'
import { pageHref } from '../pages/page-href.ts'
import {
  engineOf,
  fullLink,
  type MeasuredView,
  measuredViewOf,
  measuredViewOfForm,
} from './measured-view.ts'

/** `/check-in?…`: the block is back; what was measured, judged. */
export function checkInRoutes(deps: AppDeps): Hono {
  const site = new Hono()
  site.get('/check-in', async (c) => {
    const request = measuredViewOf(deps, c)
    const { units, link, measured, answers } = request
    const route = await calledRoute(deps, request, clientOf(c))
    const engine = engineOf(deps, request, route)
    const report = checkIn(measured, engine, deps.shopRules, units)
    const full = fullLink(request, measured)
    const view = { report, engine, measured, units, link, fullLink: full, rules: deps.shopRules }
    const notes =
      route === null
        ? undefined
        : assemblyNotes({ content: deps.content, units, link: full }, route)
    return c.html(checkInPage({ ...view, notes, hasCase: Object.keys(answers).length > 0 }))
  })
  site.post('/check-in', async (c) => {
    const request = await measuredViewOfForm(deps, c)
    const link = fullLink(request, request.measured)
    return c.redirect(pageHref('/check-in', link, request.units), 303)
  })
  site.get('/check-in.csv', async (c) => {
    const request = measuredViewOf(deps, c)
    const engine = engineOf(deps, request, await calledRoute(deps, request, clientOf(c)))
    const report = checkIn(request.measured, engine, deps.shopRules, request.units)
    return c.body(checkInCsv(request.measured, report), 200, {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="check-in.csv"',
    })
  })
  return site
}

/** The route that was carried out is taken to be the one called; none without a case. */
async function calledRoute(
  { rulebook }: AppDeps,
  { answers, units }: MeasuredView,
  client: Client,
): Promise<RouteId | null> {
  if (Object.keys(answers).length === 0) return null
  const options = { system: units, withoutWhatIf: true }
  const { call } = await assessOnce(rulebook, answers, options, client)
  return call.route
}
