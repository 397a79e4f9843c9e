import { createMiddleware } from 'hono/factory'

/** What a page's content policy leaves open; everything else is shut. */
export interface PolicyView {
  /** Origins whose pages may show this one in a frame; nobody's when there are none. */
  readonly ancestors?: readonly string[]
  /** Origins whose pages this one may show in a frame, and take scripts from. */
  readonly frames?: readonly string[]
}

/** No script, style, font, picture or connection from anywhere but here; nothing inline. */
export function contentPolicy({ ancestors = [], frames = [] }: PolicyView = {}): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "img-src 'self' data:",
    "connect-src 'self'",
    "worker-src 'self'",
    "form-action 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    ...(frames.length > 0 ? [`frame-src ${frames.join(' ')}`] : []),
    `frame-ancestors ${ancestors.length > 0 ? ancestors.join(' ') : "'none'"}`,
  ].join('; ')
}

const YEAR = 31_536_000

/**
 * Headers that every answer carries. A page that needs another content policy sets its
 * own, and it stands.
 *
 * @param ancestors - origins that may show these pages in a frame
 */
export function securityHeaders(ancestors: readonly string[] = []) {
  const policy = contentPolicy({ ancestors })
  return createMiddleware(async (c, next) => {
    await next()
    const { headers } = c.res
    if (!headers.has('content-security-policy')) headers.set('content-security-policy', policy)
    headers.set('strict-transport-security', `max-age=${2 * YEAR}; includeSubDomains`)
    headers.set('x-content-type-options', 'nosniff')
    headers.set('referrer-policy', 'same-origin')
    headers.set('permissions-policy', 'camera=(), microphone=(), geolocation=(), payment=()')
    headers.set('cross-origin-opener-policy', 'same-origin')
    // A case is in its address: no cache between us and the person keeps it.
    if (!headers.has('cache-control')) headers.set('cache-control', 'no-store')
  })
}
