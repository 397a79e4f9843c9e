/**
 * `npm run soak -- 100000`: so many generated requests to the whole app in this process.
 * It fails on any answer of 500 or above, on a hang, and on a heap that grows. With `sockets`
 * after the number they go to the real server over loopback sockets: over-sockets.ts.
 */
import fc from 'fast-check'
import { createApp } from '../../src/app.ts'
import { realDeps } from '../support/app.ts'
import { anyRequest } from './any-request.ts'
import { soakOverSockets } from './over-sockets.ts'
import { send } from './send.ts'

const MOST = 100_000
const USUAL = 10_000
const CHUNK = 250
/** Growth of the heap after the first tenth that is no leak: code compiled late, full caches. */
const ALLOWED_MB = 48
const MB = 1024 * 1024

const asked = Number(process.argv[2] ?? USUAL)
if (!Number.isInteger(asked) || asked < 1 || asked > MOST) {
  console.error(`Say how many requests: a whole number from 1 to ${MOST}.`)
  process.exit(1)
}
if (process.argv[3] === 'sockets') process.exit((await soakOverSockets(asked)) ? 0 : 1)

const app = createApp(realDeps())
const statuses = new Map<number, number>()
let warm = 0
let faults = 0
const started = performance.now()
for (let done = 0, seed = 1; done < asked; seed++) {
  const requests = fc.sample(anyRequest, { numRuns: Math.min(CHUNK, asked - done), seed })
  for (const request of requests) {
    try {
      const status = await send(app, request)
      statuses.set(status, (statuses.get(status) ?? 0) + 1)
    } catch (error) {
      faults++
      console.error((error as Error).message.slice(0, 2000))
    }
  }
  done += requests.length
  if (warm === 0 && done >= asked / 10) warm = heapUsed()
  if (seed % 8 === 0) console.log(`${done} requests, heap ${Math.round(heapUsed() / MB)} MB`)
}
const grown = (heapUsed() - warm) / MB
const seconds = (performance.now() - started) / 1000
console.log(
  [...statuses]
    .sort(([a], [b]) => a - b)
    .map(([status, count]) => `${status}: ${count}`)
    .join(', '),
)
console.log(
  `${asked} requests in ${seconds.toFixed(0)} s; ${faults} faults; heap grew ${grown.toFixed(1)} MB after the first tenth`,
)
process.exit(faults > 0 || grown > ALLOWED_MB ? 1 : 0)

/** After a collection, so that what is left is what is held. */
function heapUsed(): number {
  ;(globalThis as { gc?: () => void }).gc?.()
  return process.memoryUsage().heapUsed
}
