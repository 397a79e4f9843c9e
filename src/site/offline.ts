import { Hono } from 'hono'
import type { AppDeps } from '../api/deps.ts'
import { assetHref } from '../pages/asset-href.ts'
import { offlinePage } from '../pages/offline.ts'
import { viewOf } from './request-view.ts'

/** What a browser needs to open pages again without a network. */
export function offlineRoutes({ asset, rulebook }: AppDeps): Hono {
  const site = new Hono()
  // At the top and under one name: a browser asks again for it here, and it governs all pages.
  site.get('/service-worker.js', async (c) => {
    const name = assetHref('service-worker.js').replace('/assets/', '')
    const script = await asset(name)
    if (!script) return c.notFound()
    return c.body(script, 200, {
      'content-type': 'text/javascript; charset=utf-8',
      'cache-control': 'no-cache',
    })
  })
  site.get('/offline', (c) => {
    const { units, link } = viewOf(rulebook, c)
    return c.html(offlinePage({ units, link }))
  })
  return site
}
