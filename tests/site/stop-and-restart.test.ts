import { type AddressInfo, connect, createServer } from 'node:net'
import { describe, expect, it } from 'vitest'
import { type ServerProcess, startServer } from '../support/server-process.ts'

const BODY = JSON.stringify({
  answers: { layout: 'v8-cross-plane', bore: '4.03 in', stroke: '3.48 in', use: 'street' },
})

function assess(origin: string): Promise<Response> {
  const headers = { 'content-type': 'application/json' }
  return fetch(`${origin}/api/assess`, { method: 'POST', headers, body: BODY })
}

/** A port that nothing listens on, so that a server comes back under the address it had. */
function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo
      server.close(() => resolve(port))
    })
  })
}

/** Half a request over a bare socket, its rest later; gives what comes back until the end. */
function slowly(port: number, first: string) {
  const socket = connect(port, '127.0.0.1')
  let text = ''
  socket.on('data', (chunk: Buffer) => {
    text += chunk.toString()
  })
  const closed = new Promise<string>((resolve) => socket.once('close', () => resolve(text)))
  socket.on('error', () => undefined)
  const sent = new Promise<void>((resolve) => socket.write(first, () => resolve()))
  return { socket, sent, closed }
}

const head = (connection: string) =>
  `POST /api/assess HTTP/1.1\r\nhost: 127.0.0.1\r\ncontent-type: application/json\r\ncontent-length: ${BODY.length}\r\nconnection: ${connection}\r\n\r\n`

async function stop(server: ServerProcess): Promise<void> {
  server.child.kill('SIGTERM')
  expect(await server.ended).toBe(0)
}

describe('a server that is killed under load', () => {
  it('loses no answer: the same link and body give the same bytes afterwards', async () => {
    const port = String(await freePort())
    const first = await startServer({ PORT: port })
    const page = `/call?v=1.0.0&layout=v8-cross-plane&bore=4.03in&stroke=3.48in`
    const [call, json] = [
      await (await fetch(first.origin + page)).text(),
      await (await assess(first.origin)).text(),
    ]
    const load = Array.from({ length: 40 }, () =>
      assess(first.origin).then(
        (response) => response.text().catch(() => 'cut'),
        () => 'cut',
      ),
    )
    await Promise.race(load)
    first.child.kill('SIGKILL')
    const answers = await Promise.all(load)
    expect(answers).toContain('cut')
    // An answer is whole or none; never half of one taken for the whole.
    expect(new Set(answers.filter((answer) => answer !== 'cut'))).toEqual(new Set([json]))
    await first.ended
    const second = await startServer({ PORT: port })
    expect(second.origin).toBe(first.origin)
    expect(await (await fetch(second.origin + page)).text()).toBe(call)
    expect(await (await assess(second.origin)).text()).toBe(json)
    await stop(second)
  })
})

describe('a server that is told to stop', () => {
  it('answers the request under way, takes no new one, and ends', async () => {
    const server = await startServer()
    const slow = slowly(server.port, head('close') + BODY.slice(0, 10))
    await slow.sent
    // The server has taken the connection up once it has answered a later one.
    await (await fetch(`${server.origin}/healthz`)).text()
    server.child.kill('SIGTERM')
    await expect
      .poll(() =>
        fetch(`${server.origin}/healthz`).then(
          () => 'taken',
          () => 'refused',
        ),
      )
      .toBe('refused')
    slow.socket.write(BODY.slice(10))
    const answer = await slow.closed
    expect(answer).toMatch(/^HTTP\/1\.1 200 /)
    expect(answer).toContain('"call"')
    expect(await server.ended).toBe(0)
  })

  it.each([['1'], ['2']])(
    'answers or refuses everyone who waits, with %s process(es): nobody is cut off',
    async (workers) => {
      const server = await startServer({ STOP_SECONDS: '3', WORKERS: workers })
      // Far more than is answered in the second that is left for answers.
      const answers = Array.from({ length: 120 }, (_, n) =>
        fetch(`${server.origin}/call?bore=4.${100 + n}in`).then(
          async (response) => {
            await response.text()
            return [response.status, response.headers.get('retry-after')]
          },
          () => ['cut', null],
        ),
      )
      // What came later was answered, so all of them were read by then.
      // Each by a connection of its own, which the processes take in turn.
      const once = { headers: { connection: 'close' } }
      for (let n = 0; n < 4; n++) await (await fetch(`${server.origin}/healthz`, once)).text()
      server.child.kill('SIGTERM')
      const found = await Promise.all(answers)
      const kinds = new Set(found.map((one) => one.join()))
      expect(kinds).toContain('503,10')
      kinds.delete('200,')
      expect([...kinds]).toEqual(['503,10'])
      expect(await server.ended).toBe(0)
    },
  )
})

describe('slow clients and many connections', () => {
  it('lets go of a client that never ends its headers, and serves others meanwhile', async () => {
    const server = await startServer()
    const slow = Array.from({ length: 20 }, () =>
      slowly(server.port, 'GET / HTTP/1.1\r\nhost: 127.0.0.1\r\nx-slow: '),
    )
    await Promise.all(slow.map(({ sent }) => sent))
    expect((await fetch(`${server.origin}/learn`)).status).toBe(200)
    const answers = await Promise.all(slow.map(({ closed }) => closed))
    for (const answer of answers) expect(answer).toMatch(/^(HTTP\/1\.1 408 |$)/)
    await stop(server)
  })

  it('answers with 300 idle connections open, and after they are gone', async () => {
    const server = await startServer()
    const idle = Array.from({ length: 300 }, () => slowly(server.port, ''))
    await Promise.all(idle.map(({ sent }) => sent))
    expect((await assess(server.origin)).status).toBe(200)
    for (const { socket } of idle) socket.destroy()
    expect((await fetch(`${server.origin}/healthz`)).status).toBe(200)
    await stop(server)
  })

  it('ends a connection that sends what is no HTTP', async () => {
    const server = await startServer()
    const odd = slowly(server.port, '\x16\x03\x01\x00\xff not http at all\r\n\r\n')
    expect(await odd.closed).toMatch(/^HTTP\/1\.1 400 /)
    expect((await fetch(`${server.origin}/healthz`)).status).toBe(200)
    await stop(server)
  })
})
