import { describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { clientAddress } from '../../src/site/rate-limit.ts'
import { realDeps } from '../support/app.ts'

describe('rateLimit', () => {
  const limited = (now: { ms: number }, address: { of: string }) =>
    createApp({
      ...realDeps(),
      rate: { perMinute: 3, addresses: 2 },
      clock: () => now.ms,
      addressOf: () => address.of,
    })

  it('refuses the fourth request of a minute, says when to come back, and then lets in', async () => {
    const now = { ms: 0 }
    const app = limited(now, { of: 'a' })
    for (let i = 0; i < 3; i++) expect((await app.request('/api/routes')).status).toBe(200)
    const refused = await app.request('/api/routes')
    expect(refused.status).toBe(429)
    expect(refused.headers.get('retry-after')).toBe('20')
    expect(refused.headers.get('content-type')).toContain('application/problem+json')
    now.ms = 20_000
    expect((await app.request('/api/routes')).status).toBe(200)
    expect((await app.request('/api/routes')).status).toBe(429)
  })

  it('counts each address alone, keeps a page with its link, and never refuses the health check', async () => {
    const address = { of: 'a' }
    const app = limited({ ms: 0 }, address)
    for (let i = 0; i < 4; i++) await app.request('/api/routes')
    const page = await app.request('/learn?bore=4.03in')
    expect(page.status).toBe(429)
    expect(await page.text()).toContain('bore=4.03in')
    expect((await app.request('/healthz')).status).toBe(200)
    address.of = 'b'
    expect((await app.request('/api/routes')).status).toBe(200)
  })
})

describe('clientAddress', () => {
  it('believes only as many entries from the end as there are proxies of ours', () => {
    const header = 'forged, 203.0.113.9, 10.0.0.2'
    expect(clientAddress(header, '10.0.0.1', 0)).toBe('10.0.0.1')
    expect(clientAddress(header, '10.0.0.1', 1)).toBe('10.0.0.2')
    expect(clientAddress(header, '10.0.0.1', 2)).toBe('203.0.113.9')
    expect(clientAddress(undefined, '10.0.0.1', 2)).toBe('10.0.0.1')
  })
})

describe('a fault of ours', () => {
  it('tells the person an id and nothing else, and logs the same id without the answers', async () => {
    const deps = realDeps()
    const broken = { ...deps, content: { document: () => explode() } }
    const response = await createApp(broken).request('/method?bore=4.03in')
    const page = await response.text()
    expect(response.status).toBe(500)
    const [entry] = deps.logged
    expect(page).toContain(String(entry?.id))
    expect(page).not.toContain('secret cause')
    expect(JSON.stringify(deps.logged)).not.toContain('4.03')
    expect(response.headers.get('x-request-id')).toBe(entry?.id)
  })

  function explode(): never {
    throw new Error('secret cause')
  }
})
