import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readPdf } from '../support/read-pdf.ts'
import { realApp } from './real-app.ts'
import { axeViolations, sidewaysScroll } from './support.ts'

const app = realApp()

/** High compression on cast caps: steel caps are called. Every figure that the sheet prints is said. */
const RACE =
  'layout=v8-cross-plane&bore=4.06in&stroke=3.48in&compressionRatio=13.4&fuel=race-gasoline&peakRpm=7600rpm&use=drag&capFastening=two-bolt&capMaterial=gray-iron&capHistory=matched&blockMaterial=gray-iron&mainJournalDiameter=2.44845in'

/** Housings of five mains as a spreadsheet holds them; the third is oval by more than its limit. */
const BLOCK = [1, 2, 3, 4, 5]
  .map((main) => (main === 3 ? ['2.6424', '2.6412', '2.6412'] : ['2.6412', '2.6412', '2.6412']))
  .map((three) => [...three, ...three].join('\t'))
  .join('\n')

async function paste(page: Page, selector: string, text: string): Promise<void> {
  await page.locator(selector).evaluate((cell, pasted) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', pasted)
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true })
    cell.dispatchEvent(event)
  }, text)
}

function cell(page: Page, name: string) {
  return page.locator(`input[name="${name}"]`)
}

describe('the sheet on paper', () => {
  it('is a PDF that reads back: order, blanks, limits, cautions, the link to this very case', async () => {
    const { page, close } = await app.open(`/sheet?${RACE}`)
    const href = await page.getByRole('link', { name: 'Sheet as PDF' }).getAttribute('href')
    const response = await page.request.get(`${app.origin}${href}`)
    expect(response.headers()['content-type']).toBe('application/pdf')
    const { pages, title, language, links, roles } = await readPdf(await response.body())
    const text = pages.map((one) => one.text).join(' ')
    expect(title).toContain('Shop sheet: Fit steel caps with studs')
    expect(language).toBe('en')
    expect(roles).toEqual(expect.arrayContaining(['H1', 'H2', 'P', 'LI', 'TH', 'TD']))
    for (const words of [
      'Send the block that stays with its final fasteners',
      'Line bore the mains (at the shop)',
      'Line hone the mains to size (at the shop)',
      'Finished housing bore, least',
      'at most 0.0005 in',
      'FRONT',
      'Often forgotten',
      'Can you line bore, or only line hone?',
      'come before this sheet',
      'Handed over: block, caps in order',
    ]) {
      expect(text).toContain(words)
    }
    expect(pages.every((one, at) => one.text.includes(`page ${at + 1} of ${pages.length}`))).toBe(
      true,
    )
    // Letter, 8.5 × 11 in, for who counts in inches.
    expect([pages[0]?.width, pages[0]?.height]).toEqual([612, 792])
    expect(links).toHaveLength(1)
    const back = await page.goto(links[0] ?? '')
    expect(back?.status()).toBe(200)
    expect(await page.locator('h1').textContent()).toContain('Fit steel caps')
    await close()
  })

  it('is A4 and in millimetres for who counts in them, and the same bytes for the same case', async () => {
    const { page, close } = await app.open(`/sheet?${RACE}&units=metric`)
    const href = await page.getByRole('link', { name: 'Sheet as PDF' }).getAttribute('href')
    const [one, other] = await Promise.all([
      page.request.get(`${app.origin}${href}`),
      page.request.get(`${app.origin}${href}`),
    ])
    const bytes = await one.body()
    expect(bytes.equals(await other.body())).toBe(true)
    const { pages } = await readPdf(bytes)
    // ISO 216: A4 is 210 × 297 mm, 595.28 × 841.89 points.
    expect(Math.abs((pages[0]?.width ?? 0) - 595.28)).toBeLessThan(0.1)
    expect(pages.map(({ text }) => text).join(' ')).toContain('at most 0.013 mm')
    await close()
  })

  it('prints from the browser as well, without what is only for the screen', async () => {
    const { page, close } = await app.open(`/sheet?${RACE}`)
    const { pages } = await readPdf(await page.pdf({ format: 'Letter' }))
    const text = pages.map((one) => one.text).join(' ')
    expect(text).toContain('Line bore the mains')
    expect(text).toContain(`${app.origin}/sheet?`)
    expect(text).not.toContain('Fill in the blanks you know')
    expect(text).not.toContain('Sheet as PDF')
    await close()
  })

  it('takes service data into its blanks, and keeps them in the link', async () => {
    const { page, faults, close } = await app.open(`/sheet?${RACE}`)
    await page.getByText('Fill in the blanks you know').click()
    await page.getByLabel('Supplier’s torque or angle').fill('70 lb ft + 60°')
    await page.getByLabel('Finished housing bore, least').fill('2.6406')
    await page.getByLabel('Stamps on the caps, front to rear').fill('A B C D E')
    await page.getByRole('button', { name: 'Put them on the sheet' }).click()
    await page.waitForURL(/m\.housingLow=2\.6406/)
    const row = page.locator('.sheet-pairs > div', { hasText: 'Final torque' })
    expect(await row.textContent()).toContain('70 lb ft + 60°')
    expect(await page.locator('#cap-map-text').textContent()).toContain('1: A, 2: B')
    expect(faults).toEqual([])
    await close()
  })
})

