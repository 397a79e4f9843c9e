import type { Context } from 'hono'
import { createMiddleware } from 'hono/factory'

/** Longest path and query, characters. The longest link of a case with every fact said, parked and changed is shorter. */
export const LONGEST_ADDRESS = 12_000
/** All header names and values together, characters. */
export const LARGEST_HEADERS = 16_000

/** Which of the limits a request passed. */
export type LimitPassed = 'address-too-long' | 'headers-too-large'

/**
 * Refuse an address (414) or headers (431) longer than anything needs. The server's own
 * limit on the whole head may come first; hosts without one have this.
 *
 * @param refuse - the answer to send: a problem document or a page
 * @see RFC 9110, section 15.5.15; RFC 6585, section 5
 */
export function requestLimits(
  refuse: (c: Context, passed: LimitPassed) => Response | Promise<Response>,
) {
  return createMiddleware(async (c, next) => {
    if (addressLength(c.req.url) > LONGEST_ADDRESS) return refuse(c, 'address-too-long')
    if (headersLength(c.req.raw.headers) > LARGEST_HEADERS) return refuse(c, 'headers-too-large')
    return next()
  })
}

function addressLength(url: string): number {
  return url.length - Math.max(0, url.indexOf('/', url.indexOf('//') + 2))
}

function headersLength(headers: Headers): number {
  let sum = 0
  for (const [name, value] of headers) sum += name.length + value.length
  return sum
}
