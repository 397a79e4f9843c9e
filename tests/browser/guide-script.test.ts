import { Hono } from 'hono'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { conversationPage } from '../../src/pages/conversation.ts'
import type { ConversationView } from '../../src/pages/conversation-view.ts'
import { STATES } from '../support/conversation-views.ts'
import {
  axeViolations,
  builtAsset,
  launchBrowser,
  openPage,
  type Served,
  serveApp,
  sidewaysScroll,
} from './support.ts'

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'"

/** The guide's page alone, each state under its name: what the script meets, without the rest. */
function pagesApp(): Hono {
  const app = new Hono()
  app.use(async (context, next) => {
    await next()
    context.header('content-security-policy', POLICY)
  })
  app.get('/assets/:name', (context) => {
    const { body, type } = builtAsset(context.req.param('name'))
    return context.body(new Uint8Array(body), 200, { 'content-type': type })
  })
  const state = (name = 'start') => conversationPage(STATES[name] as ConversationView)
  app.get('/', (context) => context.html(state(context.req.query('state'))))
  app.get('/call', (context) => context.html('<!doctype html><title>Call</title><h1>Call</h1>'))
  app.post('/', async (context) => {
    const fields = await context.req.parseBody()
    if (fields.value === '-8') return context.html(state('refused'), 422)
    if (fields.value === '999') return context.text('broken', 500)
    const next = fields.text ? 'heard' : fields.know ? 'money' : 'choice'
    const sent = String(fields.choice || fields.value || fields.text || 'unknown')
    return context.redirect(`/?${new URLSearchParams({ state: next, sent })}`, 303)
  })
  return app
}

let browser: Browser
let served: Served

beforeAll(async () => {
  browser = await launchBrowser()
  served = await serveApp(pagesApp())
})

afterAll(async () => {
  await browser.close()
  await served.close()
})

function focused(page: Page): Promise<string> {
  return page.evaluate(() => document.activeElement?.id ?? '')
}

/** A mark on the window that a full page load would wipe. */
async function marked(page: Page, path: string): Promise<void> {
  await page.goto(`${served.origin}${path}`, { waitUntil: 'load' })
  await page.evaluate(() => Object.assign(globalThis, { marked: true }))
}

function stillMarked(page: Page): Promise<boolean> {
  return page.evaluate(() => 'marked' in globalThis)
}

