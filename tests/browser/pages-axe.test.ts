import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { realApp } from './real-app.ts'
import { axeViolations, sidewaysScroll } from './support.ts'

const app = realApp()

const STREET =
  'bore=4.03in&capFastening=two-bolt&compressionRatio=9.5&induction=naturally-aspirated&layout=v8-cross-plane&peakRpm=5800rpm&use=street'
const BOOSTED =
  'boost=18psi&bore=4.03in&capFastening=two-bolt&compressionRatio=9.2&fuel=e85&induction=turbocharged&invested=10000USD&layout=v8-cross-plane&peakRpm=6600rpm&shopLineBores=no&stroke=3.75in&use=street-strip'
const CANNOT_BE = `${STREET}&stroke=3.48in&displacement=500cuin`

/** Every page that a person can come to, and every state that it can be in. */
const PAGES: readonly (readonly [name: string, path: string])[] = [
  ['the start', '/'],
  ['the guide on the way', `/?${BOOSTED}`],
  ['an earlier answer', `/?${STREET}&ask=bore`],
  ['a message read back', `/?${STREET}&was.use=&said=street+engine`],
  ['what is', `/?${STREET}&said=what+is+a+register%3F`],
  ['a what-if', `/?${STREET}&said=what+if+it+makes+15+psi+with+a+turbo%3F`],
  ['a contradiction', `/?${CANNOT_BE}`],
  ['a broken link', '/?bore=40in&bore=4in&stroke=-3in&fuel=coal'],
  ['answers set aside', `/?${STREET}&parked.boost=12psi`],
  ['the call, caps kept', `/call?${STREET}`],
  ['the call, steel caps, metric', `/call?${BOOSTED}&units=metric`],
  ['the call withheld', `/call?${CANNOT_BE}`],
  ['a call of nothing', '/call'],
  [
    'answers that make no engine',
    '/call?bore=2in&induction=nitrous&nitrousPower=680kW&torquePeakRpm=1000rpm&use=track',
  ],
  ['learn', '/learn'],
  ['an explanation', '/learn/line-bore'],
  ['an example build', '/preset/twin-turbo'],
  ['how to find each figure', '/learn/measuring'],
  ['the glossary', '/learn/glossary'],
  ['the method', '/method'],
  ['the rules', '/rules'],
  ['the machine-shop sheet', `/sheet?${BOOSTED}`],
  ['the check-in', `/check-in?${BOOSTED}`],
  ['the worksheets', '/worksheets'],
  ...[
    'bore-machining',
    'cap-joint',
    'clearance',
    'gas-cycle',
    'job-cost',
    'main-loads',
    'preload',
  ].map((name) => [`the worksheet ${name}`, `/worksheets/${name}`] as const),
  ['the text for a forum', `/forum?${BOOSTED}`],
  ['the example builds', '/presets'],
  ['two cases to compare', '/compare'],
  [
    'two cases compared',
    `/compare?${new URLSearchParams({ a: `/?${STREET}`, b: `/?${BOOSTED}` })}`,
  ],
  ['how a shop shows the guide', '/shops'],
  ['the API', '/api'],
  ['no such page', '/nowhere'],
  ['no such rule', '/rules/nothing-of-the-kind'],
]

async function unfold(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true
  })
}

describe.each(PAGES)('%s', (_, path) => {
  it('has a title and one first heading, nothing that axe finds in light or dark, and fits 320 px and 200 % zoom', async () => {
    const viewport = { width: 1280, height: 900 }
    // A colour on its way to another would be measured as neither.
    const { page, faults, close } = await app.open(path, { viewport, reducedMotion: 'reduce' })
    expect(await page.title()).toMatch(/Mainstay$/)
    expect(await page.locator('h1').count()).toBe(1)
    expect(await page.locator('html').getAttribute('lang')).toBe('en')
    await unfold(page)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await axeViolations(page)).toEqual([])
    }
    // A window of 1280 px at 200 % is 640 CSS px wide.
    for (const width of [640, 320]) {
      await page.setViewportSize({ width, height: 640 })
      expect(await sidewaysScroll(page)).toBe(0)
    }
    expect(await axeViolations(page)).toEqual([])
    expect(faults).toEqual([])
    await close()
  })
})

it('opens every explanation and every rule that the lists lead to', async () => {
  const { page, faults, close } = await app.open('/learn')
  const seen: string[] = []
  for (const list of ['/learn', '/rules']) {
    await page.goto(`${app.origin}${list}`)
    const links = await page
      .locator(`main a[href^="${list}/"]`)
      .evaluateAll((all) => [
        ...new Set(all.map((link) => new URL((link as HTMLAnchorElement).href).pathname)),
      ])
    for (const path of links) {
      const response = await page.request.get(`${app.origin}${path}`)
      if (response.status() !== 200) seen.push(`${path}: ${response.status()}`)
    }
    expect(links.length).toBeGreaterThan(5)
  }
  expect(seen).toEqual([])
  expect(faults).toEqual([])
  await close()
})
