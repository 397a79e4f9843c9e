import { Hono } from 'hono'
import type { AppDeps } from '../api/deps.ts'
import { assetHref } from '../pages/asset-href.ts'
import { errorPage } from '../pages/error-page.ts'
import { guideRoutes } from './guide.ts'
import { viewOf } from './request-view.ts'
import { shopTheme } from './shop-theme.ts'

const HOUR = 3600

/** `/embed.js` for hosts, and `/embed?shop=…`, the guide in a shop's frame. */
export function embedRoutes(deps: AppDeps): Hono {
  const site = new Hono()
  site.get('/embed.js', async (c) => {
    const script = await deps.asset(assetHref('embed.js').replace('/assets/', ''))
    if (!script) return c.notFound()
    return c.body(script, 200, {
      'content-type': 'text/javascript; charset=utf-8',
      'cache-control': `public, max-age=${HOUR}`,
      // Hosts that isolate themselves may still load it, and check it by its hash.
      'cross-origin-resource-policy': 'cross-origin',
      'access-control-allow-origin': '*',
    })
  })
  const { shop } = deps
  if (shop) {
    site.route('/', guideRoutes(deps, '/embed'))
    site.get('/embed/theme.css', (c) =>
      c.body(shopTheme(shop), 200, {
        'content-type': 'text/css; charset=utf-8',
        'cache-control': `public, max-age=${HOUR}`,
      }),
    )
    return site
  }
  site.get('/embed', (c) => {
    const { units, link } = viewOf(deps.rulebook, c)
    const title = 'No such shop'
    const text =
      'The address of a frame names a shop, such as /embed?shop=harrow-lane, and this guide knows none by that name.'
    return c.html(errorPage({ units, link, path: '/', title, text }), 404)
  })
  return site
}
