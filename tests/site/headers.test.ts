import { describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { app, realDeps } from '../support/app.ts'

const YEAR = 31_536_000

/** One answer of each kind, good and bad. */
const ANSWERS: [string, RequestInit?][] = [
  ['/'],
  ['/call?bore=4.03in&layout=v8-cross-plane'],
  ['/learn/register'],
  ['/worksheets/preload'],
  ['/offline'],
  ['/embed?shop=millpond'],
  ['/no-such-page'],
  ['/call', { method: 'DELETE' }],
  ['/preset/none'],
  [`/?${'x'.repeat(13_000)}`],
  ['/', { method: 'POST', body: 'x'.repeat(300_000) }],
  ['/api/facts'],
  ['/api/nothing'],
  ['/api/assess', { method: 'POST', body: '{', headers: { 'content-type': 'application/json' } }],
  ['/healthz'],
  ['/robots.txt'],
  ['/sitemap.xml'],
  ['/embed.js'],
  ['/assets/none.js'],
]

function policyOf(headers: Headers): Map<string, string> {
  const text = headers.get('content-security-policy') ?? ''
  return new Map(
    text
      .split('; ')
      .map((part) => [part.split(' ')[0] as string, part.slice(part.indexOf(' ') + 1)]),
  )
}

describe('headers of every answer', () => {
  it.each(ANSWERS.map(([path, init]) => [path.slice(0, 60), path, init] as const))(
    '%s',
    async (_, path, init) => {
      const { headers, status } = await app.request(path, init)
      expect(status).toBeLessThan(500)
      const age = /max-age=(\d+); includeSubDomains/.exec(
        headers.get('strict-transport-security') ?? '',
      )
      expect(Number(age?.[1])).toBeGreaterThanOrEqual(YEAR)
      expect(headers.get('x-content-type-options')).toBe('nosniff')
      expect(headers.get('referrer-policy')).toBe('same-origin')
      expect(headers.get('permissions-policy')).toContain('camera=()')
      expect(headers.get('cache-control')).not.toBeNull()
      expect(headers.get('x-request-id')).toMatch(/^[0-9a-f-]{36}$/)
      for (const name of ['set-cookie', 'server', 'x-powered-by'])
        expect(headers.get(name)).toBeNull()
      const policy = policyOf(headers)
      for (const name of ['default-src', 'object-src', 'base-uri'])
        expect(policy.get(name)).toBe("'none'")
      for (const name of ['script-src', 'style-src', 'worker-src', 'form-action']) {
        expect(policy.get(name)).toBe("'self'")
      }
      expect(policy.get('frame-ancestors')).toBe(
        path.startsWith('/embed?') ? 'http://localhost:* http://127.0.0.1:*' : "'none'",
      )
    },
  )

  it('say what a text is made of', async () => {
    for (const [path, init] of ANSWERS) {
      const response = await app.request(path, init)
      const type = response.headers.get('content-type') ?? ''
      if ((await response.text()) === '') continue
      // JSON is UTF-8 by its own standard, RFC 8259, section 8.1.
      expect([path.slice(0, 60), type]).toEqual([
        path.slice(0, 60),
        expect.stringMatching(
          /^(text\/|application\/(xml|javascript)).*charset=utf-8$|^application\/(problem\+)?json/i,
        ),
      ])
    }
  })
})

describe('where an address asks too often', () => {
  it('the headers are there too', async () => {
    const small = createApp({ ...realDeps(), rate: { perMinute: 1, addresses: 10 } })
    await small.request('/learn')
    const { status, headers } = await small.request('/learn')
    expect(status).toBe(429)
    expect(Number(headers.get('retry-after'))).toBeGreaterThan(0)
    expect(policyOf(headers).get('default-src')).toBe("'none'")
    expect(headers.get('x-content-type-options')).toBe('nosniff')
  })
})

describe('the log', () => {
  it('has a line for each request and no answers in it', async () => {
    const deps = { ...realDeps(), logEach: true }
    const logging = createApp(deps)
    await logging.request('/call?bore=4.03in&note=secret-note')
    await logging.request('/', {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: 'text=secret+words&state=',
    })
    await logging.request('/x\r\n{"level":"error"}')
    await logging.request('/call%3Fbore=4.03in&note=secret-note')
    expect(deps.logged).toHaveLength(4)
    for (const entry of deps.logged) {
      expect(Object.keys(entry)).toEqual(['level', 'id', 'method', 'path', 'status', 'ms'])
      const line = JSON.stringify(entry)
      expect(line).not.toMatch(/secret|4\.03|[\r\n]/)
    }
  })
})
