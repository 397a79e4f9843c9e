import { Hono } from 'hono'
import type { AppDeps } from '../api/deps.ts'

const TYPES: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  woff2: 'font/woff2',
  svg: 'image/svg+xml',
}

/** Built files under content-hashed names, which may be kept for ever. */
export function assetRoutes({ asset }: AppDeps): Hono {
  const site = new Hono()
  site.get('/assets/:name', async (c) => {
    const name = c.req.param('name')
    const type = TYPES[name.split('.').at(-1) ?? '']
    const bytes = type && /^[\w.-]+$/.test(name) ? await asset(name) : undefined
    if (!type || !bytes) return c.notFound()
    return c.body(bytes, 200, {
      'content-type': type,
      'cache-control': 'public, max-age=31536000, immutable',
    })
  })
  return site
}
