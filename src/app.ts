import { type Context, Hono, type MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { GoneError, noteClient } from './api/client.ts'
import { apiCors } from './api/cors.ts'
import type { AppDeps } from './api/deps.ts'
import { LARGEST_BODY } from './api/json-body.ts'
import { problemResponse } from './api/problem-response.ts'
import { bodyTooLarge } from './api/read-request.ts'
import { type LimitPassed, requestLimits } from './api/request-limits.ts'
import { apiRoutes } from './api/routes.ts'
import { admission, BusyError, takeTurns } from './api/take-turns.ts'
import { DomainError } from './mechanics/domain-error.ts'
import { errorPage, faultPage } from './pages/error-page.ts'
import { notFoundPage } from './pages/not-found.ts'
import { apiPageRoutes } from './site/api-page.ts'
import { assetRoutes } from './site/assets.ts'
import { callRoutes } from './site/call.ts'
import { checkInRoutes } from './site/check-in.ts'
import { compareRoutes } from './site/compare.ts'
import { embedRoutes } from './site/embed.ts'
import { machineRoutes } from './site/for-machines.ts'
import { forumRoutes } from './site/forum.ts'
import { framedBy } from './site/framed.ts'
import { guideRoutes } from './site/guide.ts'
import { securityHeaders } from './site/headers.ts'
import { noEnginePage } from './site/no-engine.ts'
import { offlineRoutes } from './site/offline.ts'
import { methodsOf } from './site/page-methods.ts'
import { presetRoutes } from './site/presets.ts'
import { previewRoutes } from './site/preview.ts'
import { rateLimit } from './site/rate-limit.ts'
import { readingRoutes } from './site/reading.ts'
import { pathOf, requestLog } from './site/request-log.ts'
import { viewOf, viewOfQuery } from './site/request-view.ts'
import { sheetRoutes } from './site/sheet.ts'
import { withShops } from './site/shop-sites.ts'
import { shopRoutes } from './site/shops.ts'
import { worksheetSite } from './site/worksheets.ts'

/** The whole guide as one fetch handler, each shop's frame included. It holds no state: a case is in its link. */
export function createApp(deps: AppDeps): Hono {
  if (deps.giveWay) takeTurns(deps.giveWay)
  // One limit for all: an address does not get another minute's worth from each shop's frame.
  const limit = rateLimit(deps.rate, deps.addressOf, deps.clock, (c, seconds) =>
    tooMany(deps, c, seconds),
  )
  return withShops(deps, (own) => site(own, limit))
}

function site(deps: AppDeps, limit: MiddlewareHandler): Hono {
  const app = new Hono()
  if (deps.giveWay) app.use(noteClient)
  app.use(async (_, next) => {
    await admission()
    await next()
  })
  app.use(requestLog(deps, deps.logEach))
  app.use(securityHeaders(deps.shop?.origins))
  if (deps.shop) app.use(framedBy(deps.shop, deps))
  app.use('/api/*', apiCors)
  // After those that set headers, so that a refusal carries them too.
  app.use(limit)
  app.use(requestLimits((c, passed) => tooLong(deps, c, passed)))
  app.use(bodyLimit({ maxSize: LARGEST_BODY, onError: (c) => tooLarge(deps, c) }))
  app.get('/healthz', (c) => c.json({ status: 'ok', version: deps.rulebook.version }))
  app.route('/api', apiRoutes(deps))
  app.route('/', guideRoutes(deps))
  app.route('/', embedRoutes(deps))
  app.route('/', callRoutes(deps))
  app.route('/', sheetRoutes(deps))
  app.route('/', checkInRoutes(deps))
  app.route('/', forumRoutes(deps))
  app.route('/', compareRoutes(deps))
  app.route('/', presetRoutes(deps))
  app.route('/', previewRoutes(deps))
  app.route('/', shopRoutes(deps))
  app.route('/', machineRoutes(deps))
  app.route('/', readingRoutes(deps))
  app.route('/', worksheetSite(deps))
  app.route('/', apiPageRoutes(deps))
  app.route('/', offlineRoutes(deps))
  app.route('/', assetRoutes(deps))
  app.notFound((c) => {
    if (isApi(c)) return problemResponse(c, 404, 'not-found')
    const allowed = methodsOf(app, c.req.path)
    if (allowed.length > 0 && !allowed.includes(c.req.method)) return wrongMethod(deps, c, allowed)
    const { units, link } = viewOf(deps.rulebook, c)
    return c.html(notFoundPage({ units, link, path: c.req.path }), 404)
  })
  app.onError(async (error, c) => {
    try {
      if (error instanceof DomainError) return await noEngine(deps, error, c)
      return refusal(deps, error, c)
    } catch (another) {
      return refusal(deps, another as Error, c)
    }
  })
  return app
}

/** Answers that fit one by one and are no engine together; the API has its own words where it assesses. */
function noEngine(deps: AppDeps, error: DomainError, c: Context): Response | Promise<Response> {
  if (isApi(c)) return problemResponse(c, 422, 'outside-the-model')
  return noEnginePage(deps, error, c)
}

function refusal(deps: AppDeps, error: Error, c: Context): Response | Promise<Response> {
  if (error instanceof BusyError) return busy(deps, error, c)
  return hasGone(error, c) ? c.body(null, 400) : fault(deps, error, c)
}

function isApi(c: Context): boolean {
  return c.req.path.startsWith('/api/')
}

function tooLarge({ rulebook }: AppDeps, c: Context): Response | Promise<Response> {
  if (isApi(c)) return bodyTooLarge(c)
  const { units, link } = viewOf(rulebook, c)
  const text = 'What was sent is larger than any case can be. Nothing of it was taken.'
  return c.html(errorPage({ units, link, path: '/', title: 'That is too much', text }), 413)
}

function tooMany({ rulebook }: AppDeps, c: Context, seconds: number): Response | Promise<Response> {
  if (isApi(c)) return problemResponse(c, 429, 'too-many-requests')
  const { units, link } = viewOf(rulebook, c)
  const text = `This address has asked for very much in a short time. Try again in ${seconds} seconds; your answers are in the link.`
  return c.html(errorPage({ units, link, path: '/', title: 'A little slower, please', text }), 429)
}

/** @see RFC 9110, HTTP Semantics, sections 10.2.3 (Retry-After) and 15.6.4 (503) */
function busy({ rulebook }: AppDeps, { why }: BusyError, c: Context): Response | Promise<Response> {
  c.header('retry-after', '10')
  if (isApi(c)) return problemResponse(c, 503, why)
  const { units, link } = viewOf(rulebook, c)
  const reason =
    why === 'busy'
      ? 'More people wait for an answer than the guide can serve at once.'
      : 'The guide is being stopped, as before a restart.'
  const text = `${reason} Try again in ten seconds; your answers are in the link.`
  return c.html(errorPage({ units, link, path: '/', title: 'One moment, please', text }), 503)
}

/** @see RFC 9110, HTTP Semantics, sections 10.2.1 (Allow) and 15.5.6 (405) */
function wrongMethod(
  { rulebook }: AppDeps,
  c: Context,
  allowed: readonly string[],
): Response | Promise<Response> {
  c.header('allow', allowed.join(', '))
  const { units, link } = viewOf(rulebook, c)
  const text = 'This page can be opened, but not in the way that was asked.'
  return c.html(errorPage({ units, link, path: '/', title: 'Not in this way', text }), 405)
}

/** The link is not read: drawing it again would make the answer as long as the question. */
function tooLong(deps: AppDeps, c: Context, passed: LimitPassed): Response | Promise<Response> {
  const { status, type, part, length, most } = passed
  const found = `${length} characters`
  const fits = `use at most ${most} characters, which is more than any case makes`
  if (isApi(c))
    return problemResponse(c, status, type, [{ field: part, code: 'too-long', found, fits }])
  const { units, link } = viewOfQuery(deps.rulebook, '')
  const what =
    part === 'address' ? 'The address of this request has' : 'The headers of this request have'
  const text = `${what} ${length} characters; more than ${most} are not read, and no case makes so many.`
  return c.html(errorPage({ units, link, path: '/', title: 'That is too long', text }), status)
}

/** A client that went while it was sending or waiting: nobody's fault, and nobody reads the answer. */
function hasGone(error: Error, c: Context): boolean {
  if (error instanceof GoneError || c.req.raw.signal.aborted) return true
  return (error as { code?: unknown }).code === 'ECONNRESET'
}

/** A fault of ours: the log gets its kind and place, the person nothing of its cause. */
function fault({ log, rulebook }: AppDeps, error: Error, c: Context): Response | Promise<Response> {
  const id = c.get('requestId')
  log({
    level: 'error',
    id,
    path: pathOf(c),
    error: error.name,
    at: error.stack?.split('\n')[1] ?? '',
  })
  const detail = `Something went wrong here. If you report it, name ${id}.`
  if (isApi(c)) return problemResponse(c, 500, 'internal', [], { detail })
  const { units, link } = viewOf(rulebook, c)
  return c.html(faultPage({ units, link, path: c.req.path, id }), 500)
}
