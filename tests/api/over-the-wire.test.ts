import { type AddressInfo, connect } from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { guideServer } from '../../src/http-server.ts'
import { app } from '../support/app.ts'

const server = guideServer((request, env) => app.fetch(request, env), '127.0.0.1')
let port = 0

beforeAll(
  () =>
    new Promise<void>((ready) => {
      server.listen(0, '127.0.0.1', () => {
        port = (server.address() as AddressInfo).port
        ready()
      })
    }),
)

afterAll(() => new Promise((done) => server.close(done)))

/** Send bytes as they are and read all that comes back until the server closes. */
function send(...parts: string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => {
      for (const part of parts) socket.write(part)
    })
    let answer = ''
    socket.setEncoding('utf8')
    socket.on('data', (text) => {
      answer += text
    })
    // A server that has refused may close while we still write; its answer is what counts.
    socket.on('error', (error) => (answer === '' ? reject(error) : resolve(answer)))
    socket.on('close', () => resolve(answer))
  })
}

const status = (answer: string) => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1])
const head = (first: string, ...lines: string[]) =>
  `${[first, 'Host: guide.example', 'Connection: close', ...lines].join('\r\n')}\r\n\r\n`
const JSON_TYPE = 'Content-Type: application/json'

describe('over a real connection', () => {
  it('reads a body in chunks', async () => {
    const body = '{"text":"4 inch bore"}'
    const chunks = [...body].map((sign) => `1\r\n${sign}\r\n`).join('')
    const answer = await send(
      head('POST /api/understand HTTP/1.1', JSON_TYPE, 'Transfer-Encoding: chunked'),
      `${chunks}0\r\n\r\n`,
    )
    expect(status(answer)).toBe(200)
    expect(answer).toContain('"bore"')
  })

  it('413 for chunks that add up to too much', async () => {
    const chunk = `4000\r\n${' '.repeat(0x4000)}\r\n`
    const answer = await send(
      head('POST /api/assess HTTP/1.1', JSON_TYPE, 'Transfer-Encoding: chunked'),
      `${chunk.repeat(6)}0\r\n\r\n`,
    )
    expect(status(answer)).toBe(413)
    expect(answer).toContain('/problems/body-too-large')
  })

  it('414 for a long address, 431 for long headers', async () => {
    expect(status(await send(head(`GET /api/facts?${'x'.repeat(13_000)} HTTP/1.1`)))).toBe(414)
    expect(status(await send(head('GET /api/facts HTTP/1.1', `X: ${'x'.repeat(20_000)}`)))).toBe(
      431,
    )
  })

  it.each([
    ['no HTTP', 'hello\r\n\r\n'],
    [
      'two lengths',
      head('POST /api/assess HTTP/1.1', JSON_TYPE, 'Content-Length: 2', 'Content-Length: 3'),
    ],
    ['two hosts', head('GET /api/facts HTTP/1.1', 'Host: other.example')],
    ['the same host twice', head('GET /api/facts HTTP/1.1', 'host: guide.example')],
    ['two hosts of an older client', head('GET /api/facts HTTP/1.0', 'Host: other.example')],
    ['a length that is none', head('POST /api/assess HTTP/1.1', JSON_TYPE, 'Content-Length: -1')],
    [
      'length and chunks',
      head(
        'POST /api/assess HTTP/1.1',
        JSON_TYPE,
        'Content-Length: 2',
        'Transfer-Encoding: chunked',
      ),
    ],
    [
      'a broken chunk',
      `${head('POST /api/assess HTTP/1.1', JSON_TYPE, 'Transfer-Encoding: chunked')}zz\r\n`,
    ],
  ])('%s: 400', async (_, bytes) => {
    expect(status(await send(bytes))).toBe(400)
  })

  it('serves on after all of these', async () => {
    expect(status(await send(head('GET /healthz HTTP/1.1')))).toBe(200)
  })

  it('405 and 404 with a body that nobody reads', async () => {
    const body = '{"answers":{}}'
    const length = `Content-Length: ${body.length}`
    expect(status(await send(head('PUT /api/assess HTTP/1.1', JSON_TYPE, length), body))).toBe(405)
    expect(status(await send(head('POST /api/none HTTP/1.1', JSON_TYPE, length), body))).toBe(404)
  })
})

/** Each header of an answer by its name in small letters. */
function headersOf(answer: string): Map<string, string> {
  const [top = ''] = answer.split('\r\n\r\n')
  const lines = top.split('\r\n').slice(1)
  return new Map(
    lines.map((line) => {
      const at = line.indexOf(':')
      return [line.slice(0, at).toLowerCase(), line.slice(at + 1).trim()]
    }),
  )
}

