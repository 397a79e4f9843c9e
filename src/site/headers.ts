import { createMiddleware } from 'hono/factory'

/** No script, style, font, picture or connection from anywhere but here; nothing inline. */
const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ')

const YEAR = 31_536_000

/** Headers that every answer carries. */
export const securityHeaders = createMiddleware(async (c, next) => {
  await next()
  const { headers } = c.res
  headers.set('content-security-policy', CONTENT_POLICY)
  headers.set('strict-transport-security', `max-age=${2 * YEAR}; includeSubDomains`)
  headers.set('x-content-type-options', 'nosniff')
  headers.set('referrer-policy', 'same-origin')
  headers.set('permissions-policy', 'camera=(), microphone=(), geolocation=(), payment=()')
  headers.set('cross-origin-opener-policy', 'same-origin')
  // A case is in its address: no cache between us and the person keeps it.
  if (!headers.has('cache-control')) headers.set('cache-control', 'no-store')
})
