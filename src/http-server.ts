import {
  createServer,
  type IncomingMessage,
  type Server,
  type ServerResponse,
  STATUS_CODES,
} from 'node:http'
import type { Duplex } from 'node:stream'
import { getRequestListener, type HttpBindings, RequestError } from '@hono/node-server'
import { PATIENCE } from './patience.ts'
import { standingHeaders } from './site/headers.ts'

/** Bytes of a request's head: twice what is answered, so that what is too long is told how long it may be. */
const LARGEST_HEAD = 32 * 1024

/** Why what came is no request that the guide could answer. */
const WHY: Readonly<Record<number, string>> = {
  400: 'What was sent is no HTTP request that can be read.',
  408: 'The request took too long to come.',
  413: 'The extensions of the chunks of this request are too long.',
  417: 'Nothing but 100-continue can be expected here.',
  431: `The headers of this request are too large; more than ${LARGEST_HEAD} bytes are not read.`,
  500: 'Something went wrong here.',
}

const STATUS: Readonly<Record<string, number>> = {
  ERR_HTTP_REQUEST_TIMEOUT: 408,
  HPE_CHUNK_EXTENSIONS_OVERFLOW: 413,
  HPE_HEADER_OVERFLOW: 431,
}

/**
 * A server for the guide's fetch handler. What never becomes a request of the guide is refused
 * here, with the headers that every answer carries.
 *
 * @param fetch - the handler
 * @param hostname - where it listens, for requests of HTTP/1.0 that name no host
 * @see RFC 9112, section 3.2 (no Host, or more than one: 400); RFC 9110, section 10.1.1 (Expect: 417)
 */
export function guideServer(
  fetch: (request: Request, env: HttpBindings) => Response | Promise<Response>,
  hostname: string,
): Server {
  const listener = getRequestListener((request, env) => fetch(request, env as HttpBindings), {
    hostname,
    errorHandler: (error) => refusal(error instanceof RequestError ? 400 : 500),
  })
  const underWay = new WeakMap<Duplex, Set<ServerResponse>>()
  const note = ({ socket }: IncomingMessage, response: ServerResponse) => {
    const all = underWay.get(socket) ?? new Set()
    underWay.set(socket, all.add(response))
    response.once('close', () => all.delete(response))
  }
  const options = { ...PATIENCE, maxHeaderSize: LARGEST_HEAD, requireHostHeader: false }
  const server = createServer(options, (request, response) => {
    note(request, response)
    return isForOneHost(request) ? listener(request, response) : refuse(response, 400)
  })
  server.on('checkExpectation', (request: IncomingMessage, response: ServerResponse) => {
    note(request, response)
    refuse(response, 417)
  })
  server.on('clientError', (error: NodeJS.ErrnoException, socket) => {
    // Nothing may stand in the midst of an answer that is being written already.
    const isBegun = [...(underWay.get(socket) ?? [])].some(({ headersSent }) => headersSent)
    if (socket.writable && !isBegun && error.code !== 'ECONNRESET') {
      socket.write(rawRefusal(STATUS[error.code ?? ''] ?? 400))
    }
    socket.destroy(error)
  })
  return server
}

/** Node keeps the first of several hosts without a word; a proxy on the way may have meant another. */
function isForOneHost({ httpVersion, headersDistinct }: IncomingMessage): boolean {
  const named = headersDistinct.host?.length ?? 0
  return named === 1 || (named === 0 && httpVersion !== '1.1')
}

function headersOf(text: string): Record<string, string> {
  return {
    ...standingHeaders(),
    'content-type': 'text/plain; charset=utf-8',
    'content-length': String(Buffer.byteLength(text)),
    connection: 'close',
  }
}

function textOf(status: number): string {
  return `${WHY[status] ?? ''}\n`
}

function refusal(status: number): Response {
  return new Response(textOf(status), { status, headers: headersOf(textOf(status)) })
}

function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, headersOf(textOf(status))).end(textOf(status))
}

function rawRefusal(status: number): string {
  const text = textOf(status)
  const lines = Object.entries(headersOf(text)).map(([name, value]) => `${name}: ${value}\r\n`)
  return `HTTP/1.1 ${status} ${STATUS_CODES[status]}\r\n${lines.join('')}\r\n${text}`
}
