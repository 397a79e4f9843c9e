import { existsSync, readFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { serve } from '@hono/node-server'
import type { AxeResults } from 'axe-core'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]
const TYPES: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
}
const root = new URL('../..', import.meta.url)

/** An installed Chromium: CHROMIUM_PATH, else the one of the system. Nothing is downloaded. */
export async function launchBrowser(): Promise<Browser> {
  const onPath = (process.env.PATH ?? '').split(':').map((folder) => `${folder}/chromium`)
  const executablePath =
    process.env.CHROMIUM_PATH ?? ['/usr/bin/chromium', ...onPath].find(existsSync)
  if (!executablePath) throw new Error('no Chromium: set CHROMIUM_PATH or install chromium')
  return chromium.launch({ executablePath, args: FLAGS })
}

export interface Served {
  readonly origin: string
  close(): Promise<void>
}

/** Serve an app on a free port of this machine. */
export async function serveApp(app: {
  fetch(request: Request): Response | Promise<Response>
}): Promise<Served> {
  const server = await new Promise<ReturnType<typeof serve>>((resolve) => {
    const started = serve({ fetch: app.fetch, port: 0, hostname: '127.0.0.1' }, () =>
      resolve(started),
    )
  })
  const { port } = server.address() as AddressInfo
  const close = () =>
    new Promise<void>((resolve, reject) => {
      if ('closeAllConnections' in server) server.closeAllConnections()
      server.close((error) => (error ? reject(error) : resolve()))
    })
  return { origin: `http://127.0.0.1:${port}`, close }
}

const assetFolder = new URL('dist/assets/', root)
const manifest: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(new URL('manifest.json', assetFolder), 'utf8'),
)
// What the build puts into the server's bundle, for pages that are drawn without one.
Object.assign(globalThis, { ASSET_MANIFEST: manifest })

/** A built asset by its plain or its hashed name, for tests that serve pages without the whole app. */
export function builtAsset(name: string): { body: Buffer; type: string } {
  const body = readFileSync(new URL(manifest[name] ?? name, assetFolder))
  return { body, type: TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream' }
}

/** A page of its own context; script errors, console output and other origins are collected. */
export async function openPage(
  browser: Browser,
  options: BrowserContextOptions = {},
): Promise<{ page: Page; faults: string[]; close(): Promise<void> }> {
  // What is kept for later must not stand between a test and the server; the offline test lets it.
  const context = await browser.newContext({ serviceWorkers: 'block', ...options })
  const page = await context.newPage()
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(`error: ${error.message}`))
  page.on('console', (message) => {
    // The browser's own note on a refused form or a lost connection is what the test asked for.
    if (message.text().startsWith('Failed to load resource')) return
    // A test that serves a few pages alone has no service worker for them.
    if (/^A bad HTTP response code \(404\).*fetching the script/.test(message.text())) return
    if (message.text().startsWith('Service Worker registration blocked')) return
    if (['error', 'warning'].includes(message.type())) faults.push(message.text())
  })
  page.on('request', (request) => {
    const { hostname, protocol } = new URL(request.url())
    // The demonstration of a shop's own site stands under this machine's other name.
    const isOurs = hostname === '127.0.0.1' || hostname === 'localhost'
    if (protocol !== 'data:' && !isOurs) faults.push(`request: ${request.url()}`)
  })
  return { page, faults, close: () => context.close() }
}

const axeSource = readFileSync(new URL('node_modules/axe-core/axe.min.js', root), 'utf8')

/** What axe finds against WCAG 2.2 AA and good practice, one line for each place. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(axeSource)
  const results = await page.evaluate(() => {
    const { axe } = globalThis as unknown as { axe: { run(options: object): Promise<AxeResults> } }
    const runOnly = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']
    return axe.run({ runOnly })
  })
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html} — ${failureSummary}`),
  )
}

/** How far the page is wider than its window, px; 0 when nothing must be scrolled sideways. */
export async function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate(() => Math.max(0, document.documentElement.scrollWidth - innerWidth))
}
