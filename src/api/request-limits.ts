import type { Context } from 'hono'
import { createMiddleware } from 'hono/factory'

/** Longest path and query, characters. The longest link of a case with every fact said, parked and changed is shorter. */
export const LONGEST_ADDRESS = 12_000
/** All header names and values together, characters. */
export const LARGEST_HEADERS = 16_000

/** A limit that a request passed: what passed it, how long it is, and how long it may be, in characters. */
export interface LimitPassed {
  readonly status: 414 | 431
  readonly type: 'address-too-long' | 'headers-too-large'
  readonly part: 'address' | 'headers'
  readonly length: number
  readonly most: number
}

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
    const passed = addressPassed(c) ?? headersPassed(c)
    return passed ? refuse(c, passed) : next()
  })
}

function addressPassed(c: Context): LimitPassed | undefined {
  const [length, most] = [addressLength(c.req.url), LONGEST_ADDRESS]
  if (length <= most) return undefined
  return { status: 414, type: 'address-too-long', part: 'address', length, most }
}

function headersPassed(c: Context): LimitPassed | undefined {
  const [length, most] = [headersLength(c.req.raw.headers), LARGEST_HEADERS]
  if (length <= most) return undefined
  return { status: 431, type: 'headers-too-large', part: 'headers', length, most }
}

function addressLength(url: string): number {
  return url.length - Math.max(0, url.indexOf('/', url.indexOf('//') + 2))
}

function headersLength(headers: Headers): number {
  let sum = 0
  for (const [name, value] of headers) sum += name.length + value.length
  return sum
}
