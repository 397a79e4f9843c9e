import { describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { clientAddress } from '../../src/site/client-address.ts'
import { realDeps } from '../support/app.ts'

/** Of a trusted proxy's one entry. Addresses are those of RFC 5737 and RFC 3849, for documents. */
const of = (entry: string) => clientAddress(entry, '10.0.0.1', 1)

describe('clientAddress', () => {
  it('believes only as many entries from the end as there are proxies of ours', () => {
    const header = 'forged, 203.0.113.9, 10.0.0.2'
    expect(clientAddress(header, '10.0.0.1', 0)).toBe('10.0.0.1')
    expect(clientAddress(header, '10.0.0.1', 1)).toBe('10.0.0.2')
    expect(clientAddress(header, '10.0.0.1', 2)).toBe('203.0.113.9')
    expect(clientAddress(undefined, '10.0.0.1', 2)).toBe('10.0.0.1')
  })

  // RFC 7239, section 6: a port or a hidden port may stand after a node, in quotes where it does.
  it.each([
    '203.0.113.7',
    '203.0.113.7:4711',
    '203.0.113.7:1',
    '203.0.113.7:_secret',
    '"203.0.113.7:4711"',
    ' 203.0.113.7:65535 ',
    '::ffff:203.0.113.7',
    '[::ffff:203.0.113.7]:4711',
    '"[::ffff:cb00:7107]"',
  ])('reads %s as one IPv4 address', (entry) => {
    expect(of(entry)).toBe('203.0.113.7')
  })

  // RFC 4291, section 2.2, has the ways to write an address; of one customer's network all are one.
  it.each([
    '2001:db8::1',
    '2001:DB8:0:0::1',
    '2001:0db8:0000:0000:0000:0000:0000:0001',
    '[2001:db8::1]',
    '[2001:db8::1]:4711',
    '"[2001:db8::1]:4711"',
    '"[2001:db8::1]:_hidden"',
    '2001:db8::aaaa:bbbb:cccc:4711',
    '2001:db8::192.0.2.33',
    '[2001:db8::1%25eth0]:4711',
  ])('reads %s as one IPv6 network', (entry) => {
    expect(of(entry)).toBe('2001:db8:0:0::/64')
  })

  it('tells networks and addresses apart', () => {
    expect(of('2001:db8:0:1::1')).not.toBe(of('2001:db8::1'))
    expect(of('203.0.113.8:4711')).not.toBe(of('203.0.113.7:4711'))
    expect(of('::1')).toBe('0:0:0:0::/64')
  })

  it.each([
    'unknown',
    '_hidden',
    '_hidden:4711',
    '',
    '203.0.113.256',
    '203.0.113.7:4711:1',
    '[203.0.113',
    '2001:db8:::1',
    '2001::db8::1',
    '1:2:3:4:5:6:7',
    '1:2:3:4:5:6:7:8:9',
    '1:2:3:4:5:6:7::8:9',
    '2001:db8::12345',
    '"',
  ])('takes the proxy for what is no address: %s', (entry) => {
    expect(of(entry)).toBe('10.0.0.1')
  })

  it('reads the address of the connection in the same way', () => {
    expect(clientAddress(undefined, '::ffff:203.0.113.7', 0)).toBe('203.0.113.7')
    expect(clientAddress(undefined, '2001:db8::1', 0)).toBe('2001:db8:0:0::/64')
    expect(clientAddress('unknown', 'edge', 1)).toBe('edge')
  })
})

describe('the limit of an address', () => {
  it('is not passed by another port each time', async () => {
    const app = createApp({
      ...realDeps(),
      rate: { perMinute: 3, addresses: 100 },
      addressOf: (c) => clientAddress(c.req.header('x-forwarded-for'), '10.0.0.1', 1),
    })
    const seen: number[] = []
    for (let port = 40_000; port < 40_004; port++) {
      for (const node of [`203.0.113.7:${port}`, `"[2001:db8::${port - 39_999}]:${port}"`]) {
        const headers = { 'x-forwarded-for': node }
        seen.push((await app.request('/api/routes', { headers })).status)
      }
    }
    expect(seen).toEqual([200, 200, 200, 200, 200, 200, 429, 429])
  })
})
