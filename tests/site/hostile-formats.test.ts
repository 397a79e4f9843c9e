import { Marked, type Token } from 'marked'
import { describe, expect, it } from 'vitest'
import { csvText } from '../../src/check-in/csv.ts'
import { postTexts } from '../../src/forum/call-post.ts'
import { helperPost } from '../../src/forum/helper-post.ts'
import { mailtoHref } from '../../src/forum/mail.ts'
import { app } from '../support/app.ts'
import { HOSTILE, wellFormed } from '../support/hostile-strings.ts'

const HREF = 'https://guide.example/call?v=1.0.0&bore=4.03in'
const texts = (note: string) =>
  postTexts(helperPost({ set: [`bore ${note}`], open: [note], note, href: HREF }))

/** What kinds of Markdown a text is made of, plain words left out. */
function kinds(markdown: string): string[] {
  const found: string[] = []
  const walk = (tokens: readonly Token[]): void => {
    for (const token of tokens) {
      // A web address in the open may be clicked where a forum makes a link of it; it names itself.
      const isOpen = token.type === 'link' && /^(https?:\/\/|www\.|[\w.+-]+@)/i.test(token.raw)
      if (!['text', 'escape', 'space'].includes(token.type) && !isOpen) found.push(token.type)
      if ('tokens' in token && token.tokens) walk(token.tokens)
    }
  }
  walk(new Marked().lexer(markdown))
  return found
}

const tags = (bbcode: string) => [...bbcode.matchAll(/\[[^\]]*\]/g)].map(([tag]) => tag)

/** Cells of comma-separated text. @see RFC 4180, section 2 */
function cells(text: string): string[][] {
  const rows: string[][] = [[]]
  for (const [, quoted, plain, end] of text.matchAll(
    /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g,
  )) {
    rows.at(-1)?.push(quoted === undefined ? (plain as string) : quoted.replaceAll('""', '"'))
    if (end === '\r\n') rows.push([])
    if (end === '') break
  }
  return rows
}

describe('hostile strings in what is copied, mailed and saved', () => {
  it('are many', () => expect(HOSTILE.length).toBeGreaterThan(450))

  it('stay words in Markdown', () => {
    const harmless = kinds(texts('words').markdown)
    for (const text of HOSTILE) {
      const found = kinds(texts(text).markdown)
      // A note of nothing but signs that cannot be seen is no quote.
      expect(harmless, text).toEqual(expect.arrayContaining(found))
      for (const kind of ['link', 'html', 'image', 'codespan', 'code', 'heading']) {
        const count = (list: string[]) => list.filter((one) => one === kind).length
        expect(count(found), text).toBe(count(harmless))
      }
    }
  })

  it('add no tag to BBCode', () => {
    const harmless = tags(texts('words').bbcode)
    for (const text of HOSTILE) expect(tags(texts(text).bbcode), text).toEqual(harmless)
  })

  it('are no formula in a spreadsheet, and come back as they were', () => {
    for (const text of HOSTILE) {
      const [[first, second] = [], ...more] = cells(csvText([[text, 'end']]).slice(1))
      expect(first, text).toMatch(/^(?![\s]*[=+\-−@|%])|^[-−+]?\d+(\.\d+)?$/)
      expect(first?.replace(/^'/, ''), text).toBe(text.replaceAll('\u00a0', ' ').replace(/^'/, ''))
      expect(second).toBe('end')
      expect(more.flat().join('')).toBe('')
    }
  })

  it('are no formula in the check-in’s own file', async () => {
    for (const text of HOSTILE.filter((one) => /^\s*[=+\-@|%]/.test(one))) {
      const sent = await app.request('/check-in', {
        method: 'POST',
        headers: { 'content-type': 'application/x-www-form-urlencoded' },
        body: new URLSearchParams({ state: 'bore=4.03in', blockMark: text, supplierTorque: text }),
      })
      const place = sent.headers.get('location') as string
      const file = await (await app.request(place.replace('/check-in', '/check-in.csv'))).text()
      expect(file).toContain('Casting number')
      for (const cell of cells(file.slice(1)).flat()) {
        expect(cell).toMatch(/^(?![\s]*[=+\-−@|%])|^[-−+]?\d+(\.\d+)?$/)
      }
    }
  })

  it('add no address or header to a mail', () => {
    for (const text of HOSTILE) {
      const words = wellFormed(text)
      const mail = new URL(mailtoHref('works@millpond.example', words, `${words}\nend`))
      expect(mail.pathname, text).toBe('works@millpond.example')
      expect([...mail.searchParams.keys()], text).toEqual(['subject', 'body'])
      expect(mail.href, text).not.toMatch(/[\r\n<>"\s]/)
    }
  })
})