describe('to the machine shop and back', () => {
  it('goes from answers to the sheet, and from a measured block with one bad main to its name and why', async () => {
    const { page, faults, close } = await app.open(`/call?${RACE}`)
    await page.getByRole('link', { name: 'Sheet for the machine shop' }).click()
    await page.getByRole('link', { name: 'Check in the block when it is back' }).click()
    await page.waitForURL(/\/check-in\?/)
    expect(await page.locator('table[data-grid="housing"] tbody tr').count()).toBe(5)
    await paste(page, 'input[name="housing.1.fv"]', BLOCK)
    await page.waitForURL(/m\.housing=/)
    await page.getByRole('heading', { name: 'Send back: main 3' }).waitFor()
    const verdict = await page.locator('.verdict').textContent()
    expect(verdict).toContain('Main 3. Out of round is 0.0012')
    expect(verdict).toContain('the limit is at most 0.0005')
    expect(await page.locator('.main-result[open] .main-name').allTextContents()).toEqual([
      'Main 3',
    ])
    expect(await page.locator('.assembly').textContent()).toContain('Turning torque')
    // Lost on no reload: the link has it all.
    await page.reload()
    await page.getByRole('heading', { name: 'Send back: main 3' }).waitFor()
    expect(await cell(page, 'housing.3.fv').inputValue()).toBe('2.6424')
    const href = await page.getByRole('link', { name: 'Save as CSV' }).getAttribute('href')
    const csv = await page.request.get(`${app.origin}${href}`)
    expect(csv.headers()['content-disposition']).toContain('check-in.csv')
    expect(await csv.text()).toMatch(
      /Main 3,Out of round,0\.0012 in,at most 0\.0005 in,.*,Send back/,
    )
    expect(faults).toEqual([])
    await close()
  })

  it('asks about a dropped digit, and judges when it is mended', async () => {
    const { page, close } = await app.open(`/check-in?${RACE}`)
    await paste(page, 'input[name="housing.1.fv"]', BLOCK.replaceAll('2.6424', '2.6412'))
    await cell(page, 'housing.4.fl').fill('2.412')
    await page.getByRole('heading', { name: 'Is this what the gauge said?' }).waitFor()
    await page.getByRole('link', { name: 'Yes, take 2.6412' }).click()
    await page.getByRole('heading', { name: /^Pass/ }).waitFor()
    expect(await cell(page, 'housing.4.fl').inputValue()).toBe('2.6412')
    await close()
  })

  it('goes from cell to cell by keyboard', async () => {
    const { page, close } = await app.open(`/check-in?${RACE}`)
    await cell(page, 'housing.1.fv').focus()
    await page.keyboard.type('2.6412')
    await page.keyboard.press('Enter')
    await page.keyboard.type('2.6411')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.type('2.6413')
    expect(await cell(page, 'housing.1.fl').inputValue()).toBe('2.6411')
    expect(await cell(page, 'housing.2.fl').inputValue()).toBe('2.6413')
    await page.keyboard.press('ArrowUp')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe(
      'housing.1.fl',
    )
    await page.keyboard.press('Control+Enter')
    await page.waitForURL(/m\.housing=2\.6412_2\.6411/)
    expect(await cell(page, 'housing.2.fl').inputValue()).toBe('2.6413')
    await close()
  })

  it('brings readings back from the browser when the link has none, and forgets them when told', async () => {
    const { page, close } = await app.open(`/check-in?${RACE}`)
    await cell(page, 'housing.1.fv').fill('2.6412')
    await page.waitForURL(/m\.housing=2\.6412/)
    await page.goto(`${app.origin}/check-in?${RACE}`)
    await page.getByText('Your readings are back').waitFor()
    expect(await cell(page, 'housing.1.fv').inputValue()).toBe('2.6412')
    page.once('dialog', (dialog) => dialog.accept())
    await page.getByRole('button', { name: 'Clear all readings' }).click()
    await page.waitForURL((url) => !url.search.includes('m.housing'))
    await page.goto(`${app.origin}/check-in?${RACE}`)
    expect(await cell(page, 'housing.1.fv').inputValue()).toBe('')
    await close()
  })

  it('says so when the guide cannot be reached, and keeps the readings', async () => {
    const { page, close } = await app.open(`/check-in?${RACE}`)
    await page.route('**/check-in', (route) => route.abort())
    await cell(page, 'housing.1.fv').fill('2.6412')
    await page.getByText('cannot be reached').waitFor()
    await page.unroute('**/check-in')
    await page.reload()
    await page.waitForURL(/m\.housing=2\.6412/)
    expect(await cell(page, 'housing.1.fv').inputValue()).toBe('2.6412')
    await close()
  })

  it('works without script', async () => {
    const { page, close } = await app.open(`/check-in?${RACE}`, { javaScriptEnabled: false })
    await page.getByText('Paste a whole table').click()
    await page.locator('#paste').fill(BLOCK)
    await page.getByRole('button', { name: 'Judge the block' }).click()
    await page.getByRole('heading', { name: 'Send back: main 3' }).waitFor()
    expect(await cell(page, 'housing.3.rv').inputValue()).toBe('2.6424')
    await close()
  })

  it('prints a record with readings and verdicts', async () => {
    const { page, close } = await app.open(`/check-in?${RACE}`)
    await paste(page, 'input[name="housing.1.fv"]', BLOCK)
    await page.getByRole('heading', { name: 'Send back: main 3' }).waitFor()
    const { pages } = await readPdf(await page.pdf({ format: 'A4' }))
    const text = pages.map((one) => one.text).join(' ')
    for (const words of ['Send back: main 3', '2.6424', 'Main 5', 'Measured by']) {
      expect(text).toContain(words)
    }
    expect(text).not.toContain('Judge the block')
    await close()
  })
})

describe('both pages on any screen', () => {
  const measured = 'm.unit=in&m.housing=2.6412_2.412_2.6412_2.6412_2.6412_2.6412&m.endFloat=tight'
  it.each([
    ['sheet', `/sheet?${RACE}`],
    ['check-in', `/check-in?${RACE}&${measured}`],
    ['check-in without a case', '/check-in'],
    ['no sheet', '/sheet'],
  ])('%s: no barrier, nothing to scroll sideways', async (_, path) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const viewport = { width: colorScheme === 'light' ? 320 : 1280, height: 900 }
      const { page, faults, close } = await app.open(path, { colorScheme, viewport })
      expect(await axeViolations(page)).toEqual([])
      expect(await sidewaysScroll(page)).toBe(0)
      expect(faults).toEqual([])
      await close()
    }
  })
})
