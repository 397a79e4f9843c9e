import { describe, expect, it } from 'vitest'
import { inputsFromQuery, inputsToQuery } from '../../src/worksheets/form-input.ts'
import { WORKSHEETS, worksheetNamed } from '../../src/worksheets/registry.ts'
import type { Worksheet } from '../../src/worksheets/worksheet.ts'
import { app } from '../support/app.ts'

async function get(path: string): Promise<{ status: number; text: string }> {
  const response = await app.request(path)
  return { status: response.status, text: await response.text() }
}

function named(name: string): Worksheet {
  const found = worksheetNamed(name)
  if (!found) throw new Error(`no worksheet ${name}`)
  return found
}

const CASE =
  'boost=14psi&bore=4.03in&compressionRatio=9.5&fastenerThread=7/16-14&induction=turbocharged&layout=v8-cross-plane&peakRpm=6500rpm&stroke=3.48in'

describe('the index', () => {
  it('leads to every worksheet and keeps the case', async () => {
    const { status, text } = await get(`/worksheets?${CASE}`)
    expect(status).toBe(200)
    for (const { name, title } of WORKSHEETS) {
      expect(text).toContain(`/worksheets/${name}?`)
      expect(text).toContain(title)
    }
    expect(text).toContain('bore=4.03in')
  })
})

describe.each(WORKSHEETS.map(({ name }) => [name]))('the page of %s', (name) => {
  it('shows its example with picture, table, working and words', async () => {
    const { status, text } = await get(`/worksheets/${name}`)
    expect(status).toBe(200)
    expect(text).toContain('invented example')
    expect(text).toMatch(/<svg role="img" aria-labelledby="[^"]+"/)
    expect(text).toContain('The figures as a table')
    expect(text).toContain('<ol class="working">')
    expect(text).toContain('What to read from it')
    expect(text).not.toMatch(/NaN|undefined|\[object/)
    expect(text).not.toMatch(/ style="|<style|<script(?! src)/)
  })

  it('fills itself in from a build', async () => {
    const { status, text } = await get(`/worksheets/${name}?${CASE}`)
    expect(status).toBe(200)
    expect(text).toContain('Filled in from your build')
    expect(text).toContain('<input type="hidden" name="boost" value="14psi">')
  })

  it('labels every control', async () => {
    const { text } = await get(`/worksheets/${name}`)
    const labelled = new Set([...text.matchAll(/<label[^>]* for="([^"]+)"/g)].map((one) => one[1]))
    const controls = [
      ...text.matchAll(/<(?:input|select)(?![^>]*type="hidden")[^>]* id="([^"]+)"/g),
    ]
    expect(controls.length).toBeGreaterThan(4)
    for (const [, id] of controls) expect(labelled.has(id)).toBe(true)
    const ids = [...text.matchAll(/ id="([^"]+)"/g)].map((one) => one[1])
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('gives the same figures again from its own link', async () => {
    const { example, fields } = named(name)
    const query = inputsToQuery(example)
    const back = inputsFromQuery(fields, new URLSearchParams(query))
    expect(inputsToQuery(back)).toBe(query)
    const figures = (text: string) =>
      [...text.matchAll(/class="value">([^<]*)/g)].map((one) => one[1])
    const first = await get(`/worksheets/${name}`)
    const again = await get(`/worksheets/${name}?${query}`)
    expect(figures(again.text)).toEqual(figures(first.text))
    expect(figures(first.text).length).toBeGreaterThan(3)
  })
})

describe('the form', () => {
  it('takes the unit beside a figure, and one typed with it first', async () => {
    const { fields } = named('preload')
    const read = (query: string) => inputsFromQuery(fields, new URLSearchParams(query))
    expect(read('in.torque=85&in.torque.unit=lb+ft')).toEqual({ torque: '85 lb ft' })
    expect(read('in.torque=115+N+m&in.torque.unit=lb+ft')).toEqual({ torque: '115 N m' })
    expect(read('in.torque=&in.torque.unit=lb+ft&in.thread=1/2-13')).toEqual({ thread: '1/2-13' })
    expect(read('bore=4in')).toBeUndefined()
  })

  it('leaves names out that no form has, however deep', () => {
    const query = new URLSearchParams(`in.torque=85+lb+ft&in.${'a.'.repeat(5000)}a=1`)
    expect(inputsFromQuery(named('preload').fields, query)).toEqual({ torque: '85 lb ft' })
  })

  it('leaves blank rows of a list out', () => {
    const query = new URLSearchParams({
      'in.items.0.label': 'Caps',
      'in.items.0.likely': '400',
      'in.items.0.likely.unit': 'USD',
      'in.items.1.label': '',
      'in.items.1.likely': '',
      'in.items.1.likely.unit': 'USD',
    })
    expect(inputsFromQuery(named('job-cost').fields, query)).toEqual({
      items: [{ label: 'Caps', likely: '400 USD' }],
    })
  })

  it('shows metric figures to who reads metric, and keeps inputs when the units change', async () => {
    const query = 'in.thread=1/2-13&in.torque=85&in.torque.unit=lb+ft'
    const { text } = await get(`/worksheets/preload?${query}&units=metric`)
    expect(text).toMatch(/class="value">50\.4\d?\u00a0kN/)
    expect(text).toContain('<option selected>lb ft</option>')
    expect(text).toContain('in.torque=85+lb+ft')
  })

  it('says what is wrong at the field and above, keeps what was typed, and escapes it', async () => {
    const query = 'in.thread=1/2-13&in.torque=%3Cb%3E85&in.torque.unit=psi&in.other=1'
    const { status, text } = await get(`/worksheets/preload?${query}`)
    expect(status).toBe(422)
    expect(text).toContain('<a href="#in-torque">Torque on the wrench</a>')
    expect(text).toContain('id="in-torque-error"')
    expect(text).toContain('aria-describedby="in-torque-error"')
    expect(text).toContain('aria-invalid="true"')
    expect(text).toContain('&lt;b&gt;85')
    expect(text).not.toContain('<b>85')
    expect(text).toContain('value="1/2-13"')
  })

  it('offers the build again when other figures stand in the form', async () => {
    const { text } = await get(`/worksheets/preload?${CASE}&in.thread=1/2-13&in.torque=85+lb+ft`)
    expect(text).toContain('Start from my build')
    expect(
      (await get('/worksheets/preload?in.thread=1/2-13&in.torque=85+lb+ft')).text,
    ).not.toContain('Start from my build')
  })

  it('does not reach into inheritance', async () => {
    const { status, text } = await get('/worksheets/preload?in.__proto__.x=1&in.constructor=2')
    expect(status).toBe(422)
    expect(text).toContain('Some figures cannot be used')
    expect(Object.hasOwn(Object.prototype, 'x')).toBe(false)
  })

  it('knows no other sheet', async () => {
    expect((await get('/worksheets/nothing')).status).toBe(404)
  })
})
