import { type Context, Hono } from 'hono'
import { assessOnce } from '../api/assess-once.ts'
import type { AppDeps } from '../api/deps.ts'
import { problemResponse } from '../api/problem-response.ts'
import { boundedCache } from '../preview/bounded-cache.ts'
import { cardSvg } from '../preview/card.ts'
import { tokenBucket } from '../preview/token-bucket.ts'
import { callMayShow } from '../talk/call-so-far.ts'
import { type RequestView, viewOf } from './request-view.ts'
import { canonicalLink } from './share.ts'

type Png = Uint8Array<ArrayBuffer>

const MOST_KEPT = 200
const MOST_BYTES = 16 * 1024 * 1024
/** A card takes a call and a drawing: so many at once, and so many a second after that. */
const BURST = 20
const PER_SECOND = 4
const DAY = 86_400

/** `/card.png?…`: the picture that a forum shows of a link. */
export function previewRoutes(deps: AppDeps): Hono {
  const site = new Hono()
  const { drawPng, rulebook } = deps
  // A card shows the guide's own prices, whoever links to it: one cache and one rate for all.
  if (!drawPng || deps.shop) return site
  const kept = boundedCache<Png>(MOST_KEPT, MOST_BYTES, ({ length }) => length)
  const bucket = tokenBucket(BURST, PER_SECOND, deps.clock)
  // The same card asked for twice at once is drawn once.
  const underWay = new Map<string, Promise<Png>>()

  async function drawn(key: string, request: RequestView): Promise<Png> {
    const png = await (drawPng as NonNullable<typeof drawPng>)(await svgOf(deps, request))
    kept.set(key, png)
    return png
  }

  site.get('/card.png', async (c) => {
    const request = viewOf(rulebook, c)
    const key = `${canonicalLink(rulebook, request)}|${request.units}`
    const ready = kept.get(key) ?? underWay.get(key)
    if (ready) return picture(c, await ready)
    if (!bucket.take()) return tooMany(c, bucket.wait())
    const promise = drawn(key, request).finally(() => underWay.delete(key))
    underWay.set(key, promise)
    return picture(c, await promise)
  })
  return site
}

async function svgOf(
  { rulebook }: AppDeps,
  { answers, units: system }: RequestView,
): Promise<string> {
  // A card is drawn to its end, whoever goes: it is kept, and others may wait for the same one.
  const options = { system, withoutTurningPoints: true }
  const assessment = await assessOnce(rulebook, answers, options, undefined)
  const mayShow = callMayShow(rulebook, answers, assessment)
  return cardSvg({ assessment, answers: Object.keys(answers).length, mayShow, units: system })
}

function picture(c: Context, png: Png): Response {
  return c.body(png, 200, {
    'content-type': 'image/png',
    'cache-control': `public, max-age=${DAY}`,
    // Forums show it on pages of their own.
    'cross-origin-resource-policy': 'cross-origin',
  })
}

function tooMany(c: Context, seconds: number): Response {
  c.header('retry-after', String(Math.max(1, seconds)))
  return problemResponse(c, 429, 'too-many-requests')
}
