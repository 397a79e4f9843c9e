import { readFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { AppDeps } from '../../src/api/deps.ts'
import { createApp } from '../../src/app.ts'
import { learnDrawing } from '../../src/pages/learn-drawings.ts'
import { createContent } from '../../src/pages/markdown.ts'
import { printFonts } from '../../src/pages/print-fonts.ts'
import { readSources } from '../../src/pages/source-list.ts'
import { pngDrawer } from '../../src/preview/png.ts'
import { loadRulebook } from '../../src/rulebook/load.ts'
import { readFolder } from '../../src/rulebook/read-folder.ts'
import { loadShopRules } from '../../src/shop-sheet/shop-rules.ts'
import { loadShops } from '../../src/shops/load.ts'
import { reader } from './reader.ts'

export { reader }

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The project's own rulebook. */
export const rulebook = loadRulebook(readFolder(`${root}rules`))

/** What the real server gives the app; the log is kept for the test to look at. */
export function realDeps(): AppDeps & { logged: Readonly<Record<string, string | number>>[] } {
  const logged: Readonly<Record<string, string | number>>[] = []
  return {
    rulebook,
    reader,
    content: createContent((path) => readText(`${root}content/${path}`), learnDrawing),
    sources: readSources(readFolder(`${root}rules`)),
    asset: (name) => readAsset(`${root}dist/assets/${name}`),
    shops: loadShops(readFolder(`${root}content/shops`), rulebook.cost),
    drawPng: pngDrawer(`${root}node_modules/@expo-google-fonts`),
    shopRules: loadShopRules(readFolder(`${root}rules`)),
    printFonts: printFonts((path) =>
      readFileSync(`${root}node_modules/@expo-google-fonts/${path}`),
    ),
    clock: () => 0,
    addressOf: () => '127.0.0.1',
    rate: { perMinute: 0, addresses: 100 },
    logEach: false,
    log: (entry) => logged.push(entry),
    logged,
  }
}

export const app = createApp(realDeps())

/** POST a JSON value and read the JSON answer. */
export async function postJson(
  path: string,
  body: unknown,
): Promise<{ status: number; type: string; json: Record<string, unknown> }> {
  const response = await app.request(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })
  const json = (await response.json()) as Record<string, unknown>
  return { status: response.status, type: response.headers.get('content-type') ?? '', json }
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
