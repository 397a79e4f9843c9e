import { gzipSync } from 'node:zlib'
import { Hono } from 'hono'
import type { Browser, Frame, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { toQuery } from '../../shared/share-link.ts'
import { createApp } from '../../src/app.ts'
import type { Shop } from '../../src/shops/schema.ts'
import { realDeps, rulebook } from '../support/app.ts'
import { STREET_V8, said } from '../support/rulebook.ts'
import { builtAsset, launchBrowser, openPage, type Served, serveApp } from './support.ts'

/** The page of a shop, with a content policy that allows the guide and nothing else. */
function hostApp(guide: () => string, body: () => string, watch = WATCH): Hono {
  const app = new Hono()
  app.get('/watch.js', (c) => c.body(watch, 200, { 'content-type': 'text/javascript' }))
  app.get('/', (c) =>
    c.html(
      `<!doctype html><html lang="en"><title>A shop</title><script src="/watch.js"></script><script src="${guide()}/embed.js" async></script><h1>A shop</h1>${body()}</html>`,
      200,
      {
        'content-security-policy': `default-src 'none'; script-src 'self' ${guide()}; frame-src ${guide()}; base-uri 'none'; form-action 'none'`,
      },
    ),
  )
  return app
}

/** Keeps what the element tells its host, and every height that the frame was given. */
const WATCH = `
window.told = []
for (const name of ['ready', 'answer', 'call'])
  document.addEventListener(name, (event) => told.push({ name, id: event.target.id, ...event.detail }))
`

interface Told {
  readonly name: string
  readonly id: string
  readonly shop: string
  readonly link: string
  readonly answers: number
  readonly route?: string
  readonly confidence?: string
}

const told = (page: Page) => page.evaluate(() => (globalThis as unknown as { told: Told[] }).told)

async function toldOnce(page: Page, name: string, id = ''): Promise<Told> {
  await page.waitForFunction(
    ([wanted, from]) =>
      (globalThis as unknown as { told: Told[] }).told.some(
        (one) => one.name === wanted && (from === '' || one.id === from),
      ),
    [name, id] as const,
  )
  const found = (await told(page)).filter(
    (one) => one.name === name && (id === '' || one.id === id),
  )
  return found.at(-1) as Told
}

/** The guide's own document inside an element. */
async function inside(page: Page, selector = 'mainstay-guide'): Promise<Frame> {
  const frame = await page.locator(`${selector} iframe`).elementHandle()
  const content = await frame?.contentFrame()
  if (!content) throw new Error('there is no frame')
  return content
}

const frameHeight = (page: Page, selector = 'mainstay-guide') =>
  page.locator(`${selector} iframe`).evaluate((frame) => frame.getBoundingClientRect().height)

/** How much of the guide is hidden below the end of its frame, px. */
const hidden = (frame: Frame) =>
  frame.evaluate(() => document.body.getBoundingClientRect().height - innerHeight)

/** Wait until a frame is as high as its page. */
async function settled(page: Page, selector = 'mainstay-guide'): Promise<Frame> {
  const frame = await inside(page, selector)
  await frame.waitForFunction(
    () => Math.abs(document.body.getBoundingClientRect().height - innerHeight) <= 1,
  )
  return frame
}

let browser: Browser
let guide: Served
let allowed: Served
let refused: Served
let body = ''

const shop = (id: string, origins: readonly string[]): Shop => {
  const [one] = realDeps().shops
  if (!one) throw new Error('there is no shop to begin with')
  return { ...one, id, name: `Shop ${id}`, origins: [...origins] }
}

beforeAll(async () => {
  browser = await launchBrowser()
  allowed = await serveApp(
    hostApp(
      () => guide.origin,
      () => body,
    ),
  )
  refused = await serveApp(
    hostApp(
      () => guide.origin,
      () => body,
    ),
  )
  const shops = [shop('one', [allowed.origin]), shop('two', [allowed.origin])]
  guide = await serveApp(createApp({ ...realDeps(), shops, clock: () => performance.now() }))
})

afterAll(async () => {
  await browser.close()
  await Promise.all([guide, allowed, refused].map((one) => one.close()))
})

describe('the guide on a shop’s page', () => {
  it('stands under a strict content policy, as high as its page, and says that it is ready', async () => {
    body = '<mainstay-guide id="g" shop="one"><a href="/">no script</a></mainstay-guide>'
    const { page, faults, close } = await openPage(browser)
    await page.goto(allowed.origin)
    const ready = await toldOnce(page, 'ready')
    expect(ready).toMatchObject({ id: 'g', shop: 'one', answers: 2 })
    expect(ready.link).toContain('shopLineBores=yes')
    const frame = await settled(page)
    expect(await frame.locator('.shop-band').textContent()).toContain('Shop one')
    expect(await page.getByText('no script').isVisible()).toBe(false)
    expect(faults).toEqual([])
    await close()
  })

  it('tells of each answer with the canonical link, and follows the height', async () => {
    body = '<mainstay-guide shop="one"></mainstay-guide>'
    const { page, faults, close } = await openPage(browser)
    await page.goto(allowed.origin)
    await toldOnce(page, 'ready')
    const frame = await settled(page)
    await frame.getByRole('button', { name: 'Turbocharged' }).click()
    const answer = await toldOnce(page, 'answer')
    expect(answer.link).toBe(
      toQuery(
        said({ induction: 'turbocharged', shopLineBores: 'yes', taxRate: '7.5 %' }),
        rulebook.version,
      ),
    )
    expect(answer.answers).toBe(3)
    expect(Math.abs(await hidden(await settled(page)))).toBeLessThanOrEqual(1)
    await frame.getByRole('link', { name: 'Learn' }).click()
    await frame.waitForURL('**/learn?**')
    expect(await (await settled(page)).locator('.shop-band').textContent()).toContain('Shop one')
    expect((await told(page)).filter(({ name }) => name === 'ready').length).toBe(1)
    expect(faults).toEqual([])
    await close()
  })

  it('begins with the answers of the host, and tells of the call', async () => {
    const link = toQuery(said(STREET_V8), rulebook.version)
    body = `<mainstay-guide shop="one" units="metric" answers="${link.replaceAll('&', '&amp;')}"></mainstay-guide>`
    const { page, close } = await openPage(browser)
    await page.goto(allowed.origin)
    const call = await toldOnce(page, 'call')
    expect(call.link).toBe(link)
    expect(call.route).toBe('keep-caps-and-bolts')
    expect(['settled', 'likely']).toContain(call.confidence)
    const frame = await settled(page)
    await frame
      .getByRole('link', { name: /see the call/i })
      .first()
      .click()
    await frame.waitForURL('**/call?**')
    expect(await (await settled(page)).getByRole('link', { name: 'Ask this shop' }).count()).toBe(1)
    expect((await told(page)).filter(({ name }) => name === 'call').length).toBe(1)
    await close()
  })

  it('stands twice on one page, each for itself', async () => {
    body =
      '<mainstay-guide id="a" shop="one"></mainstay-guide><mainstay-guide id="b" shop="two"></mainstay-guide>'
    const { page, faults, close } = await openPage(browser)
    await page.goto(allowed.origin)
    expect((await toldOnce(page, 'ready', 'a')).shop).toBe('one')
    expect((await toldOnce(page, 'ready', 'b')).shop).toBe('two')
    const second = await settled(page, '#b')
    const before = await frameHeight(page, '#a')
    await second.getByRole('button', { name: 'Supercharged' }).click()
    const answer = await toldOnce(page, 'answer', 'b')
    expect(answer.link).toContain('induction=supercharged')
    await settled(page, '#b')
    expect((await told(page)).filter(({ name, id }) => name === 'answer' && id === 'a')).toEqual([])
    expect(await frameHeight(page, '#a')).toBe(before)
    expect(faults).toEqual([])
    await close()
  })

  it('follows the width of the page, and comes to rest', async () => {
    body = '<mainstay-guide shop="one"></mainstay-guide>'
    const { page, close } = await openPage(browser, { viewport: { width: 1100, height: 700 } })
    await page.goto(allowed.origin)
    await toldOnce(page, 'ready')
    await settled(page)
    const wide = await frameHeight(page)
    await page.locator('mainstay-guide iframe').evaluate((frame) => {
      const heights: number[] = []
      Object.assign(globalThis, { heights })
      new ResizeObserver(() => heights.push(frame.getBoundingClientRect().height)).observe(frame)
    })
    for (const width of [380, 900, 380]) {
      await page.setViewportSize({ width, height: 700 })
      await settled(page)
    }
    expect(await frameHeight(page)).toBeGreaterThan(wide)
    const count = () =>
      page.evaluate(() => (globalThis as unknown as { heights: number[] }).heights.length)
    const then = await count()
    // A loop would go on by itself; nothing else happens on this page in the meantime.
    await page.evaluate(
      () =>
        new Promise((resolve) => {
          let frames = 60
          const next = () => (--frames > 0 ? requestAnimationFrame(next) : resolve(undefined))
          next()
        }),
    )
    expect(await count()).toBe(then)
    await close()
  })

  it('does not run away when something in it is as high as the window', async () => {
    body = '<mainstay-guide shop="one"></mainstay-guide>'
    const { page, close } = await openPage(browser)
    await page.goto(allowed.origin)
    await toldOnce(page, 'ready')
    const frame = await settled(page)
    await frame.evaluate(() => {
      const sheet = new CSSStyleSheet()
      sheet.replaceSync('main { min-block-size: calc(100vh + 40px) }')
      document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
    })
    await frame.evaluate(
      () =>
        new Promise((resolve) => {
          let frames = 90
          const next = () => (--frames > 0 ? requestAnimationFrame(next) : resolve(undefined))
          next()
        }),
    )
    // Each step of a loop would add the head, the foot and 40 px more; eight are let through.
    const height = await frameHeight(page)
    await frame.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
    )
    expect(await frameHeight(page)).toBe(height)
    expect(height).toBeLessThan(20_000)
    await close()
  })

  it('takes no word from anyone but its own frame', async () => {
    body = '<mainstay-guide shop="one"></mainstay-guide><iframe id="other" src="/nothing"></iframe>'
    const { page, close } = await openPage(browser)
    await page.goto(allowed.origin)
    await toldOnce(page, 'ready')
    await settled(page)
    const before = await frameHeight(page)
    await page.evaluate(async () => {
      postMessage({ mainstay: 'height', height: 9999 }, '*')
      postMessage(
        { mainstay: 'shown', shop: 'x', page: '/', link: 'forged', answers: 9, route: 'girdle' },
        '*',
      )
      await new Promise((resolve) => setTimeout(resolve, 50))
    })
    expect(await frameHeight(page)).toBe(before)
    expect((await told(page)).map(({ link }) => link)).not.toContain('forged')
    await close()
  })
})

