import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { toQuery } from '../../shared/share-link.ts'
import { createApp } from '../../src/app.ts'
import { realDeps, rulebook } from '../support/app.ts'
import { STREET_V8, said } from '../support/rulebook.ts'
import {
  axeViolations,
  launchBrowser,
  openPage,
  type Served,
  serveApp,
  sidewaysScroll,
} from './support.ts'

const CASE = toQuery(said(STREET_V8), rulebook.version)
const PAGES: Readonly<Record<string, string>> = {
  'copy for a forum': `/forum?${CASE}&hand=on&set=bore&note=Ask+the+seller`,
  'two cases': `/compare?a=${encodeURIComponent(`/call?${CASE}`)}&b=/preset/twin-turbo`,
  'two links that say nothing': '/compare?a=hello&b=there',
  'example builds': '/presets?q=boost',
  'an example build': '/preset/twin-turbo',
  'ask a shop': `/ask-shop?shop=millpond&${CASE}`,
  'the guide in a frame': '/embed?shop=harrow-lane',
  'the call in a frame': `/call?shop=millpond&${CASE}`,
  'a helper’s link': `/?${CASE}&by=bore,stroke&note=I+measured+both&v=0.9.0&nonsense=1`,
}

let browser: Browser
let served: Served

beforeAll(async () => {
  browser = await launchBrowser()
  served = await serveApp(createApp({ ...realDeps(), clock: () => performance.now() }))
})

afterAll(async () => {
  await browser.close()
  await served.close()
})

describe('pages to share with', () => {
  const rows = Object.keys(PAGES).flatMap((name) => [
    [name, 'light'] as const,
    [name, 'dark'] as const,
  ])
  it.each(rows)('%s in %s: axe finds nothing, and 320 px is wide enough', async (name, scheme) => {
    const viewport = { width: 320, height: 640 }
    const { page, faults, close } = await openPage(browser, { colorScheme: scheme, viewport })
    await page.goto(`${served.origin}${PAGES[name]}`, { waitUntil: 'load' })
    for (const summary of await page.locator('main summary').all()) {
      if (await summary.isVisible()) await summary.click()
    }
    expect(await axeViolations(page)).toEqual([])
    expect(await sidewaysScroll(page)).toBe(0)
    expect(faults).toEqual([])
    await close()
  })
})

describe('copy for a forum', () => {
  it('copies each text whole, and says so', async () => {
    const { page, faults, close } = await openPage(browser, {
      permissions: ['clipboard-read', 'clipboard-write'],
    })
    await page.goto(`${served.origin}/forum?${CASE}`)
    for (const name of ['Plain text', 'Markdown', 'BBCode']) {
      await page.getByRole('button', { name: new RegExp(`^Copy ?: ${name}$`) }).click()
      await page.getByRole('status').filter({ hasText: 'Copied.' }).waitFor()
      const text = await page.evaluate(() => navigator.clipboard.readText())
      expect(text).toBe(await page.getByLabel(name, { exact: true }).inputValue())
    }
    expect(faults).toEqual([])
    await close()
  })

  it('without script hides the buttons and leaves the texts to select', async () => {
    const { page, close } = await openPage(browser, { javaScriptEnabled: false })
    await page.goto(`${served.origin}/forum?${CASE}`)
    expect(await page.getByRole('button', { name: /^Copy/ }).count()).toBe(0)
    expect(await page.getByLabel('Plain text').inputValue()).toContain('/call?v=')
    await page.locator('input[name="set"][value="bore"]').uncheck()
    await page.getByLabel('A note to whoever asks').fill('Ask the seller')
    await page.getByRole('button', { name: 'Make the link' }).click()
    await page.getByRole('link', { name: /^http.*by=/ }).click()
    expect(await page.getByRole('heading', { name: /^Your helper set/ }).count()).toBe(1)
    expect(await page.locator('blockquote').textContent()).toBe('Ask the seller')
    await close()
  })
})

describe('/shops', () => {
  it('shows the guide on an invented shop’s page from another origin, and lists what it is told', async () => {
    const { page, faults, close } = await openPage(browser)
    await page.goto(`${served.origin}/shops`)
    await page.locator('iframe.demo-shop').scrollIntoViewIfNeeded()
    const shop = page.frameLocator('iframe.demo-shop')
    await shop.locator('#told li').first().waitFor()
    expect(await shop.locator('#told li').first().textContent()).toMatch(/^ready .*harrow-lane/)
    const guide = shop.frameLocator('mainstay-guide iframe')
    await guide.getByRole('button', { name: 'Turbocharged' }).click()
    await shop.locator('#told li', { hasText: 'induction=turbocharged' }).first().waitFor()
    // The second origin is this machine's other name; nothing else is asked for, nothing refused.
    const other = served.origin.replace('127.0.0.1', 'localhost')
    expect(faults.filter((fault) => !fault.startsWith(`request: ${other}/`))).toEqual([])
    expect(await page.locator('iframe.demo-shop').getAttribute('src')).toBe(`${other}/shops/demo`)
    expect(await axeViolations(page)).toEqual([])
    await close()
  })
})
