import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { answerAll, answerOne, askedFact, BUILDERS, follow } from './first-time-builder.ts'
import { realApp } from './real-app.ts'

const app = realApp()

/** The calls that the three invented builds must come to, and the words that each must bear. */
const CALLS = {
  'mild-street': { route: /^Keep the caps/, follows: /No parts to buy/, bored: false },
  'high-compression-race': { route: /^Fit steel main caps/, follows: /Line bore/, bored: true },
  'twin-turbo': { route: /^Fit steel main caps/, follows: /Line bore/, bored: true },
} as const
type Name = keyof typeof CALLS

function section(page: Page, id: string) {
  return page.locator(`section[aria-labelledby="${id}"]`)
}

/** All words of the call page, folded ones too, without what only a script writes. */
async function words(page: Page): Promise<string> {
  return page.locator('main').evaluate((main) => {
    const copy = main.cloneNode(true) as HTMLElement
    for (const link of copy.querySelectorAll('[data-copy-link]')) link.remove()
    return (copy.textContent ?? '').replace(/\s+/g, ' ')
  })
}

async function readsAsACall(page: Page, name: Name): Promise<void> {
  const { route, follows, bored } = CALLS[name]
  expect(await page.locator('h1').textContent()).toMatch(route)
  expect(await page.locator('h1').textContent()).toMatch(/\d+ of 100 sampled cases/)
  const reasons = section(page, 'reasons').locator('li.reason')
  expect(await reasons.count()).toBeGreaterThan(0)
  for (const reason of await reasons.all()) {
    const text = (await reason.textContent()) ?? ''
    // A live figure, and where the statement comes from.
    expect(text).toMatch(/\d/)
    expect(text).toMatch(/Common practice|From memory|Computed|\d{4}/)
  }
  const routes = section(page, 'side-by-side').locator('table.routes tbody tr')
  expect(await routes.count()).toBe(7)
  expect(await page.locator('table.routes tr.called').textContent()).toMatch(/This is the call/)
  const margins = page.locator('#margins table')
  expect(await margins.locator('tbody tr').count()).toBe(7)
  expect(await section(page, 'cost').textContent()).toMatch(/Likely .*USD/)
  expect(await section(page, 'follows').textContent()).toMatch(follows)
  expect(await section(page, 'follows').getByText('Line bore the mains').count()).toBe(
    bored ? 1 : 0,
  )
  expect(await page.locator('.assumption').count()).toBeGreaterThan(5)
  expect(await page.locator('.caution-list > li').count()).toBeGreaterThan(0)
}

describe.each(Object.keys(CALLS) as Name[])('the builder of %s', (name) => {
  const calls: string[] = []

  it.each([
    ['with script', true],
    ['without script', false],
  ])('answers every question and reads the call, %s', async (_, javaScriptEnabled) => {
    const { page, faults, close } = await app.open('/', { javaScriptEnabled })
    if (javaScriptEnabled) await page.evaluate(() => Object.assign(globalThis, { marked: true }))
    const asked = await answerAll(page, BUILDERS[name])
    expect(new Set(asked).size).toBe(asked.length)
    expect(asked).toEqual(expect.arrayContaining(['induction', 'use', 'capFastening', 'peakRpm']))
    if (javaScriptEnabled) expect(await page.evaluate(() => 'marked' in globalThis)).toBe(true)
    const soFar = await page.locator('.title-block .verdict').textContent()
    await follow(page, () => page.getByRole('link', { name: 'See the call' }).first().click())
    expect(await page.locator('h1').textContent()).toBe(soFar)
    await readsAsACall(page, name)
    calls.push(await words(page))
    expect(faults).toEqual([])
    await close()
  })

  it('reads the same call either way', () => {
    expect(calls).toHaveLength(2)
    expect(calls[1]).toBe(calls[0])
  })

  it('finds its example build on the first page, and it comes to the same route', async () => {
    const { page, faults, close } = await app.open('/')
    await follow(page, () => page.locator(`.presets a[href*="/preset/${name}"]`).click())
    await follow(page, () => page.getByRole('link', { name: 'Open it in the guide' }).click())
    await follow(page, () =>
      page
        .getByRole('link', { name: /see the call/i })
        .first()
        .click(),
    )
    await readsAsACall(page, name)
    expect(faults).toEqual([])
    await close()
  })
})

