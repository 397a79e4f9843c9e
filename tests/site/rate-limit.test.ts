import type { Hono } from 'hono'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { realDeps } from '../support/app.ts'
import { startServer } from '../support/server-process.ts'

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

describe('rateLimit over several processes', () => {
  /** Apps that hear of each other at once. */
  function together(count: number) {
    const listeners: ((address: string) => void)[] = []
    return Array.from({ length: count }, (_, own) =>
      createApp({
        ...realDeps(),
        rate: {
          perMinute: 3,
          addresses: 2,
          peers: {
            tell: (address) => {
              for (const [at, hear] of listeners.entries()) if (at !== own) hear(address)
            },
            onHearing: (listener) => {
              listeners[own] = listener
            },
          },
        },
      }),
    )
  }

  it('counts what an address was served by any of them, and refusals by none', async () => {
    const [one, other] = together(2) as [Hono, Hono]
    const ask = async (from: Hono) => (await from.request('/api/routes')).status
    expect([await ask(one), await ask(one), await ask(other)]).toEqual([200, 200, 200])
    expect([await ask(one), await ask(other), await ask(one)]).toEqual([429, 429, 429])
  })

  it('is shared by the real processes', async () => {
    const server = await startServer({ WORKERS: '2', RATE_PER_MINUTE: '20' })
    const seen: number[] = []
    // Each by a connection of its own, which the processes take in turn.
    for (let n = 0; n < 60; n++) {
      const answer = await fetch(`${server.origin}/robots.txt`, {
        headers: { connection: 'close' },
      })
      await answer.text()
      seen.push(answer.status)
    }
    const served = seen.filter((status) => status === 200).length
    // Alone each would serve twenty; a few more than twenty come while it fills again.
    expect(served).toBeGreaterThanOrEqual(20)
    expect(served).toBeLessThan(35)
    server.child.kill('SIGTERM')
    expect(await server.ended).toBe(0)
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
