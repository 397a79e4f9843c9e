import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import type { Shop } from '../../src/shops/schema.ts'
import { realDeps } from '../support/app.ts'
import { HOSTILE, MARKUP, wellFormed } from '../support/hostile-strings.ts'
import { launchBrowser } from './support.ts'

const deps = realDeps()
const [model] = deps.shops as [Shop]
/** A shop for each string, called so. */
const shops = HOSTILE.map((name, n): Shop => {
  const contact = { ...model.contact, place: name, phone: name }
  return { ...model, id: `shop-${n}`, name, contact, demo: false }
})
const app = createApp({ ...deps, shops })
const STATE = 'layout=v8-cross-plane&bore=4.03in&stroke=3.48in'

let browser: Browser
let page: Page
beforeAll(async () => {
  browser = await launchBrowser()
  page = await browser.newPage()
})
afterAll(() => browser.close())

async function posted(path: string, fields: Readonly<Record<string, string>>): Promise<string> {
  const answer = await app.request(path, {
    method: 'POST',
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({ state: STATE, ...fields }).toString(),
  })
  const next = answer.headers.get('location')
  return next === null ? answer.text() : (await app.request(next)).text()
}

const got = async (path: string) => (await app.request(path)).text()
const asked = (path: string, more: Readonly<Record<string, string>>) =>
  got(`${path}?${STATE}&${new URLSearchParams(more)}`)

/** Each place that a text of somebody's reaches a page through. */
const PLACES: Readonly<Record<string, (text: string) => Promise<string>>> = {
  'a message': (text) => posted('/', { text }),
  'the answer to a question': (text) => posted('/', { fact: 'boost', value: text, unit: text }),
  'a note and a value in a link': (text) => asked('/call', { note: text, by: text, boost: text }),
  'names in a link': (text) => got(`/?${STATE}&${new URLSearchParams([[text, text]])}`),
  'a note for a forum': (text) => asked('/forum', { note: text, hand: 'on', set: text }),
  'marks on the sheet': (text) =>
    posted('/sheet', { blockMark: text, supplierTorque: text, fastenerSize: text }),
  'readings of the check-in': (text) =>
    posted('/check-in', {
      capMark: text,
      supplierSequence: text,
      paste: text,
      'paste-into': 'housing',
    }),
  'a figure in a worksheet': (text) => asked('/worksheets/preload', { 'in.torque': text }),
  'a page’s name': (text) => got(`/learn/${encodeURIComponent(wellFormed(text))}`),
  'a shop’s name': (text) => {
    const id = `shop-${HOSTILE.indexOf(text)}`
    return asked('/ask-shop', { shop: id })
  },
  'a reply of the API': async (text) => {
    const response = await app.request('/api/turn', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ answers: {}, text }),
    })
    const { says } = (await response.json()) as { says?: { html: string }[] | { html: string } }
    return [says ?? []]
      .flat()
      .map(({ html }) => html)
      .join('')
  },
}

/** Whatever in these pages is no piece of ours: read by the browser's own parser, nothing run. */
function foreignParts(pages: readonly string[]): Promise<string[]> {
  return page.evaluate((texts) => {
    const found: string[] = []
    const never =
      'iframe, frame, object, embed, base, style, img, audio, video, math, meta[http-equiv]'
    for (const text of texts) {
      const parsed = new DOMParser().parseFromString(text, 'text/html')
      for (const one of parsed.querySelectorAll(never)) found.push(one.outerHTML)
      for (const one of parsed.querySelectorAll('*')) {
        const isOurs =
          one.tagName !== 'SCRIPT' || /^\/assets\/[\w.-]+$/.test(one.getAttribute('src') ?? '')
        if (!isOurs || (one.tagName === 'SCRIPT' && one.textContent)) found.push(one.outerHTML)
        for (const { name, value } of one.attributes) {
          // biome-ignore lint/suspicious/noControlCharactersInRegex: a browser leaves them out of a scheme
          const plain = value.replace(/[\u0000-\u0020]/g, '')
          const runs =
            /^(href|src|action|formaction|xlink:href)$/.test(name) &&
            /^(javascript|data|vbscript):/i.test(plain)
          if (/^on/i.test(name) || runs || name === 'style') found.push(`${name}=${value}`)
        }
      }
    }
    return found
  }, pages)
}

describe.each(Object.entries(PLACES))('hostile strings in %s', (place, pageWith) => {
  it('are words on the page, every one', async () => {
    const pages: string[] = []
    // Each shop is a whole site of its own to make, so a part of them must do.
    const some = place === 'a shop’s name' ? MARKUP.filter((_, n) => n % 6 === 0) : MARKUP
    for (const text of some) pages.push(await pageWith(text))
    for (let from = 0; from < pages.length; from += 40) {
      expect(await foreignParts(pages.slice(from, from + 40))).toEqual([])
    }
  })
})

describe('hostile strings that are shown', () => {
  it('come back whole and as text', async () => {
    for (const text of MARKUP) {
      const shown = await page.evaluate(
        (source) => {
          const parsed = new DOMParser().parseFromString(source, 'text/html')
          return parsed.body.textContent ?? ''
        },
        await asked('/', { note: text, by: 'bore' }),
      )
      const words = wellFormed(text.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim())
      expect(shown).toContain(words)
    }
  })

  it('run nothing where no content policy would stop them', async () => {
    const bare = await browser.newPage()
    const ran: string[] = []
    bare.on('dialog', (dialog) => {
      ran.push(dialog.message())
      void dialog.dismiss()
    })
    await bare.exposeFunction('hostile', () => ran.push('hostile'))
    const shown = ['a note and a value in a link', 'marks on the sheet', 'a message']
    for (const text of MARKUP) {
      for (const place of shown) await bare.setContent(await PLACES[place]!(text))
    }
    // The trap itself works.
    await bare.setContent('<svg onload="hostile()"></svg>')
    await expect.poll(() => ran).toEqual(['hostile'])
    await bare.close()
  })
})
