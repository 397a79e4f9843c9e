import { type AddressInfo, connect, type Socket } from 'node:net'
import { type ServerType, serve } from '@hono/node-server'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { inTurn } from '../../src/api/take-turns.ts'
import { createApp } from '../../src/app.ts'
import { assess } from '../../src/assess.ts'
import { realDeps } from '../support/app.ts'

vi.mock('../../src/api/take-turns.ts', async (original) => {
  const real = await original<typeof import('../../src/api/take-turns.ts')>()
  return { ...real, inTurn: vi.fn(real.inTurn) }
})
vi.mock('../../src/assess.ts', async (original) => {
  const real = await original<typeof import('../../src/assess.ts')>()
  return { ...real, assess: vi.fn(real.assess) }
})

const deps = {
  ...realDeps(),
  giveWay: () => new Promise<void>((resolve) => setImmediate(resolve)),
  logEach: true,
}
let server: ServerType
/** Only ends a hung test on a busy machine. */
const PATIENT = { timeout: 60_000 }

beforeAll(
  () =>
    new Promise<void>((ready) => {
      const { fetch } = createApp(deps)
      server = serve({ fetch, port: 0, hostname: '127.0.0.1' }, () => ready())
    }),
)
afterAll(() => new Promise((done) => server.close(done)))

/** Send a request as it is; the socket is the test's to close. */
function send(text: string): Socket {
  const socket = connect((server.address() as AddressInfo).port, '127.0.0.1')
  socket.write(text)
  return socket
}

const get = (path: string) => `GET ${path} HTTP/1.1\r\nHost: x\r\n\r\n`
const post = (path: string, body: string) =>
  `POST ${path} HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n${body}`
const inChunks = (path: string, body: string) =>
  `POST ${path} HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n${body.length.toString(16)}\r\n${body}\r\n0\r\n\r\n`

const answers = (bore: string) => `{"answers":{"bore":"${bore}"}}`
const SENT: readonly [string, string][] = [
  ['a page', get('/call?bore=4.011in')],
  ['the guide', get('/?bore=4.012in')],
  ['a sheet', get('/sheet?bore=4.013in')],
  ['a check-in', get('/check-in?bore=4.019in')],
  ['a worksheet of a case', get('/worksheets/main-loads?bore=4.021in')],
  ['a comparison', get('/compare?a=bore%3D4.014in&b=bore%3D4.015in')],
  ['a body with its length', post('/api/assess', answers('4.016 in'))],
  ['a body in pieces', inChunks('/api/assess', answers('4.017 in'))],
]

describe('a client that goes while it waits in the line', () => {
  it.each(SENT)('is not computed for: %s', async (_, request) => {
    let open: (() => void) | undefined
    const held = inTurn(() => new Promise<void>((resolve) => (open = resolve)))
    vi.mocked(inTurn).mockClear()
    vi.mocked(assess).mockClear()
    deps.logged.length = 0
    const socket = send(request)
    await expect.poll(() => vi.mocked(inTurn).mock.calls.length, PATIENT).toBeGreaterThan(0)
    socket.destroy()
    await expect.poll(connections, PATIENT).toBe(0)
    open?.()
    await held
    await expect.poll(() => deps.logged.length, PATIENT).toBe(1)
    expect(deps.logged[0]).toMatchObject({ level: 'info', status: 400 })
    expect(assess).not.toHaveBeenCalled()
  })

  it('others are served as before', async () => {
    const { port } = server.address() as AddressInfo
    const answer = await fetch(`http://127.0.0.1:${port}/call?bore=4.018in`)
    expect(answer.status).toBe(200)
    expect(assess).toHaveBeenCalled()
  })
})

function connections(): Promise<number> {
  return new Promise((resolve) => server.getConnections((_, count) => resolve(count)))
}
