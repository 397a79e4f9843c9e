import { EventEmitter } from 'node:events'
import { connect } from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readAway } from '../../src/site/read-away.ts'
import { type ServerProcess, startServer } from '../support/server-process.ts'

let server: ServerProcess

beforeAll(async () => {
  server = await startServer()
})

afterAll(async () => {
  server.child.kill('SIGTERM')
  await server.ended
})

const MEGABYTE = 1_000_000

function post(path: string, body: NonNullable<RequestInit['body']>): Promise<number> {
  const init = { method: 'POST', headers: { 'content-type': 'application/json' }, body }
  const streamed = typeof body === 'string' ? init : { ...init, duplex: 'half' }
  return fetch(server.origin + path, streamed as RequestInit).then(async (response) => {
    await response.text()
    return response.status
  })
}

function pieces(count: number): ReadableStream<Uint8Array> {
  let left = count
  return new ReadableStream({
    pull(controller) {
      if (left-- > 0) controller.enqueue(new Uint8Array(65_536).fill(0x20))
      else controller.close()
    },
  })
}

// One after another over connections that are kept: a connection that goes while a body is still
// being written loses the answer that was meant for it.
describe('a body far too large, over a real connection', () => {
  it.each(['/compare', '/api/compare', '/api/assess', '/'])('%s: 413 each time', async (path) => {
    const seen: number[] = []
    for (const megabytes of [0.1, 1, 1, 1, 5, 5, 1, 1]) {
      seen.push(await post(path, 'x'.repeat(megabytes * MEGABYTE)))
    }
    expect(seen).toEqual(Array(8).fill(413))
  })

  it('413 each time when it comes in pieces and says no length', async () => {
    const seen: number[] = []
    for (const count of [4, 16, 64, 16, 64]) seen.push(await post('/api/assess', pieces(count)))
    expect(seen).toEqual(Array(5).fill(413))
  })

  it('is no fault of ours when the client goes half way', async () => {
    const head = 'POST /api/assess HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n'
    for (let n = 0; n < 5; n++) {
      const socket = connect(server.port, '127.0.0.1')
      await new Promise((sent) => socket.write(`${head}Content-Length: 400\r\n\r\n{"an`, sent))
      // The server has the first part once it has answered a later request.
      await (await fetch(`${server.origin}/healthz`)).text()
      socket.resetAndDestroy()
    }
    await (await fetch(`${server.origin}/healthz`)).text()
    expect(server.logged()).toBe('')
  })

  it('serves on afterwards', async () => {
    expect((await fetch(`${server.origin}/healthz`)).status).toBe(200)
    expect(server.logged()).toBe('')
  })
})

describe('a head far too large, over a real connection', () => {
  it.each([
    ['address', `/call?bore=${'4'.repeat(28_000)}`, '', 414],
    ['headers', '/call?bore=4in', `X: ${'x'.repeat(28_000)}\r\n`, 431],
  ])('%s: told how long it may be', async (_, path, header, status) => {
    const answer = await sent(
      `GET ${path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n${header}\r\n`,
    )
    expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `))
    expect(answer).toMatch(/more than 1\d000 are not read/)
  })

  it('beyond what is taken in at all: a bare 431', async () => {
    const answer = await sent(`GET /?x=${'4'.repeat(100_000)} HTTP/1.1\r\nHost: x\r\n\r\n`)
    expect(answer).toMatch(/^HTTP\/1\.1 431 /)
  })

  function sent(bytes: string): Promise<string> {
    return new Promise((resolve) => {
      const socket = connect(server.port, '127.0.0.1', () => socket.write(bytes))
      let answer = ''
      socket.on('data', (chunk: Buffer) => {
        answer += chunk.toString()
      })
      // What is still being written when the server closes is lost; its answer came before.
      socket.on('error', () => undefined)
      socket.on('close', () => resolve(answer))
    })
  }
})

describe('readAway', () => {
  const incoming = () =>
    Object.assign(new EventEmitter(), { readableEnded: false, destroyed: false, resumed: 0 })
  const readable = () => {
    const made = incoming()
    return Object.assign(made, { resume: () => ++made.resumed })
  }

  it('ends with the body, or with the connection', async () => {
    for (const event of ['end', 'close', 'error']) {
      const body = readable()
      const whole = readAway(body)
      body.emit('data', new Uint8Array(10))
      body.emit('pause')
      body.emit(event)
      expect(await whole).toBe(true)
      expect(body.resumed).toBe(2)
      expect(body.eventNames()).toEqual([])
    }
    expect(await readAway(Object.assign(readable(), { readableEnded: true }))).toBe(true)
  })

  it('gives up on a body without end', async () => {
    const body = readable()
    const whole = readAway(body)
    for (let n = 0; n < 17; n++) body.emit('data', { length: MEGABYTE })
    expect(await whole).toBe(false)
    expect(body.eventNames()).toEqual([])
  })
})
