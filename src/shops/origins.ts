/** Names of the person's own machine: only there may a shop leave the port open, to try things. */
const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]'])
const WRITTEN =
  /^(https?):\/\/((?:[a-z0-9](?:[a-z0-9-]*[a-z0-9])?\.)*[a-z0-9](?:[a-z0-9-]*[a-z0-9])?|\[::1\])(?::(\d{1,5}|\*))?$/

/**
 * Why an origin cannot be allowed to show the frame; undefined when it can. It is one
 * scheme, host and port in lower case, https but on the person's own machine, and never
 * a pattern: a shop names each of its own sites.
 */
export function originFault(origin: string): string | undefined {
  const match = WRITTEN.exec(origin)
  if (!match) return 'write an origin such as https://shop.example, without a path or a pattern'
  const [, scheme, host = '', port] = match
  const isHere = LOOPBACK.has(host)
  if (scheme === 'http' && !isHere) return 'use https; http only for localhost'
  if (port === '*' && !isHere) return 'name the port; any port only for localhost'
  return undefined
}
