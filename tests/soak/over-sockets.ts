/**
 * `npm run soak -- 20000 sockets`: so many generated requests to the real server, a process of its
 * own, over loopback sockets: kept connections, slow readers and writers, clients that go away,
 * and bytes that are no HTTP. It fails on any answer of 500 or above, on a hang, on an entry in
 * the server's log, on memory that grows, and where the same link no longer gives the same bytes.
 */
import { execFileSync } from 'node:child_process'
import fc from 'fast-check'
import { type ServerProcess, startServer } from '../support/server-process.ts'
import { anyRequest } from './any-request.ts'
import { asked as again, ask, askRaw, closeAll, MANNERS, type Manner } from './socket-manners.ts'

const CHUNK = 240
const LANES = 12
/** The server's old space: what it holds for good cannot grow past this without ending it. */
const HEAP_MB = 256
/** Growth of the whole process after the first tenth that is no leak. */
const ALLOWED_MB = 192
const LINK = '/call?v=1.0.0&layout=v8-cross-plane&bore=4.03in&stroke=3.48in&use=street'

const manner: fc.Arbitrary<Manner> = fc.oneof(
  { weight: 12, arbitrary: fc.constant<Manner>('plain') },
  { weight: 5, arbitrary: fc.constantFrom(...MANNERS) },
)
const start = fc.constantFrom(
  ...['GET / HTTP/1.1\r\nHost: x\r\n\r\n', 'GET /healthz HTTP/1.1\r\nHost: x\r\n\r\n'],
  ...[
    'GET / HTTP/1.1\r\n',
    'POST /api/assess HTTP/1.1\r\nHost: x\r\nContent-Length: 40\r\n\r\n',
    '',
  ],
)
const raw = fc
  .tuple(fc.array(start, { maxLength: 3 }), fc.uint8Array({ maxLength: 400 }))
  .map(([heads, bytes]) => Buffer.concat([Buffer.from(heads.join('')), bytes]))

type Step = (port: number) => Promise<number>
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 9,
    arbitrary: fc.tuple(anyRequest, manner).map(
      ([sent, how]): Step =>
        (port) =>
          ask(port, sent, how),
    ),
  },
  {
    weight: 1,
    arbitrary: raw.map(
      (bytes): Step =>
        (port) =>
          askRaw(port, bytes),
    ),
  },
)

/**
 * @param say - gets what it finds, line by line
 * @returns whether all went well
 */
export async function soakOverSockets(
  asked: number,
  say: (line: string) => void = console.log,
): Promise<boolean> {
  again.anew = 0
  const server = await startServer({ NODE_OPTIONS: `--max-old-space-size=${HEAP_MB}` })
  const before = await bytesOf(server)
  const statuses = new Map<number, number>()
  const started = performance.now()
  let [warm, faults] = [0, 0]
  for (let done = 0, seed = 1; done < asked; seed++) {
    const steps = fc.sample(step, { numRuns: Math.min(CHUNK, asked - done), seed })
    done += steps.length
    faults += await inLanes(steps, server.port, statuses, say)
    if (warm === 0 && done >= asked / 10) warm = memoryOf(server)
    if (seed % 8 === 0) say(`${done} requests, ${memoryOf(server).toFixed(0)} MB`)
    if (server.child.exitCode !== null) throw new Error(`the server ended: ${server.logged()}`)
  }
  const seconds = (performance.now() - started) / 1000
  const grown = memoryOf(server) - warm
  const same = (await bytesOf(server)) === before
  closeAll()
  server.child.kill('SIGTERM')
  const code = await server.ended
  say(listOf(statuses))
  say(
    `${asked} requests over sockets in ${seconds.toFixed(0)} s; ${faults} faults, ${again.anew} asked anew; memory grew ${grown.toFixed(0)} MB after the first tenth, heap held below ${HEAP_MB} MB; the same link gave ${same ? 'the same' : 'OTHER'} bytes; ended with ${code}; log: ${server.logged() || 'empty'}`,
  )
  return faults === 0 && grown <= ALLOWED_MB && same && code === 0 && server.logged() === ''
}

/** Several at once, as browsers do. */
async function inLanes(
  steps: Step[],
  port: number,
  statuses: Map<number, number>,
  say: (line: string) => void,
): Promise<number> {
  let faults = 0
  const lane = async () => {
    for (let next = steps.pop(); next; next = steps.pop()) {
      try {
        const status = await next(port)
        statuses.set(status, (statuses.get(status) ?? 0) + 1)
      } catch (error) {
        faults++
        say((error as Error).message.slice(0, 2000))
      }
    }
  }
  await Promise.all(Array.from({ length: LANES }, lane))
  return faults
}

async function bytesOf({ origin }: ServerProcess): Promise<string> {
  return (await fetch(origin + LINK)).text()
}

/** Resident memory of the server's process, MB. */
function memoryOf({ child }: ServerProcess): number {
  return (
    Number(execFileSync('ps', ['-o', 'rss=', '-p', String(child.pid)], { encoding: 'utf8' })) / 1024
  )
}

function listOf(statuses: ReadonlyMap<number, number>): string {
  return [...statuses]
    .sort(([a], [b]) => a - b)
    .map(([status, count]) => `${status || 'no answer wanted or possible'}: ${count}`)
    .join(', ')
}
