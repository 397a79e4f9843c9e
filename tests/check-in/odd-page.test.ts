import { describe, expect, it } from 'vitest'
import { app } from '../support/app.ts'

const JOURNALS = 'm.unit=mm&m.journal=62.19~62.19~62.14~62.19~62.19'
const page = async (more = '') => (await app.request(`/check-in?${JOURNALS}${more}`)).text()

/** Where a link with these words leads. */
function linkNamed(text: string, words: string): string {
  const href = new RegExp(`href="([^"]*)"[^>]*>${words}`).exec(text)?.[1]
  if (!href) throw new Error(`there is no link “${words}”`)
  return href.replaceAll('&amp;', '&')
}

describe('the check-in page of a main that stands apart', () => {
  it('asks for it in the verdict, the table and at its cells, and is no pass', async () => {
    const text = await page('&units=metric')
    expect(text).toContain('Look again: main 3')
    expect(text).toContain('Measure again first')
    expect(text).toMatch(/Journal beside the other mains<\/th>.*?Look again/s)
    expect(text).toMatch(/name="journal\.3\.fv"[^>]*class="in-question"/)
    expect(text).not.toMatch(/name="journal\.2\.fv"[^>]*class="in-question"/)
    expect(text).not.toContain('Pass:')
  })

  it('keeps what was measured again, says so, and can ask again', async () => {
    const asked = await page()
    const kept = await (
      await app.request(linkNamed(asked, 'It was measured again, or is made so'))
    ).text()
    expect(kept).toContain('but main 3 stands apart from the others')
    expect(kept).toContain('Measured again and kept: main 3, journal.')
    expect(kept).not.toContain('Measure again first')
    const again = await (await app.request(linkNamed(kept, 'Ask again'))).text()
    expect(again).toContain('Measure again first')
  })

  it('keeps the answer when another reading is typed', async () => {
    const asked = await page()
    const link = linkNamed(asked, 'It was measured again, or is made so')
    const state = new URL(link, 'http://localhost').search.slice(1)
    const sent = await app.request('/check-in', {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams({ state, endFloat: '0.15', 'm-unit': 'mm' }).toString(),
    })
    const then = await (await app.request(sent.headers.get('location') ?? '')).text()
    expect(then).toContain('Measured again and kept: main 3, journal.')
  })
})

describe('the check-in page of a reading that no slip explains', () => {
  it('leaves it out, and keeps it once it was measured again', async () => {
    const one = 'm.unit=in&m.journal=2.7_2.4488_2.4488_2.4488~2.4488_2.4488_2.4488_2.4488'
    const asked = await (await app.request(`/check-in?${one}`)).text()
    expect(asked).toContain('no common slip explains it. Measure it again. It is left out until')
    const sentBack = /Journal out of round<\/th><td[^>]*><span class="badge danger">Send back/
    expect(asked).not.toMatch(sentBack)
    const kept = await (await app.request(linkNamed(asked, 'It was measured again: it'))).text()
    expect(kept).toContain('Measured again and kept: main 1, front, one way, 2.7.')
    expect(kept).toMatch(sentBack)
  })

  it('writes the units out', async () => {
    const one = 'mainJournalDiameter=2.45in&m.unit=mm&m.journal=2.4488~2.4488~2.4488'
    const text = await (await app.request(`/check-in?${one}`)).text()
    expect(text).toContain('if they were in inches, not in millimetres')
    expect(text).toContain('Yes, all figures are in inches')
  })
})
