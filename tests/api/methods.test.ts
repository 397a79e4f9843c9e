import { describe, expect, it } from 'vitest'
import { OPERATIONS } from '../../src/api/operations.ts'
import { problemDocument } from '../../src/api/problem-response.ts'
import { LARGEST_HEADERS, LONGEST_ADDRESS } from '../../src/api/request-limits.ts'
import { app } from '../support/app.ts'

const PATHS = [
  ...OPERATIONS.map(({ path, method }) => [`/api${path}`, method] as const),
  ['/api/openapi.json', 'get'] as const,
]

describe('methods', () => {
  it.each(PATHS)('%s takes only %s', async (path, own) => {
    const allowed = own === 'get' ? ['GET', 'HEAD', 'OPTIONS'] : ['POST', 'OPTIONS']
    for (const method of ['GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'HEAD', 'PROPFIND']) {
      if (allowed.includes(method)) continue
      const response = await app.request(path, { method })
      expect([method, response.status]).toEqual([method, 405])
      expect(response.headers.get('allow')).toBe(allowed.join(', '))
      if (method === 'HEAD') continue
      expect(response.headers.get('content-type')).toBe('application/problem+json')
      expect(problemDocument.parse(await response.json()).errors).toMatchObject([{ found: method }])
    }
  })

  it('GET answers HEAD too, without a body', async () => {
    const response = await app.request('/api/facts', { method: 'HEAD' })
    expect(response.status).toBe(200)
    expect(await response.text()).toBe('')
  })

  it.each([
    '/api/',
    '/api/nothing',
    '/api/assess/more',
    '/api/worksheets/nothing',
    '/api/__proto__',
    '/api/%00',
  ])('%s is nothing: a problem document', async (path) => {
    for (const method of ['GET', 'POST']) {
      const response = await app.request(path, { method })
      expect([path, response.status]).toEqual([path, 404])
      expect(problemDocument.parse(await response.json()).type).toBe('/problems/not-found')
    }
  })
})

describe('other pages’ scripts', () => {
  const origin = 'https://shop.example'

  it('may call: the preflight says so, without cookies', async () => {
    const response = await app.request('/api/assess', {
      method: 'OPTIONS',
      headers: {
        origin,
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'content-type',
      },
    })
    expect(response.status).toBe(204)
    expect(response.headers.get('access-control-allow-origin')).toBe('*')
    expect(response.headers.get('access-control-allow-methods')).toBe('GET,POST,OPTIONS')
    expect(response.headers.get('access-control-allow-headers')).toBe('content-type')
    expect(response.headers.get('access-control-allow-credentials')).toBeNull()
  })

  it.each([
    ['/api/facts', 'GET', 200],
    ['/api/assess', 'GET', 405],
    ['/api/assess', 'POST', 415],
    ['/api/nothing', 'GET', 404],
  ])('may read the answer of %s %s', async (path, method, status) => {
    const response = await app.request(path, { method, headers: { origin } })
    expect(response.status).toBe(status)
    expect(response.headers.get('access-control-allow-origin')).toBe('*')
    expect(response.headers.get('access-control-allow-credentials')).toBeNull()
  })

  it('may not read the pages', async () => {
    const response = await app.request('/method', { headers: { origin } })
    expect(response.status).toBe(200)
    expect(response.headers.get('access-control-allow-origin')).toBeNull()
  })
})

describe('limits on the head of a request', () => {
  const head = '/api/facts?x='

  it('reads an address of the longest length and refuses one longer: 414', async () => {
    const fits = await app.request(head + 'x'.repeat(LONGEST_ADDRESS - head.length))
    expect(fits.status).toBe(200)
    const long = await app.request(head + 'x'.repeat(LONGEST_ADDRESS - head.length + 1))
    expect(long.status).toBe(414)
    const document = problemDocument.parse(await long.json())
    expect(document.type).toBe('/problems/address-too-long')
    expect(document.errors).toMatchObject([
      { field: 'address', found: `${LONGEST_ADDRESS + 1} characters` },
    ])
    expect(document.detail).toContain(`at most ${LONGEST_ADDRESS} characters`)
  })

  it('refuses headers beyond any need: 431', async () => {
    const response = await app.request('/api/facts', {
      headers: { 'x-long': 'x'.repeat(LARGEST_HEADERS) },
    })
    expect(response.status).toBe(431)
    const document = problemDocument.parse(await response.json())
    expect(document.type).toBe('/problems/headers-too-large')
    expect(document.detail).toContain(`at most ${LARGEST_HEADERS} characters`)
  })

  it('answers a long address of a page with a page that does not repeat it', async () => {
    const response = await app.request(`/call?bore=${'4'.repeat(LONGEST_ADDRESS)}`)
    expect(response.status).toBe(414)
    expect(response.headers.get('content-type')).toMatch(/^text\/html/)
    const text = await response.text()
    expect(text).not.toContain('4444444444')
    expect(text).toContain(`more than ${LONGEST_ADDRESS} are not read`)
  })
})
