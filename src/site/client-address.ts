/**
 * The client's address behind a number of trusted proxies, to count requests by: each of them adds
 * the node it was asked from at the end of `X-Forwarded-For`, so only that many entries from the
 * end can be believed. A port is left out, since every connection has another, and of an IPv6
 * address the first 64 bits are given: one customer has all the rest to choose from. What is no
 * address ("unknown", a hidden name, which may be another each time) counts as the proxy itself.
 *
 * @param forwarded - the header, or undefined
 * @param socket - address of the connection
 * @param proxies - how many proxies of ours stand before this server
 * @returns an IPv4 address, an IPv6 network such as `2001:db8:0:0::/64`, or `socket` as it is
 * when it is neither
 * @see RFC 7239, section 6 (nodes); RFC 4291, section 2.2 (IPv6 as text) and 2.5.4 (64 bits)
 */
export function clientAddress(
  forwarded: string | undefined,
  socket: string,
  proxies: number,
): string {
  const own = addressOfNode(socket) ?? socket
  if (proxies === 0 || forwarded === undefined) return own
  const hops = forwarded.split(',')
  return addressOfNode(hops.at(-proxies) ?? hops[0] ?? '') ?? own
}

/** IPv4 with or without a port; IPv6 bare, or in brackets with or without a port. */
const V4 = /^(\d{1,3})\.(\d{1,3})\.(\d{1,3})\.(\d{1,3})$/
const WITH_PORT = /^(\d{1,3}(?:\.\d{1,3}){3}|\[[^[\]]*\])(?::(?:\d{1,5}|_[\w.-]+))?$/

function addressOfNode(text: string): string | undefined {
  const node = unquoted(text.trim())
  const name = WITH_PORT.exec(node)?.[1] ?? node
  return v4Of(name) ?? v6NetworkOf(name.replace(/^\[(.*)\]$/, '$1'))
}

/** A node with a colon is quoted where RFC 7239 is followed to the letter. */
function unquoted(text: string): string {
  const inside = /^"(.*)"$/.exec(text)?.[1]
  return inside === undefined ? text : inside.replace(/\\(.)/g, '$1').trim()
}

function v4Of(text: string): string | undefined {
  const parts = V4.exec(text)?.slice(1).map(Number)
  return parts?.every((part) => part <= 255) ? parts.join('.') : undefined
}

function v6NetworkOf(text: string): string | undefined {
  const groups = v6Groups(text)
  if (!groups) return undefined
  const [high = 0, low = 0] = groups.slice(6)
  // An IPv4 address on a socket for both: ::ffff:203.0.113.7.
  if (groups.slice(0, 5).every((group) => group === 0) && groups[5] === 0xffff) {
    return [high >> 8, high & 255, low >> 8, low & 255].join('.')
  }
  const network = groups.slice(0, 4).map((group) => group.toString(16))
  return `${network.join(':')}::/64`
}

/** The eight groups of an IPv6 address, its zone left out; undefined when it is none. */
function v6Groups(text: string): number[] | undefined {
  const [bare = ''] = text.split('%')
  const halves = bare.split('::').map((half) => (half === '' ? [] : half.split(':')))
  if (halves.length > 2) return undefined
  const [head = [], tail] = halves
  const dotted = (tail ?? head).at(-1) ?? ''
  const v4 = v4Of(dotted)?.split('.').map(Number)
  if (v4) {
    const [a = 0, b = 0, c = 0, d = 0] = v4
    const pairs = [a * 256 + b, c * 256 + d].map((pair) => pair.toString(16))
    ;(tail ?? head).splice(-1, 1, ...pairs)
  }
  const left = 8 - head.length - (tail?.length ?? 0)
  if (tail ? left < 1 : left !== 0) return undefined
  const groups = [...head, ...Array.from({ length: left }, () => '0'), ...(tail ?? [])]
  if (!groups.every((group) => /^[0-9a-f]{1,4}$/i.test(group))) return undefined
  return groups.map((group) => Number.parseInt(group, 16))
}