describe('a page that the shop does not allow', () => {
  it('shows no guide and is told nothing; its visitor keeps a plain way to the guide', async () => {
    body = '<mainstay-guide shop="one"></mainstay-guide>'
    const { page, faults, close } = await openPage(browser)
    await page.goto(refused.origin)
    const blocked = () => faults.filter((fault) => /frame-ancestors/.test(fault))
    for (let tries = 0; blocked().length === 0 && tries < 100; tries++) {
      await new Promise((resolve) => setTimeout(resolve, 50))
    }
    expect(blocked().length).toBeGreaterThan(0)
    expect(await told(page)).toEqual([])
    const way = page.getByRole('link', { name: 'Open the guide on its own page' })
    expect(await way.getAttribute('href')).toBe(`${guide.origin}/embed?shop=one`)
    expect(await way.isVisible()).toBe(true)
    await close()
  })

  it('gets no answer from a guide that it opens in a window of its own', async () => {
    body = '<p>no element</p>'
    const { page, close } = await openPage(browser)
    await page.goto(refused.origin)
    const popup = page.waitForEvent('popup')
    const words = page.evaluate(async (address) => {
      const heard: unknown[] = []
      addEventListener('message', ({ data }) => heard.push(data))
      const opened = open(address)
      for (let tries = 0; tries < 20; tries++) {
        await new Promise((resolve) => setTimeout(resolve, 50))
        opened?.postMessage({ mainstay: 'hello' }, '*')
      }
      return heard
    }, `${guide.origin}/embed?shop=one`)
    // The window does open, and shows the guide.
    expect(await (await popup).getByRole('main').count()).toBe(1)
    expect(await words).toEqual([])
    await close()
  })
})

describe('what a shop loads', () => {
  it('is at most 3 kB', () => {
    expect(gzipSync(builtAsset('embed.js').body).length).toBeLessThanOrEqual(3 * 1024)
  })

  it('without script is what stands between the tags', async () => {
    body = '<mainstay-guide shop="one"><a href="/">Open the guide</a></mainstay-guide>'
    const { page, close } = await openPage(browser, { javaScriptEnabled: false })
    await page.goto(allowed.origin)
    expect(await page.getByRole('link', { name: 'Open the guide' }).isVisible()).toBe(true)
    await close()
  })
})
