import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { askedFact, follow } from './first-time-builder.ts'
import { realApp } from './real-app.ts'

const app = realApp()
const SIX =
  'capFastening=two-bolt&compressionRatio=9.5&induction=naturally-aspirated&layout=v8-cross-plane&peakRpm=5800rpm&use=street'

/** More stops than any page of the guide has. */
const MOST_STOPS = 80

/** Press Tab until a control with these words has the focus. */
async function tabTo(page: Page, words: RegExp): Promise<void> {
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    await page.keyboard.press('Tab')
    if (words.test(await focusedWords(page))) return
  }
  throw new Error(`the keyboard never came to ${words}`)
}

function focusedWords(page: Page): Promise<string> {
  return page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null
    return `${at?.id ?? ''} ${at?.value ?? ''} ${at?.textContent ?? ''}`.replace(/\s+/g, ' ')
  })
}

/** Whether what has the focus is on the screen and marked by an outline. */
function focusIsSeen(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const at = document.activeElement
    if (!at || at === document.body) return false
    const shown = at.matches('input[type="radio"]') ? (at.parentElement ?? at) : at
    const { top, bottom, width } = shown.getBoundingClientRect()
    const { outlineStyle, outlineWidth } = getComputedStyle(shown)
    const onScreen = bottom > 0 && top < innerHeight && width > 0
    return onScreen && outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2
  })
}

describe('with the keyboard alone', () => {
  it('goes from the first page to the call', async () => {
    const { page, faults, close } = await app.open('/')
    await page.keyboard.press('Tab')
    expect(await focusedWords(page)).toContain('Skip to the content')
    await page.keyboard.press('Enter')
    await tabTo(page, /Naturally aspirated/)
    await follow(page, () => page.keyboard.press('Enter'))
    // The focus stands on the new question; its controls come next.
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('question')
    const asked = await askedFact(page)
    expect(asked).not.toBe('induction')
    await tabTo(page, /I don’t know/)
    await follow(page, () => page.keyboard.press('Space'))
    expect(await askedFact(page)).not.toBe(asked)
    await page.goto(`${app.origin}/?${SIX}&ask=bore`)
    await tabTo(page, /^answer /)
    await page.keyboard.type('102.4')
    await page.keyboard.press('Tab')
    await page.keyboard.press('ArrowRight')
    await follow(page, () => page.keyboard.press('Enter'))
    expect(new URL(page.url()).searchParams.get('bore')).toBe('102.4mm')
    await tabTo(page, /see the call/i)
    await follow(page, () => page.keyboard.press('Enter'))
    expect(await page.locator('h1').textContent()).toMatch(/sampled cases/)
    expect(faults).toEqual([])
    await close()
  })

  it.each([
    ['the guide', `/?${SIX}`],
    ['the call', `/call?${SIX}`],
  ])('sees every stop of %s, in the order of the page', async (_, path) => {
    const { page, close } = await app.open(path)
    const unseen: string[] = []
    const places: number[] = []
    for (let stop = 0; stop < MOST_STOPS; stop++) {
      await page.keyboard.press('Tab')
      const isOut = await page.evaluate(() => document.activeElement === document.body)
      if (isOut) break
      if (!(await focusIsSeen(page))) unseen.push(await focusedWords(page))
      places.push(
        await page.evaluate(() =>
          [...document.querySelectorAll('*')].indexOf(document.activeElement as Element),
        ),
      )
    }
    expect(unseen).toEqual([])
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(places.length).toBeGreaterThan(10)
    await close()
  })
})
