import { Hono } from 'hono'
import type { AppDeps } from '../api/deps.ts'
import { originOf } from '../api/origin-of.ts'
import { topicGroups } from '../pages/learn.ts'

const DAY = 86_400
/** Pages to read that stand still; a case's own pages are not for search engines. */
const STANDING = [
  '/',
  '/presets',
  '/learn',
  '/learn/glossary',
  '/method',
  '/rules',
  '/shops',
  '/api',
]

/** `/robots.txt` and `/sitemap.xml`: what search engines may keep. */
export function machineRoutes(deps: AppDeps): Hono {
  const site = new Hono()
  // Made of what the request says, they would be kept for others with any host in them.
  const kept: Record<string, string> = deps.origin
    ? { 'cache-control': `public, max-age=${DAY}` }
    : {}
  // Answer pages may be fetched, because only then is their noindex read.
  site.get('/robots.txt', (c) =>
    c.text(
      `User-agent: *\nDisallow: /api/\nDisallow: /embed\nAllow: /\n\nSitemap: ${originOf(deps, c)}/sitemap.xml\n`,
      200,
      kept,
    ),
  )
  site.get('/sitemap.xml', (c) => {
    const origin = originOf(deps, c)
    const paths = [
      ...STANDING,
      ...deps.rulebook.presets.map(({ id }) => `/preset/${id}`),
      ...topicGroups(deps.content).flatMap(({ topics }) =>
        topics.map(({ slug }) => `/learn/${slug}`),
      ),
    ]
    const entries = paths.map((path) => `<url><loc>${origin}${path}</loc></url>`).join('\n')
    const text = `<?xml version="1.0" encoding="UTF-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n${entries}\n</urlset>\n`
    return c.body(text, 200, { 'content-type': 'application/xml; charset=utf-8', ...kept })
  })
  return site
}
