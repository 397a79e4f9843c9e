import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { realApp } from './real-app.ts'

const app = realApp()
const CASE =
  'boost=18psi&bore=4.03in&capFastening=two-bolt&compressionRatio=9.2&fuel=e85&induction=turbocharged&layout=v8-cross-plane&peakRpm=6600rpm&use=street-strip'

/** Points of ISO 216 A4 (210 mm × 297 mm) and ANSI letter (8.5 in × 11 in), 72 to the inch. */
const PAPERS = [
  ['A4', 595.3, 841.9],
  ['Letter', 612, 792],
] as const

async function pagesOf(bytes: Uint8Array) {
  const file = await getDocument({ data: bytes, verbosity: 0 }).promise
  const pages: { width: number; height: number; text: string; right: number }[] = []
  for (let number = 1; number <= file.numPages; number++) {
    const sheet = await file.getPage(number)
    const { width, height } = sheet.getViewport({ scale: 1 })
    const { items } = await sheet.getTextContent()
    const texts = items.filter((item) => 'str' in item)
    pages.push({
      width,
      height,
      text: texts.map(({ str }) => str).join(' '),
      // A space between two texts has the width of the gap, and no ink.
      right: Math.max(
        0,
        ...texts
          .filter(({ str }) => str.trim() !== '')
          .map(({ transform, width: w }) => transform[4] + w),
      ),
    })
  }
  return pages
}

async function printed(page: Page, format: string): Promise<Uint8Array> {
  return new Uint8Array(await page.pdf({ format, printBackground: false }))
}

describe.each(PAPERS)('the call on %s', (format, width, height) => {
  it('prints whole: the call, its pictures’ words, reasons, routes, cost and what was assumed', async () => {
    const { page, close } = await app.open(`/call?${CASE}`, { colorScheme: 'dark' })
    const pages = await pagesOf(await printed(page, format))
    for (const sheet of pages) {
      // Browsers round a sheet to whole pixels of 1/96 inch.
      expect(Math.abs(sheet.width - width)).toBeLessThan(1)
      expect(Math.abs(sheet.height - height)).toBeLessThan(1)
      expect(sheet.right).toBeLessThan(width)
      expect(sheet.text.trim().length).toBeGreaterThan(100)
    }
    const text = pages
      .map((sheet) => sheet.text)
      .join(' ')
      .replace(/\s+/g, ' ')
    for (const words of [
      'Fit steel main caps with studs',
      'Every route side by side',
      'What it costs',
      'Main bearing width',
      'Before the guide come',
    ]) {
      expect(text).toContain(words)
    }
    // Nothing that only a screen can use.
    for (const words of ['Change the answers', 'Copy the link', 'Skip to the content']) {
      expect(text).not.toContain(words)
    }
    await close()
  })
})

it('prints in ink on white, however dark the screen', async () => {
  const { page, close } = await app.open(`/call?${CASE}`, { colorScheme: 'dark' })
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
  const colours = await page.evaluate(() => {
    const { color, backgroundColor } = getComputedStyle(document.body)
    return { color, backgroundColor }
  })
  expect(colours.color).toBe('rgb(0, 0, 0)')
  expect(['rgb(255, 255, 255)', 'rgba(0, 0, 0, 0)']).toContain(colours.backgroundColor)
  await close()
})
