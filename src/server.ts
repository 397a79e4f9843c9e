import cluster from 'node:cluster'
import { readFileSync, statSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import type { AddressInfo } from 'node:net'
import { availableParallelism } from 'node:os'
import { join } from 'node:path'
import type { HttpBindings } from '@hono/node-server'
import { jsonLine } from '../shared/visible.ts'
import { createApp } from './app.ts'
import { guideServer } from './http-server.ts'
import { fromOperatorFiles } from './operator-files.ts'
import { printFonts } from './pages/print-fonts.ts'
import { pngDrawer } from './preview/png.ts'
import { ratePeers } from './rate-peers.ts'
import { readFolder, readUtf8 } from './rulebook/read-folder.ts'
import { readSettings } from './settings.ts'
import { clientAddress } from './site/client-address.ts'
import { readAway } from './site/read-away.ts'
import { type Stopping, stopWhenTold } from './stopping.ts'
import { startWorkers } from './workers.ts'

/** Addresses whose rate is remembered at once. */
const REMEMBERED_ADDRESSES = 10_000

// Asked to read its files anew while it still reads them for the first time, it has nothing to do;
// without a listener the signal would end it.
process.on('SIGHUP', () => {})

const settings = stopOnError(() => readSettings(process.env, process.cwd()))

const peers = ratePeers()
let app = stopOnError(makeApp)
let stopping: Stopping | undefined

if (settings.workers !== 1 && cluster.isPrimary) {
  startWorkers(settings.workers || availableParallelism(), settings.stopSeconds)
} else {
  listen()
}

/** The whole guide from the files as they are now. */
function makeApp(): ReturnType<typeof createApp> {
  const content = (path: string) => readText(join(settings.contentFolder, path))
  const [rules, shops] = [readFolder(settings.rulesFolder), readFolder(settings.shopsFolder)]
  return createApp({
    ...fromOperatorFiles({ rules, shops, content }),
    asset: (name) => readAsset(join(settings.assetsFolder, name)),
    origin: settings.origin,
    demoOrigin: settings.demoOrigin,
    drawPng: pngDrawer(settings.fontsFolder),
    printFonts: printFonts((path) => readFileSync(join(settings.fontsFolder, path))),
    clock: () => performance.now(),
    giveWay: () => new Promise((resolve) => setImmediate(resolve)),
    addressOf: (c) =>
      clientAddress(
        c.req.header('x-forwarded-for'),
        (c.env as HttpBindings).incoming?.socket.remoteAddress ?? '',
        settings.trustedProxies,
      ),
    rate: { perMinute: settings.ratePerMinute, addresses: REMEMBERED_ADDRESSES, peers },
    logEach: settings.logEach,
    log,
  })
}

/** Take the operator's files anew; if they are broken, what was good stays. */
function reload(): void {
  try {
    app = makeApp()
    log({ level: 'info', reload: 'done' })
  } catch (error) {
    log({ level: 'error', reload: 'the last good files are kept', error: (error as Error).message })
  }
}

function log(entry: Readonly<Record<string, string | number>>): void {
  console.error(jsonLine({ time: new Date().toISOString(), ...entry }))
}

/**
 * The answer of the guide. A body that was refused unread is read to its end before it, and a
 * connection is not kept once the server was told to stop.
 */
async function answer(request: Request, env: HttpBindings): Promise<Response> {
  const response = await app.fetch(request, env)
  const isUnread = response.status === 413 || response.status === 429
  const isWhole = !isUnread || (await readAway(env.incoming))
  if (!isWhole || stopping?.has()) response.headers.set('connection', 'close')
  return response
}

/** Serve until told to stop. */
function listen(): void {
  const server = guideServer(answer, settings.host)
  server.listen(settings.port, settings.host, () => {
    const { port } = server.address() as AddressInfo
    const host = settings.host.includes(':') ? `[${settings.host}]` : settings.host
    if (cluster.isPrimary) console.log(`The guide is at http://${host}:${port}/`)
    else process.send?.(`http://${host}:${port}/`)
  })
  server.on('error', (error: NodeJS.ErrnoException) => {
    const busy = `port ${settings.port} is taken; set PORT to another`
    console.error(`Mainstay cannot listen: ${error.code === 'EADDRINUSE' ? busy : error.message}`)
    process.exit(1)
  })
  process.on('SIGHUP', reload)
  stopping = stopWhenTold(server, settings.stopSeconds)
}

function stopOnError<T>(make: () => T): T {
  try {
    return make()
  } catch (error) {
    console.error(`Mainstay cannot start: ${(error as Error).message}`)
    process.exit(1)
  }
}

function readText(path: string): string | undefined {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ? readUtf8(path) : undefined
}

async function readAsset(path: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  try {
    return new Uint8Array(await readFile(path))
  } catch {
    return undefined
  }
}
