import type { Context, MiddlewareHandler } from 'hono'
import type { Call } from '../../shared/assessment.ts'
import type { AppDeps } from '../api/deps.ts'
import { framedBody, frameHead, frameState, shopBand } from '../pages/shop-frame.ts'
import type { Shop } from '../shops/schema.ts'
import { type RequestView, viewOf } from './request-view.ts'
import { canonicalLink } from './share.ts'

type ShownCall = Pick<Call, 'route' | 'confidence' | 'sentence'>

/** Tell the frame which call a page shows, for the event that the host hears. */
export function noteCall(c: Context, { route, confidence, sentence }: ShownCall): void {
  c.set('shownCall', { route, confidence, sentence } satisfies ShownCall)
}

/** Tell the frame which case a page shows, when that is more than its address says. */
export function noteCase(c: Context, view: RequestView): void {
  c.set('shownCase', view)
}

/** The case that was noted so; undefined when the address says all of it. */
export function shownCase(c: Context): RequestView | undefined {
  return c.get('shownCase')
}

/**
 * Make every page of a shop's app one that stands in a frame: who runs it comes first,
 * and the script that talks to the host is there. Nothing of a page is taken out.
 */
export function framedBy(shop: Shop, { rulebook }: Pick<AppDeps, 'rulebook'>): MiddlewareHandler {
  return async (c, next) => {
    c.set('shop', shop)
    await next()
    if (!c.res.headers.get('content-type')?.startsWith('text/html')) return
    const text = dressed(await c.res.text(), shop, c, rulebook)
    c.res = new Response(text, c.res)
  }
}

/** Ways out of the frame: the link to give away, and pages of others, which may refuse to stand in it. */
const LEAVES =
  /(?<=<a class="button" href="[^"<>]*") data-copy-link(?=>)|(?<=<a href="[^"<>]*") rel="external noreferrer"(?=[ >])/g

function dressed(text: string, shop: Shop, c: Context, rulebook: AppDeps['rulebook']): string {
  const view = shownCase(c) ?? viewOf(rulebook, c)
  const { answers, link, units } = view
  const said = Object.keys(answers).length
  // A refused form comes back from a post: the case is as it was, and the host knows it.
  const state = c.req.method === 'GET' ? { page: c.req.path, answers: said } : undefined
  const canonical = canonicalLink(rulebook, view)
  const call: ShownCall | undefined = c.get('shownCall')
  const asks = said > 0 && c.req.path !== '/ask-shop'
  const parts = {
    head: `${frameHead(shop)}</head>`,
    body: `${framedBody(shop, shop.origins)}${shopBand(shop, { link, units, asks })}`,
    main: state ? `${frameState({ ...state, link: canonical, units, call })}` : '',
  }
  return text
    .replace('</head>', () => parts.head)
    .replace('<body>', () => parts.body)
    .replaceAll(LEAVES, (way) => `${way} target="_blank"`)
    .replace(/<main[^>]*>/, (tag) => `${tag}${parts.main}`)
}
