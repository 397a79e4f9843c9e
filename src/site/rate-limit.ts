import type { Context } from 'hono'
import { createMiddleware } from 'hono/factory'
import type { RateLimit } from '../api/deps.ts'

interface Bucket {
  left: number
  at: number
}

const MINUTE = 60_000

/**
 * Refuse an address that asks too often. A bucket holds a minute's worth and fills
 * steadily, so a page with its assets is never refused and a loop soon is. Processes that share
 * a limit each count what the others served as well, as soon as they hear of it.
 *
 * @param addressOf - the client's address, proxies already taken into account
 * @param clock - milliseconds
 * @param refuse - the answer, told after how many seconds to try again
 */
export function rateLimit(
  { perMinute, addresses, peers }: RateLimit,
  addressOf: (c: Context) => string,
  clock: () => number,
  refuse: (c: Context, seconds: number) => Response | Promise<Response>,
) {
  const buckets = new Map<string, Bucket>()
  /** Take one of an address's requests; gives what was left before. */
  const take = (address: string): number => {
    const now = clock()
    const before = buckets.get(address) ?? { left: perMinute, at: now }
    const left = Math.min(perMinute, before.left + ((now - before.at) * perMinute) / MINUTE)
    // Set again at the end of the map, so that its first entry is the one seen longest ago.
    buckets.delete(address)
    buckets.set(address, { left: Math.max(0, left - 1), at: now })
    if (buckets.size > addresses) buckets.delete(buckets.keys().next().value as string)
    return left
  }
  peers?.onHearing(take)
  return createMiddleware(async (c, next) => {
    if (perMinute === 0 || c.req.path === '/healthz') return next()
    const address = addressOf(c)
    const left = take(address)
    if (left >= 1) {
      peers?.tell(address)
      return next()
    }
    const seconds = Math.ceil(((1 - left) * 60) / perMinute)
    const refused = await refuse(c, seconds)
    refused.headers.set('retry-after', String(seconds))
    return refused
  })
}
