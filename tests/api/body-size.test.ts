import { describe, expect, it } from 'vitest'
import { LARGEST_BODY } from '../../src/api/json-body.ts'
import { problemDocument } from '../../src/api/problem-response.ts'
import { app } from '../support/app.ts'

describe('large bodies', () => {
  const big = JSON.stringify({ answers: {}, note: 'x'.repeat(LARGEST_BODY) })

  it.each(['/api/assess', '/api/understand', '/api/turn'])(
    '%s: 413 by content-length',
    async (path) => {
      const response = await app.request(path, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'content-length': String(big.length) },
        body: big,
      })
      expect(response.status).toBe(413)
      expect(problemDocument.parse(await response.json()).errors[0]?.fits).toContain(
        String(LARGEST_BODY),
      )
      expect(response.headers.get('access-control-allow-origin')).toBe('*')
    },
  )

  it('413 when it comes in pieces and says no length, and the rest is not read', async () => {
    let sent = 0
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += 16_384
        if (sent > 64 * LARGEST_BODY) controller.close()
        else controller.enqueue(new Uint8Array(16_384).fill(0x20))
      },
    })
    const request = new Request('http://localhost/api/assess', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
      duplex: 'half',
    } as RequestInit)
    const response = await app.request(request)
    expect(response.status).toBe(413)
    expect(problemDocument.parse(await response.json()).type).toBe('/problems/body-too-large')
    // One chunk over the limit and what the stream itself keeps ready.
    expect(sent).toBeLessThan(4 * LARGEST_BODY)
  })

  it('a body of nothing but unknown keys draws no refusal many times its size', async () => {
    const keys = Array.from({ length: 4000 }, (_, at) => [`k${at}`, 1])
    const response = await app.request('/api/assess', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ answers: Object.fromEntries(keys) }),
    })
    expect(response.status).toBe(400)
    const text = await response.text()
    expect(text.length).toBeLessThan(8 * LARGEST_BODY)
    const { detail, errors } = problemDocument.parse(JSON.parse(text))
    expect(errors).toHaveLength(60)
    expect(detail).toMatch(/There are 3940 more problems\.$/)
  })

  it('a megabyte is refused by length alone', async () => {
    const response = await app.request('/api/assess', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'content-length': '1048576' },
      body: ' '.repeat(1_048_576),
    })
    expect(response.status).toBe(413)
    expect(response.headers.get('content-type')).toBe('application/problem+json')
  })
})
