import { describe, expect, it } from 'vitest'
import { askAnswer } from '../../src/tools/ask-answer.ts'
import { app, postJson, reader, rulebook } from '../support/app.ts'

/** Override of direction (UAX #9, section 2.2), an end of a line, a control of C1. */
const HIDDEN = '\u202e\u2028\u0085'
const SHOWN = '[U+202E][U+2028][U+0085]'
const RAW = /[\u202e\u2028\u0085]/

/** A page's text between tags, the values of fields left aside. */
async function words(path: string, init?: RequestInit): Promise<string> {
  const text = await (await app.request(path, init)).text()
  return text.replace(/<(input|textarea)[\s\S]*?>/g, '').replace(/<[^>]*>/g, '')
}

describe('what a person typed and cannot be used', () => {
  const hidden = encodeURIComponent(HIDDEN)

  it.each([
    ['an answer in a link', `/call?use=street&bore=4${hidden}03in`],
    ['a part that no link has', `/?use=street&odd=4${hidden}`],
    ['a part that no link has, by its name', `/?use=street&odd${hidden}=4`],
    ['a version of the rulebook', `/?use=street&v=0.${hidden}`],
    ['a message', `/?use=street&said=${encodeURIComponent(`tyres ${HIDDEN} 26 inch`)}`],
    ['a search', `/presets?q=zz${hidden}z`],
    ['a pasted link', `/compare?a=zz${hidden}&b=zz`],
    ['a reading', `/check-in?use=street&m.unit=mm&m.journal=62.19~6${hidden}x`],
    ['an input of a worksheet', `/worksheets/preload?in.torque=9${hidden}x`],
  ])('%s is shown with nothing hidden', async (_, path) => {
    const text = await words(path)
    expect(text).toContain('[U+202E]')
    expect(text).not.toMatch(RAW)
  })

  it('is shown so in a form, in the API and in a terminal', async () => {
    const form = new URLSearchParams({ state: 'use=street', fact: 'bore', value: `4${HIDDEN}3` })
    const headers = { 'content-type': 'application/x-www-form-urlencoded' }
    const page = await words('/', { method: 'POST', headers, body: form.toString() })
    expect(page).toContain(`“4${SHOWN}3”`)
    expect(page).not.toMatch(RAW)
    const body = { answers: { [`bo${HIDDEN}re`]: 1 }, before: { [`x${HIDDEN}`]: 1 }, text: 'hi' }
    const { json } = await postJson('/api/turn', body)
    const fields = (json.errors as { field: string }[]).map(({ field }) => field)
    expect(fields).toEqual([`bo${SHOWN}re`, `before.x${SHOWN}`])
    expect(JSON.stringify(json)).not.toMatch(RAW)
    const text = `4 in bore, tyres ${HIDDEN} 26 inch`
    const { notes } = await askAnswer({ rulebook, reader }, { text, json: false, units: 'us' })
    expect(notes.join('\n')).toContain('[U+202E]')
    expect(notes.join('\n')).not.toMatch(RAW)
  })
})
