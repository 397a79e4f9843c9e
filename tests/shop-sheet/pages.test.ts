import { describe, expect, it } from 'vitest'
import { qrCells, qrDrawing } from '../../src/pages/sheet-qr.ts'
import { app } from '../support/app.ts'

const CASE = 'layout=v8-cross-plane&capHistory=walked&use=street'

async function get(path: string): Promise<{ status: number; text: string }> {
  const response = await app.request(path)
  return { status: response.status, text: await response.text() }
}

async function post(path: string, fields: Readonly<Record<string, string>>): Promise<Response> {
  return app.request(path, {
    method: 'POST',
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams(fields).toString(),
  })
}

describe('the sheet’s page', () => {
  it('wants a case, and says so', async () => {
    for (const path of ['/sheet', '/sheet.pdf']) {
      const { status, text } = await get(path)
      expect(status).toBe(422)
      expect(text).toContain('There is no sheet yet')
    }
  })

  it('gives no sheet while the call is withheld', async () => {
    const twice = 'layout=inline-4&bore=4in&stroke=3.5in&displacement=350cuin'
    const { status, text } = await get(`/sheet?${twice}`)
    expect(status).toBe(422)
    expect(text).toContain('cannot both be true')
  })

  it('shows nobody’s words as markup', async () => {
    const words = encodeURIComponent('<img src=x onerror=alert(1)>"\'&')
    for (const path of ['/sheet', '/check-in']) {
      const { text } = await get(`${path}?${CASE}&m.blockMark=${words}&m.capMark=${words}`)
      expect(text).not.toContain('<img src=x')
      expect(text).toContain('&lt;img src=x')
    }
  })

  it('puts a form into the link and comes back to it', async () => {
    const response = await post('/sheet', {
      state: CASE,
      units: 'metric',
      'm-unit': 'mm',
      housingLow: ' 67.071 ',
      nonsense: '5',
    })
    expect(response.status).toBe(303)
    const to = new URL(response.headers.get('location') ?? '', 'http://here')
    expect(to.pathname).toBe('/sheet')
    expect(to.searchParams.get('m.housingLow')).toBe('67.071')
    expect(to.searchParams.get('m.unit')).toBe('mm')
    expect(to.searchParams.get('units')).toBe('metric')
    expect(to.searchParams.get('capHistory')).toBe('walked')
    expect([...to.searchParams.keys()].some((name) => name.includes('nonsense'))).toBe(false)
  })

  it('keeps service data when the check-in sends readings, and the other way', async () => {
    const state = `${CASE}&m.unit=in&m.housing=2.6412&m.housingLow=2.6406`
    const response = await post('/check-in', { state, units: 'us', 'housing.2.fv': '2.6413' })
    const to = new URL(response.headers.get('location') ?? '', 'http://here')
    expect(to.searchParams.get('m.housing')).toBe('2.6412~2.6413')
    expect(to.searchParams.get('m.housingLow')).toBe('2.6406')
    const sheet = await get(`/sheet${to.search}`)
    expect(sheet.text).toContain('2.6406')
    expect(sheet.text).not.toContain('2.6413')
  })

  it('serves a PDF on either paper', async () => {
    for (const paper of ['a4', 'letter']) {
      const response = await app.request(`/sheet.pdf?${CASE}&paper=${paper}`)
      expect(response.headers.get('content-type')).toBe('application/pdf')
      const bytes = new Uint8Array(await response.arrayBuffer())
      expect(new TextDecoder('latin1').decode(bytes.slice(0, 8))).toBe('%PDF-1.7')
    }
  })
})

describe('the check-in’s page', () => {
  it('opens without a case, and says what it takes', async () => {
    const { status, text } = await get('/check-in')
    expect(status).toBe(200)
    expect(text).toContain('because the layout was not said')
  })

  it('has as many rows as the engine has mains, and notes for its route', async () => {
    const { text } = await get('/check-in?layout=inline-6&use=street')
    expect(text.match(/name="housing\.\d\.fv"/g)).toHaveLength(7)
    expect(text).toContain('class="prose assembly"')
  })

  it('survives every text in every field', async () => {
    for (const typed of ['0', '-1', '999999', 'NaN', 'Infinity', '1e9', '%00', '=1+1', '٣']) {
      const row = Array(6).fill(encodeURIComponent(typed)).join('_')
      const tables = ['housing', 'journal', 'shell', 'line', 'axis']
        .map((table) => `m.${table}=${Array(5).fill(row).join('~')}`)
        .join('&')
      const singles = [
        'endFloat',
        'driveCentres',
        'chainPitch',
        'crankTeeth',
        'camTeeth',
        'boxTop',
        'gauge-bore',
      ]
        .map((name) => `m.${name}=${encodeURIComponent(typed)}`)
        .join('&')
      const { status } = await get(`/check-in?${CASE}&m.drive=chain&${tables}&${singles}`)
      expect(status, typed).toBe(200)
    }
  })

  it('exports a file whose name and kind are plain', async () => {
    const response = await app.request(`/check-in.csv?${CASE}&m.blockMark=%3Dcmd`)
    expect(response.headers.get('content-type')).toBe('text/csv; charset=utf-8')
    expect(await response.text()).toContain("'=cmd")
  })
})

describe('the code that leads back', () => {
  const address = `http://127.0.0.1:3000/sheet?${CASE}`

  it('draws exactly its dark cells', () => {
    const cells = qrCells(address) ?? []
    const drawn = new Set<string>()
    for (const [, x, y, length] of String(qrDrawing(address)).matchAll(/M(\d+) (\d+)h(\d+)v1/g)) {
      for (let at = 0; at < Number(length); at++) drawn.add(`${Number(x) + at} ${y}`)
    }
    const dark = cells.flatMap((row, y) => row.flatMap((is, x) => (is ? [`${x} ${y}`] : [])))
    expect([...drawn].sort()).toEqual(dark.sort())
  })

  // Source: ISO/IEC 18004: a quiet zone of four cells, and in three corners a finder of 7 × 7.
  it('has its quiet border and its three finders', () => {
    const cells = qrCells(address) ?? []
    const size = cells.length
    expect((size - 8 - 17) % 4).toBe(0)
    expect(cells.slice(0, 4).flat().some(Boolean)).toBe(false)
    const finder = ['1111111', '1000001', '1011101', '1011101', '1011101', '1000001', '1111111']
    for (const [x, y] of [
      [4, 4],
      [size - 11, 4],
      [4, size - 11],
    ] as const) {
      const seen = cells.slice(y, y + 7).map((row) =>
        row
          .slice(x, x + 7)
          .map((is) => (is ? '1' : '0'))
          .join(''),
      )
      expect(seen).toEqual(finder)
    }
  })

  it('is left out where it could not be read', () => {
    expect(qrCells('x'.repeat(3000))).toBeUndefined()
    expect(String(qrDrawing('x'.repeat(3000)))).toBe('')
  })
})
