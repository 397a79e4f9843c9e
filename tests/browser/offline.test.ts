import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { realDeps, rulebook } from '../support/app.ts'
import { launchBrowser, openPage, type Served, serveApp } from './support.ts'

const LINK = `v=${rulebook.version}&layout=v8-cross-plane&bore=4.03in&stroke=3.48in`
const OPENED = [
  `/?${LINK}`,
  `/call?${LINK}`,
  '/learn/register',
  '/worksheets/preload',
  `/sheet?${LINK}`,
]

let browser: Browser
let served: Served
let open: { page: Page; close(): Promise<void> }

/** One visit with a network, after which the server is gone. */
beforeAll(async () => {
  browser = await launchBrowser()
  served = await serveApp(createApp(realDeps()))
  open = await openPage(browser, { serviceWorkers: 'allow' })
  await open.page.goto(`${served.origin}/`, { waitUntil: 'load' })
  await open.page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await open.page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  for (const path of OPENED) await open.page.goto(served.origin + path, { waitUntil: 'load' })
  await open.page.goto(`${served.origin}/no-such-page`)
  await open.page.waitForFunction(
    async (count) => (await (await caches.open('mainstay-pages-1')).keys()).length >= count,
    OPENED.length + 2,
  )
})
afterAll(async () => {
  await open.close()
  await browser.close()
})

const heading = () => open.page.locator('h1').first().textContent()
const keptPaths = () =>
  open.page.evaluate(async () => {
    const keys = await (await caches.open('mainstay-pages-1')).keys()
    return keys.map(({ url }) => new URL(url).pathname + new URL(url).search)
  })

describe('with a network', () => {
  it('keeps what was opened, each with what it is drawn with, and nothing that failed', async () => {
    const kept = await keptPaths()
    expect(kept).toEqual(expect.arrayContaining(['/', '/offline', ...OPENED]))
    expect(kept.filter((path) => path.startsWith('/no-such'))).toEqual([])
  })

  it('keeps the page that an answer leads to', async () => {
    const { page } = open
    await page.goto(`${served.origin}/`)
    await page.getByRole('textbox').first().fill('a 4.030 in bore V8 with a 3.48 in stroke')
    await page.getByRole('button', { name: 'Read it' }).click()
    await page.waitForURL(/bore=/)
    const shown = new URL(page.url())
    await expect.poll(keptPaths).toContain(shown.pathname + shown.search)
  })

  it('keeps no more than so many pages, the last opened ones', async () => {
    const { page } = open
    await page.evaluate(async () => {
      for (let n = 0; n < 75; n++) await fetch(`/learn?n=${n}`)
    })
    await expect.poll(keptPaths).toContain('/learn?n=74')
    const kept = await keptPaths()
    expect(kept.length).toBeLessThanOrEqual(80)
    expect(kept).toContain('/learn?n=10')
  })

  it('asks the server first, so that nothing old is shown', async () => {
    await open.page.goto(`${served.origin}/learn/register`)
    const fromServer = await open.page.evaluate(async () => {
      const kept = await caches.open('mainstay-pages-1')
      await kept.put('/learn', new Response('<title>old</title>'))
      return (await fetch('/learn')).text()
    })
    expect(fromServer).toContain('<h1')
    for (const path of ['/', '/offline', ...OPENED]) {
      await open.page.goto(served.origin + path, { waitUntil: 'load' })
      await expect.poll(keptPaths).toContain(path)
    }
  })
})

describe('with the network cut', () => {
  beforeAll(() => served.close())

  it.each(OPENED)('%s opens again as it was, with its style', async (path) => {
    await open.page.goto(served.origin + path, { waitUntil: 'load' })
    expect(await heading()).not.toMatch(/no network/i)
    const face = await open.page.evaluate(() => getComputedStyle(document.body).fontFamily)
    expect(face).toContain('Source Serif')
    const drawn = await open.page.evaluate(() => document.fonts.check('16px "Source Serif 4"'))
    expect(drawn).toBe(true)
  })

  it('says plainly what works, and lists it, where a page was never opened', async () => {
    await open.page.goto(`${served.origin}/learn/preload`)
    expect(await heading()).toBe('No network here')
    const text = await open.page.locator('main').textContent()
    expect(text).toMatch(/works without a network/i)
    const listed = open.page.locator('[data-kept] a')
    await expect.poll(() => listed.count()).toBeGreaterThan(OPENED.length)
    await open.page.locator('[data-kept] a[href="/learn/register"]').click()
    await open.page.waitForURL('**/learn/register')
    expect(await heading()).not.toBe('No network here')
  })

  it('says that a new answer did not get through', async () => {
    await open.page.goto(`${served.origin}/`)
    await open.page.getByRole('textbox').first().fill('9.5:1 compression')
    await open.page.getByRole('button', { name: 'Read it' }).click()
    await expect
      .poll(() => open.page.locator('body').textContent())
      .toMatch(/did not answer\. Nothing is lost|no network/i)
    expect(new URL(open.page.url()).search).toBe('')
  })
})
