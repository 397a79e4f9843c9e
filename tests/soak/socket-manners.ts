import { Agent, type ClientRequest, type IncomingMessage, request } from 'node:http'
import { connect } from 'node:net'
import type { Sent } from './any-request.ts'

/** How a client behaves; most behave well. */
export const MANNERS = ['plain', 'slow-writer', 'slow-reader', 'gone-early', 'gone-late'] as const
export type Manner = (typeof MANNERS)[number]

/** No answer within this is a hang; a server's own patience with a slow client is shorter. */
const PATIENCE_MS = 60_000
const BETWEEN_MS = 20
const PIECES = 4

const agent = new Agent({ keepAlive: true, maxSockets: 24, keepAliveMsecs: 1000 })

/** Close the connections that are kept. */
export function closeAll(): void {
  agent.destroy()
}

const pause = () => new Promise((resolve) => setTimeout(resolve, BETWEEN_MS))

/** Requests that were asked anew, since the kept connection had just been closed for idleness. */
export const asked = { anew: 0 }

/**
 * One request over a kept connection. The server closes one that has idled; a request that meets
 * it on the way is asked once more on a new one, as every client does.
 *
 * @returns the status, read to the end of the answer; 0 where the client itself went away
 * @throws {Error} at a fault, a hang or a connection that goes without an answer
 * @see RFC 9112, section 9.3.1 (retrying requests)
 */
export async function ask(port: number, sent: Sent, manner: Manner): Promise<number> {
  try {
    return await askOn(agent, port, sent, manner)
  } catch (error) {
    if (!(error instanceof IdleClosed)) throw error
    asked.anew++
    return askOn(false, port, sent, manner)
  }
}

class IdleClosed extends Error {}

function askOn(over: Agent | false, port: number, sent: Sent, manner: Manner): Promise<number> {
  const url = new URL(`http://127.0.0.1:${port}${sent.path}`)
  const { method, headers, body = '' } = sent
  const bytes = Buffer.from(body)
  return new Promise((resolve, reject) => {
    const own = { method, headers: headersOf(headers, bytes, method), agent: over }
    const asking = request(url, own)
    const end = settle(asking, sent, resolve, reject)
    let answered = false
    asking.on('error', (error) => {
      if (manner.startsWith('gone')) end.ok(0)
      else if (asking.reusedSocket && !answered) end.fail(new IdleClosed())
      else end.fail(error)
    })
    asking.on('response', (answer) => {
      answered = true
      void read(answer, asking, manner, end)
    })
    void write(asking, bytes, manner, () => end.ok(0))
  })
}

interface End {
  ok(status: number): void
  fail(why: Error): void
}

function settle(
  asking: ClientRequest,
  sent: Sent,
  resolve: (status: number) => void,
  reject: (error: Error) => void,
): End {
  const fail = (why: Error) => {
    clearTimeout(timer)
    asking.destroy()
    why.message += ` for ${JSON.stringify(sent)}`
    reject(why)
  }
  const timer = setTimeout(() => fail(new Error('no answer')), PATIENCE_MS)
  const ok = (status: number) => {
    clearTimeout(timer)
    if (status >= 500) fail(new Error(String(status)))
    else resolve(status)
  }
  return { ok, fail }
}

function headersOf(headers: Sent['headers'], bytes: Buffer, method: string) {
  return method === 'POST' ? { ...headers, 'content-length': String(bytes.length) } : headers
}

async function write(asking: ClientRequest, bytes: Buffer, manner: Manner, gone: () => void) {
  if (manner === 'gone-early') {
    asking.flushHeaders()
    asking.write(bytes.subarray(0, bytes.length / 2))
    await pause()
    asking.destroy()
    return gone()
  }
  if (manner !== 'slow-writer') return void asking.end(bytes)
  const size = Math.ceil(bytes.length / PIECES)
  for (let n = 0; n < PIECES && !asking.destroyed; n++) {
    asking.write(bytes.subarray(n * size, (n + 1) * size))
    await pause()
  }
  asking.end()
}

async function read(answer: IncomingMessage, asking: ClientRequest, manner: Manner, end: End) {
  const next = answer.headers.location
  if (next !== undefined && !/^\/(?!\/)/.test(next))
    return end.fail(new Error(`sent away to ${next}`))
  if (manner === 'gone-late') {
    asking.destroy()
    return end.ok(0)
  }
  try {
    for await (const _ of answer) if (manner === 'slow-reader') await pause()
    end.ok(answer.statusCode ?? 0)
  } catch (error) {
    end.fail(error as Error)
  }
}

/**
 * Bytes as they are over a connection of their own; what comes back must be HTTP of no fault.
 *
 * @returns the status of the first answer, 0 for none
 */
export function askRaw(port: number, bytes: Uint8Array): Promise<number> {
  return new Promise((resolve, reject) => {
    let text = ''
    const socket = connect(port, '127.0.0.1', () => socket.end(bytes))
    const timer = setTimeout(() => {
      socket.destroy()
      reject(new Error(`a connection is held for ${JSON.stringify(Buffer.from(bytes))}`))
    }, PATIENCE_MS)
    socket.setEncoding('latin1').on('data', (part) => {
      text += part
    })
    socket.on('error', () => undefined)
    socket.on('close', () => {
      clearTimeout(timer)
      const statuses = [...text.matchAll(/^HTTP\/1\.1 (\d{3}) /gm)].map((match) => Number(match[1]))
      if (statuses.some((status) => status >= 500)) reject(new Error(text.slice(0, 500)))
      else resolve(statuses[0] ?? 0)
    })
  })
}
