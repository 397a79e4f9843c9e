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
 * The headers that every answer carries, those that nothing else may set first.
 *
 * @param ancestors - origins that may show these pages in a frame
 */
export function standingHeaders(ancestors: readonly string[] = []): Record<string, string> {
  return { ...FIXED, ...usual(ancestors) }
}

const FIXED = {
  'strict-transport-security': `max-age=${2 * YEAR}; includeSubDomains`,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), payment=()',
  'cross-origin-opener-policy': 'same-origin',
}

/** What a page may say otherwise. */
function usual(ancestors: readonly string[]) {
  return {
    'content-security-policy': contentPolicy({ ancestors }),
    // A case is in its address: no cache between us and the person keeps it.
    'cache-control': 'no-store',
  }
}

/**
 * Sets these headers. A page that needs another content policy or may be kept sets its own,
 * and it stands.
 *
 * @param ancestors - origins that may show these pages in a frame
 */
export function securityHeaders(ancestors: readonly string[] = []) {
  const [fixed, open] = [Object.entries(FIXED), Object.entries(usual(ancestors))]
  return createMiddleware(async (c, next) => {
    await next()
    const { headers } = c.res
    for (const [name, value] of open) if (!headers.has(name)) headers.set(name, value)
    for (const [name, value] of fixed) headers.set(name, value)
  })
}
