/**
 * Takes the README's pictures anew from the built server: `npm run pictures`.
 * They are kept in .github/pictures/, few colours and small.
 */
import { spawn } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import { type Browser, chromium, type Page } from 'playwright-core'
import { encodePng, reduceColours } from './palette-png.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = `${root}.github/pictures/`
const LARGEST_FILE = 150_000
/** A build that says enough for every picture. */
const CASE =
  'blockMaterial=gray-iron&boost=18psi&bore=4.03in&capFastening=two-bolt&capMaterial=gray-iron&chargeCooling=intercooler&compressionRatio=9.2&fuel=e85&induction=turbocharged&invested=10000USD&layout=v8-cross-plane&peakRpm=6600rpm&shopLineBores=no&stroke=3.75in&use=street-strip'

interface Shot {
  readonly name: string
  readonly path: string
  readonly width: number
  readonly scale?: number
  readonly dark?: true
  /** The part to show; without it the top of the page, this high. */
  readonly part?: string
  readonly height?: number
}

const SHOTS: readonly Shot[] = [
  { name: 'call', path: `/call?${CASE}`, width: 1280, height: 1480 },
  {
    name: 'guide-dark-phone',
    path: '/?capFastening=two-bolt&induction=turbocharged&use=street-strip',
    width: 360,
    scale: 2,
    height: 820,
    dark: true,
  },
  { name: 'loads', path: `/call?${CASE}`, width: 1280, part: '#load-diagrams' },
]

async function main(): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const port = await freePort()
  const server = spawn(process.execPath, [`${root}dist/server.cjs`], {
    env: { ...process.env, PORT: String(port), HOST: '127.0.0.1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium'
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] })
  try {
    // The server prints its address when it listens.
    await new Promise((resolve) => server.stdout.once('data', resolve))
    for (const shot of SHOTS) await take(browser, `http://127.0.0.1:${port}`, shot)
  } finally {
    await browser.close()
    server.kill('SIGTERM')
  }
}

async function freePort(): Promise<number> {
  const probe = createServer()
  await new Promise<void>((resolve) => probe.listen(0, '127.0.0.1', resolve))
  const address = probe.address()
  await new Promise((resolve) => probe.close(resolve))
  if (address === null || typeof address === 'string') throw new Error('no free port')
  return address.port
}

async function take(browser: Browser, origin: string, shot: Shot): Promise<void> {
  const { name, path, width, scale = 1, dark, part, height = 900 } = shot
  const context = await browser.newContext({
    viewport: { width, height },
    deviceScaleFactor: scale,
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
  })
  const page = await context.newPage()
  await page.goto(`${origin}${path}`, { waitUntil: 'load' })
  await page.evaluate(() => document.fonts.ready)
  const png = part ? await page.locator(part).screenshot() : await page.screenshot()
  const file = encodePng(await reduced(await context.newPage(), png))
  if (file.length > LARGEST_FILE) throw new Error(`${name}.png has ${file.length} bytes`)
  writeFileSync(`${folder}${name}.png`, file)
  console.log(`${name}.png: ${file.length} bytes`)
  await context.close()
}

/** The browser decodes its own picture, so that no library has to. */
async function reduced(page: Page, png: Buffer): Promise<ReturnType<typeof reduceColours>> {
  const { width, height, rgba } = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
    const canvas = new OffscreenCanvas(picture.width, picture.height)
    const pen = canvas.getContext('2d')
    if (!pen) throw new Error('no canvas')
    pen.drawImage(picture, 0, 0)
    const { data } = pen.getImageData(0, 0, picture.width, picture.height)
    let text = ''
    const STEP = 0x8000
    for (let at = 0; at < data.length; at += STEP) {
      text += String.fromCharCode(...data.subarray(at, at + STEP))
    }
    return { width: picture.width, height: picture.height, rgba: btoa(text) }
  }, png.toString('base64'))
  return reduceColours(Buffer.from(rgba, 'base64'), width, height)
}

await main()
