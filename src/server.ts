import { readFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { serve } from '@hono/node-server'
import { createApp } from './app.ts'
import { learnDrawing } from './pages/learn-drawings.ts'
import { createContent } from './pages/markdown.ts'
import { printFonts } from './pages/print-fonts.ts'
import { readSources } from './pages/source-list.ts'
import { pngDrawer } from './preview/png.ts'
import { loadRulebook } from './rulebook/load.ts'
import { readFolder } from './rulebook/read-folder.ts'
import { readSettings } from './settings.ts'
import { loadShopRules } from './shop-sheet/shop-rules.ts'
import { loadShops } from './shops/load.ts'

const settings = stopOnError(() => readSettings(process.env, process.cwd()))

const app = stopOnError(() => {
  const rulebook = loadRulebook(readFolder(settings.rulesFolder))
  return createApp({
    rulebook,
    content: createContent((path) => readText(join(settings.contentFolder, path)), learnDrawing),
    sources: readSources(readFileSync(join(settings.rulesFolder, 'sources.json'), 'utf8')),
    asset: (name) => readAsset(join(settings.assetsFolder, name)),
    shops: loadShops(readFolder(settings.shopsFolder), rulebook.cost),
    origin: settings.origin,
    demoOrigin: settings.demoOrigin,
    drawPng: pngDrawer(settings.fontsFolder),
    shopRules: loadShopRules(readFolder(settings.rulesFolder)),
    printFonts: printFonts((path) => readFileSync(join(settings.fontsFolder, path))),
    clock: () => performance.now(),
    log: (entry) => console.error(JSON.stringify(entry)),
  })
})

const server = serve({ fetch: app.fetch, port: settings.port, hostname: settings.host }, (info) => {
  const host = settings.host.includes(':') ? `[${settings.host}]` : settings.host
  console.log(`The guide is at http://${host}:${info.port}/`)
})

server.on('error', (error: NodeJS.ErrnoException) => {
  const busy = `port ${settings.port} is taken; set PORT to another`
  console.error(`Mainstay cannot listen: ${error.code === 'EADDRINUSE' ? busy : error.message}`)
  process.exit(1)
})

for (const signal of ['SIGTERM', 'SIGINT'] as const) {
  process.once(signal, () => {
    // Requests under way are answered; idle connections would hold the process for nothing.
    server.close(() => process.exit(0))
    if ('closeIdleConnections' in server) server.closeIdleConnections()
    setTimeout(() => process.exit(0), settings.drainSeconds * 1000).unref()
  })
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
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return undefined
  }
}

async function readAsset(path: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  try {
    return new Uint8Array(await readFile(path))
  } catch {
    return undefined
  }
}