describe('what never becomes a request', () => {
  it.each([
    ['no HTTP', 400, 'hello\r\n\r\n'],
    ['a version that is none', 400, 'GET / HTTP/9.9\r\nHost: a\r\n\r\n'],
    ['a header that is none', 400, head('GET / HTTP/1.1', 'no colon')],
    ['two lengths', 400, head('POST / HTTP/1.1', 'Content-Length: 2', 'Content-Length: 3')],
    ['headers beyond all reading', 431, head('GET / HTTP/1.1', `X: ${'x'.repeat(40_000)}`)],
    ['no host', 400, 'GET / HTTP/1.1\r\nConnection: close\r\n\r\n'],
    ['a host that is none', 400, 'GET / HTTP/1.1\r\nHost: a b\r\nConnection: close\r\n\r\n'],
    ['no path', 400, head('OPTIONS * HTTP/1.1')],
    ['an expectation that nobody meets', 417, head('GET / HTTP/1.1', 'Expect: wonders')],
  ])('%s: %i with the headers of every answer', async (_, code, sent) => {
    const answer = await send(sent)
    expect(status(answer)).toBe(code)
    const headers = headersOf(answer)
    const ours = await app.request('/api/facts')
    for (const name of [
      'content-security-policy',
      'strict-transport-security',
      'x-content-type-options',
      'referrer-policy',
      'permissions-policy',
      'cross-origin-opener-policy',
    ]) {
      expect([name, headers.get(name)]).toEqual([name, ours.headers.get(name)])
    }
    expect(headers.get('cache-control')).toBe('no-store')
    expect(headers.get('content-type')).toBe('text/plain; charset=utf-8')
    expect(headers.get('connection')).toBe('close')
    const [, body = ''] = answer.split('\r\n\r\n')
    expect(body).toMatch(/\w.*\.\n$/)
    expect(headers.get('content-length')).toBe(String(body.length))
  })

  it('is never refused in the midst of an answer', async () => {
    // Its answer begins and never ends.
    const slow = guideServer(() => {
      const start = (stream: ReadableStreamDefaultController) =>
        stream.enqueue(new TextEncoder().encode('half of '))
      return new Response(new ReadableStream({ start }))
    }, '127.0.0.1')
    await new Promise<void>((ready) => slow.listen(0, '127.0.0.1', ready))
    const answer = await new Promise<string>((resolve) => {
      const socket = connect((slow.address() as AddressInfo).port, '127.0.0.1')
      let text = ''
      socket.write('GET / HTTP/1.1\r\nHost: guide.example\r\n\r\n')
      socket.on('data', (chunk) => {
        text += chunk.toString()
        if (text.includes('half of ')) socket.write('no HTTP\r\n\r\n')
      })
      socket.on('error', () => undefined)
      socket.on('close', () => resolve(text))
    })
    await new Promise((done) => slow.close(done))
    expect(answer.match(/HTTP\/1\.1 \d+/g)).toEqual(['HTTP/1.1 200'])
  })

  it('harms nothing when the client has gone already', async () => {
    for (let n = 0; n < 20; n++) {
      await new Promise<void>((gone) => {
        const socket = connect(port, '127.0.0.1', () => {
          socket.write('no HTTP\r\n\r\n', () => socket.resetAndDestroy())
        })
        socket.on('error', () => undefined)
        socket.on('close', () => gone())
      })
    }
    expect(status(await send(head('GET /healthz HTTP/1.1')))).toBe(200)
  })
})

describe('a first line that names another host', () => {
  const CASE = 'bore=4.02in'
  const named = (path: string) =>
    send(head(`GET http://other.example${path} HTTP/1.1`)).then((answer) => {
      expect(status(answer)).toBe(200)
      return answer
    })

  it.each(['/robots.txt', '/sitemap.xml', '/api', '/', '/preset/twin-turbo', `/sheet?${CASE}`])(
    '%s goes by the header as everything does, and is kept for nobody',
    async (path) => {
      const answer = await named(path)
      expect(answer).toContain('http://guide.example/')
      expect(answer).not.toContain('other.example')
      expect(answer).toMatch(/^cache-control: no-store\r$/im)
    },
  )

  it('a header that is no plain host is written nowhere', async () => {
    const odd = `GET http://guide.example/robots.txt HTTP/1.1\r\nHost: a/b?"<b>\r\nConnection: close\r\n\r\n`
    const answer = await send(odd)
    expect(answer).toContain('Sitemap: http://guide.example/sitemap.xml')
    expect(answer).not.toContain('a/b')
  })
})