describe('the guide with script', () => {
  it('answers, moves the focus to the new question, and the back button works', async () => {
    const { page, faults, close } = await openPage(browser)
    await marked(page, '/?state=quantity')
    await page.getByLabel('Highest boost').fill('8')
    await page.keyboard.press('Enter')
    await page.waitForURL('**/?state=choice&sent=8')
    expect(await focused(page)).toBe('question')
    expect(await page.locator('h2#question').textContent()).toBe('Are they its own?')
    await page.goBack()
    await page.getByRole('heading', { name: 'How much boost' }).waitFor()
    expect(page.url()).toBe(`${served.origin}/?state=quantity`)
    expect(await stillMarked(page)).toBe(true)
    expect(faults).toEqual([])
    await close()
  })

  it('sends the choice that was pressed', async () => {
    const { page, close } = await openPage(browser)
    await marked(page, '/?state=choice')
    await page.locator('button[value="matched"]').click()
    await page.waitForURL('**/?state=choice&sent=matched')
    expect(await stillMarked(page)).toBe(true)
    await close()
  })

  it('leads to the error and keeps the address when an answer is refused', async () => {
    const { page, faults, close } = await openPage(browser)
    await marked(page, '/?state=quantity')
    await page.getByLabel('Highest boost').fill('-8')
    await page.getByRole('button', { name: 'Answer', exact: true }).click()
    await page.locator('#error-summary').waitFor()
    expect(await focused(page)).toBe('error-summary')
    expect(page.url()).toBe(`${served.origin}/?state=quantity`)
    await page.locator('#error-summary a').click()
    expect(await focused(page)).toBe('answer')
    expect(await page.locator('#answer').inputValue()).toBe('-8')
    expect(faults).toEqual([])
    await close()
  })

  it('reads back what it heard, and keeps a draft while another form is sent', async () => {
    const { page, close } = await openPage(browser)
    await marked(page, '/?state=quantity')
    await page.getByLabel('Or say it in your own words').fill('thirty over')
    await page.getByRole('button', { name: 'I don’t know' }).click()
    await page.waitForURL('**/?state=money&sent=unknown')
    expect(await page.locator('#text').inputValue()).toBe('thirty over')
    await page.getByRole('button', { name: 'Say it' }).click()
    await page.waitForURL('**/?state=heard&sent=thirty+over')
    expect(await focused(page)).toBe('heard')
    expect(await page.locator('#text').inputValue()).toBe('')
    await close()
  })

  it('never speaks and moves the focus for the same event', async () => {
    const { page, close } = await openPage(browser)
    await marked(page, '/?state=quantity')
    await page.getByLabel('Highest boost').fill('8')
    await page.keyboard.press('Enter')
    await page.waitForURL('**/?state=choice**')
    expect(await page.getByRole('status').textContent()).toBe('')
    await close()
  })

  it.each([
    ['offline', 'no connection'],
    ['broken', 'did not answer'],
  ])('keeps all that was typed when %s, says so once, and tries again', async (how, words) => {
    const { page, close } = await openPage(browser)
    await marked(page, '/?state=quantity')
    await page.getByLabel('Highest boost').fill(how === 'offline' ? '8' : '999')
    if (how === 'offline') await page.context().setOffline(true)
    await page.getByRole('button', { name: 'Answer', exact: true }).click()
    await page.locator('#failure-notice').waitFor()
    expect(await page.locator('#failure-notice').textContent()).toContain(words)
    await expect.poll(() => page.getByRole('status').textContent()).toContain(words)
    expect(await page.locator('#answer').inputValue()).not.toBe('')
    expect(await axeViolations(page)).toEqual([])
    await page.context().setOffline(false)
    if (how === 'offline') {
      await page.getByRole('button', { name: 'Try again' }).click()
      await page.waitForURL('**/?state=choice&sent=8')
      expect(await page.locator('#failure-notice').count()).toBe(0)
    }
    await close()
  })

  it('leaves other pages and new windows to the browser', async () => {
    const { page, close } = await openPage(browser)
    await marked(page, '/?state=quantity')
    await page.getByRole('link', { name: 'Stop here and see the call' }).click()
    await page.waitForURL('**/call**')
    expect(await stillMarked(page)).toBe(false)
    await close()
  })
})

describe('the guide without script', () => {
  it('answers by plain form posts', async () => {
    const { page, close } = await openPage(browser, { javaScriptEnabled: false })
    await page.goto(`${served.origin}/?state=quantity`)
    await page.getByLabel('Highest boost').fill('8')
    await page.keyboard.press('Enter')
    await page.waitForURL('**/?state=choice&sent=8')
    await page.locator('button[value="matched"]').click()
    await page.waitForURL('**/?state=choice&sent=matched')
    await page.getByRole('button', { name: 'Take back the last answer' }).click()
    await page.waitForURL('**/?state=heard&sent=undo')
    expect(await page.locator('h2#heard').textContent()).toContain('what I took from that')
    await close()
  })
})

describe('every state of the guide', () => {
  const rows = Object.keys(STATES).flatMap((name) => [
    [name, 'light'] as const,
    [name, 'dark'] as const,
  ])
  it.each(rows)('%s in %s: axe finds nothing, and 320 px is wide enough', async (name, scheme) => {
    const viewport = { width: 320, height: 640 }
    const { page, faults, close } = await openPage(browser, { colorScheme: scheme, viewport })
    await page.goto(`${served.origin}/?state=${name}`, { waitUntil: 'load' })
    for (const summary of await page.locator('summary').all()) await summary.click()
    expect(await axeViolations(page)).toEqual([])
    expect(await sidewaysScroll(page)).toBe(0)
    expect(faults).toEqual([])
    await close()
  })
})
