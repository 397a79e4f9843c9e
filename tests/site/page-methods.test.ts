import { describe, expect, it } from 'vitest'
import { app } from '../support/app.ts'

const READ = ['/call', '/learn', '/learn/register', '/worksheets/preload', '/sheet.pdf', '/offline']
const BOTH = ['/', '/sheet', '/check-in', '/embed?shop=millpond']

describe('methods of pages', () => {
  it.each([
    ...READ.map((path) => [path, 'GET, HEAD'] as const),
    ...BOTH.map((path) => [path, 'GET, HEAD, POST'] as const),
  ])('%s takes only %s', async (path, allowed) => {
    for (const method of ['POST', 'PUT', 'PATCH', 'DELETE', 'PROPFIND']) {
      if (allowed.includes(method)) continue
      const response = await app.request(path, { method })
      expect([method, response.status]).toEqual([method, 405])
      expect(response.headers.get('allow')).toBe(allowed)
      expect(await response.text()).toContain('Not in this way')
    }
    const head = await app.request(path, { method: 'HEAD' })
    expect([200, 422]).toContain(head.status)
    expect(await head.text()).toBe('')
  })

  it('a page that is not there is not found, whatever is asked', async () => {
    for (const method of ['GET', 'POST', 'DELETE']) {
      const response = await app.request('/no-such-page', { method })
      expect([method, response.status]).toEqual([method, 404])
    }
  })
})