describe.each([
  ['with script', true],
  ['without script', false],
])('on the way, %s', (_, javaScriptEnabled) => {
  const knows = BUILDERS['twin-turbo']
  const FIVE =
    'boost=18psi&capFastening=two-bolt&induction=turbocharged&peakRpm=6600rpm&use=street-strip'

  it('changes an earlier answer and loses no other', async () => {
    const { page, close } = await app.open(`/?${FIVE}`, { javaScriptEnabled })
    const before = new URL(page.url()).searchParams
    await page.locator('details.earlier > summary').click()
    await follow(page, () => page.getByRole('link', { name: 'Change use', exact: true }).click())
    expect(await askedFact(page)).toBe('use')
    await follow(page, () => page.getByRole('button', { name: 'Towing' }).click())
    const after = new URL(page.url()).searchParams
    expect(after.get('use')).toBe('towing')
    for (const key of ['induction', 'boost', 'capFastening', 'peakRpm']) {
      expect(after.get(key)).toBe(before.get(key))
    }
    await close()
  })

  it('sets boost aside when there is none, and brings it back', async () => {
    const { page, close } = await app.open('/?induction=turbocharged&boost=18psi', {
      javaScriptEnabled,
    })
    const induction = page.getByRole('link', { name: /^Change induction/ }).last()
    await follow(page, () => induction.click())
    await follow(page, () => page.getByRole('button', { name: 'Naturally aspirated' }).click())
    expect(new URL(page.url()).searchParams.get('parked.boost')).toBe('18psi')
    expect(await page.locator('.chip.is-parked').textContent()).toContain('18')
    await follow(page, () => page.getByRole('button', { name: 'Take back' }).click())
    expect(new URL(page.url()).searchParams.get('boost')).toBe('18psi')
    await close()
  })

  it('goes back, forward and reloads without losing or repeating anything', async () => {
    const { page, close } = await app.open('/', { javaScriptEnabled })
    const first = await askedFact(page)
    await answerOne(page, knows)
    const second = await askedFact(page)
    await answerOne(page, knows)
    const there = page.url()
    const third = await askedFact(page)
    await page.goBack()
    await page
      .locator(`section.question input[name="fact"][value="${second}"]`)
      .waitFor({ state: 'attached' })
    await page.goBack()
    await page
      .locator(`section.question input[name="fact"][value="${first}"]`)
      .waitFor({ state: 'attached' })
    await page.goForward()
    await page.goForward()
    await page
      .locator(`section.question input[name="fact"][value="${third}"]`)
      .waitFor({ state: 'attached' })
    expect(page.url()).toBe(there)
    await page.reload()
    expect(page.url()).toBe(there)
    expect(await askedFact(page)).toBe(third)
    await close()
  })

  it('opens its link elsewhere and finds everything as it stood', async () => {
    const { page, close } = await app.open('/', { javaScriptEnabled })
    await answerOne(page, knows)
    const { pathname, search } = new URL(page.url())
    const other = await app.open(`${pathname}${search}`, { javaScriptEnabled })
    expect(await words(other.page)).toBe(await words(page))
    await other.close()
    await close()
  })

  it('stops early and gets the call with what it assumes', async () => {
    const { page, faults, close } = await app.open(`/?${FIVE}`, { javaScriptEnabled })
    const stop = page.getByRole('link', { name: 'Stop here and see the call' })
    while ((await stop.count()) === 0) await answerOne(page, knows)
    await follow(page, () => stop.click())
    await readsAsACall(page, 'twin-turbo')
    expect(await page.locator('.how-sure').textContent()).toMatch(/Likely/)
    expect(faults).toEqual([])
    await close()
  })

  it('says a whole build in one message, and reload reads it back again', async () => {
    const { page, faults, close } = await app.open('/', { javaScriptEnabled })
    const text = '4.03 x 3.75, 9.2:1, 18 psi twin turbo on e85, two bolt iron block, 6600 rpm'
    await page.getByLabel('Tell the guide about the build').fill(text)
    await follow(page, () => page.getByRole('button', { name: 'Read it' }).click())
    const heard = section(page, 'heard')
    expect(await heard.textContent()).toMatch(/18.psi.*from “18 psi/s)
    const params = new URL(page.url()).searchParams
    expect(params.get('boost')).toBe('18psi')
    expect(params.get('bore')).toBe('4.03in')
    expect(params.get('induction')).toBe('turbocharged')
    await page.reload()
    expect(await heard.textContent()).toMatch(/18.psi/)
    await answerOne(page, knows)
    expect(await heard.count()).toBe(0)
    await page.goBack()
    await heard.waitFor()
    expect(faults).toEqual([])
    await close()
  })

  it('asks why and what, tries a what-if, keeps it and takes it back', async () => {
    const { page, faults, close } = await app.open('/preset/mild-street', { javaScriptEnabled })
    await follow(page, () => page.getByRole('link', { name: 'Open it in the guide' }).click())
    const say = async (text: string): Promise<void> => {
      await page.locator('#text').fill(text)
      await follow(page, () => page.getByRole('button', { name: 'Say it' }).click())
    }
    const asked = await askedFact(page)
    await say('why?')
    expect(await section(page, 'heard').textContent()).toContain('The guide’s answer')
    expect(await askedFact(page)).toBe(asked)
    await say('what is a register?')
    expect(await section(page, 'heard').textContent()).toMatch(/register/i)
    await say('what if it makes 15 psi with a turbo?')
    const beside = section(page, 'what-if')
    expect(await beside.textContent()).toMatch(/Keep the caps[\s\S]*Fit steel/)
    expect(new URL(page.url()).searchParams.get('boost')).toBeNull()
    await follow(page, () => page.getByRole('link', { name: 'Keep the change' }).click())
    expect(new URL(page.url()).searchParams.get('boost')).toBe('15psi')
    await follow(page, () => page.getByRole('button', { name: 'Take back' }).click())
    expect(new URL(page.url()).searchParams.get('boost')).toBeNull()
    expect(faults).toEqual([])
    await close()
  })

  it('refuses what cannot be and keeps what was typed', async () => {
    const { page, close } = await app.open('/?ask=bore&induction=turbocharged', {
      javaScriptEnabled,
    })
    await page.locator('#answer').fill('-4')
    await page.getByRole('button', { name: 'Answer', exact: true }).click()
    await page.locator('#error-summary').waitFor()
    expect(await page.locator('#answer').inputValue()).toBe('-4')
    expect(await page.locator('#answer').getAttribute('aria-invalid')).toBe('true')
    await page.locator('#answer').fill('4')
    await follow(page, () => page.getByRole('button', { name: 'Answer', exact: true }).click())
    expect(new URL(page.url()).searchParams.get('bore')).toBe('4in')
    expect(new URL(page.url()).searchParams.get('induction')).toBe('turbocharged')
    await close()
  })
})
