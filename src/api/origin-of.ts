import type { Context } from 'hono'
import type { AppDeps } from './deps.ts'

/** A name or an address, with or without a port: nothing that would be more than a host in a link. */
const PLAIN_HOST = /^([a-z0-9_.-]+|\[[0-9a-f:.]+\])(:\d{1,5})?$/i

/**
 * The guide's own address, as the operator set it or as this request says: the one rule for
 * everything that names a whole address. Of a request the header `Host` counts, also where its
 * first line names another host. Whoever asks may write there what they like, so nothing that
 * this is written into may be kept for others unless the operator has set it.
 */
export function originOf({ origin }: Pick<AppDeps, 'origin'>, c: Context): string {
  if (origin) return origin
  const asked = new URL(c.req.url)
  const host = c.req.header('host')
  return host && PLAIN_HOST.test(host) ? `${asked.protocol}//${host}` : asked.origin
}
