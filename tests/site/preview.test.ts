import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { toQuery } from '../../shared/share-link.ts'
import { createApp } from '../../src/app.ts'
import { app, realDeps, rulebook } from '../support/app.ts'

interface Picture {
  readonly width: number
  readonly height: number
  /** Red, green and blue of a pixel. */
  at(x: number, y: number): readonly [number, number, number]
}

/**
 * The pixels of a PNG with 8 bits for each of red, green, blue and alpha.
 *
 * @see W3C, Portable Network Graphics, third edition, sections 5 (chunks) and 9 (filters)
 */
function decode(png: Uint8Array): Picture {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength)
  const [width, height] = [view.getUint32(16), view.getUint32(20)]
  expect([png[24], png[25], png[28]]).toEqual([8, 6, 0])
  const parts: Uint8Array[] = []
  for (let at = 8; at < png.length; ) {
    const length = view.getUint32(at)
    const name = String.fromCharCode(...png.subarray(at + 4, at + 8))
    if (name === 'IDAT') parts.push(png.subarray(at + 8, at + 8 + length))
    at += 12 + length
  }
  const rows = unfiltered(inflateSync(Buffer.concat(parts)), width, height)
  return {
    width,
    height,
    at: (x, y) => {
      const place = (y * width + x) * 4
      return [rows[place] ?? 0, rows[place + 1] ?? 0, rows[place + 2] ?? 0]
    },
  }
}

function unfiltered(raw: Uint8Array, width: number, height: number): Uint8Array {
  const line = width * 4
  const out = new Uint8Array(line * height)
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (line + 1)]
    for (let x = 0; x < line; x++) {
      const a = x < 4 ? 0 : (out[y * line + x - 4] ?? 0)
      const b = y === 0 ? 0 : (out[(y - 1) * line + x] ?? 0)
      const c = x < 4 || y === 0 ? 0 : (out[(y - 1) * line + x - 4] ?? 0)
      const guess = [0, a, b, (a + b) >> 1, paeth(a, b, c)][filter ?? 0] ?? 0
      out[y * line + x] = ((raw[y * (line + 1) + 1 + x] ?? 0) + guess) & 255
    }
  }
  return out
}

function paeth(a: number, b: number, c: number): number {
  const p = a + b - c
  const [pa, pb, pc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)]
  return pa <= pb && pa <= pc ? a : pb <= pc ? b : c
}

/** Share of the pixels of a field that are dark: words, lines, the section. */
function ink(
  picture: Picture,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
): number {
  let dark = 0
  for (let y = y0; y < y1; y++) {
    for (let x = x0; x < x1; x++) {
      const [red, green, blue] = picture.at(x, y)
      if (red + green + blue < 330) dark++
    }
  }
  return dark / ((x1 - x0) * (y1 - y0))
}

const preset = (id: string) => {
  const found = rulebook.presets.find((one) => one.id === id)
  return toQuery(readAnswers(found?.answers).answers, rulebook.version)
}

async function card(query: string, from = app): Promise<Picture> {
  const response = await from.request(`/card.png?${query}`)
  expect(response.status).toBe(200)
  expect(response.headers.get('content-type')).toBe('image/png')
  return decode(new Uint8Array(await response.arrayBuffer()))
}

describe('the preview card', () => {
  it('is 1200 by 630, has the call, the figures and the section in ink, and nothing over the edge of its column', async () => {
    const picture = await card(preset('twin-turbo'))
    expect([picture.width, picture.height]).toEqual([1200, 630])
    // Words that draw in no font leave the paper bare: that is what this looks for.
    expect(ink(picture, [64, 150, 700, 400])).toBeGreaterThan(0.03)
    expect(ink(picture, [64, 485, 700, 545])).toBeGreaterThan(0.02)
    expect(ink(picture, [760, 130, 1120, 420])).toBeGreaterThan(0.02)
    expect(ink(picture, [64, 580, 700, 605])).toBeGreaterThan(0.02)
    // Between the words and the frame of the section there is paper and its rules.
    expect(ink(picture, [716, 100, 734, 580])).toBe(0)
  })

  it.each(rulebook.presets.map(({ id }) => id))(
    'keeps every word of %s in its own column',
    async (id) => {
      const picture = await card(preset(id))
      expect(ink(picture, [716, 100, 734, 580])).toBe(0)
      expect(ink(picture, [1148, 100, 1200, 600])).toBe(0)
    },
  )

  it('shows no figure before there is a call', async () => {
    const picture = await card('bore=4.03in')
    expect(ink(picture, [64, 485, 700, 545])).toBe(0)
    expect(ink(picture, [64, 150, 700, 300])).toBeGreaterThan(0.02)
  })

  it('draws the same bytes again', async () => {
    const [one, other] = await Promise.all(
      [createApp(realDeps()), createApp(realDeps())].map(async (own) =>
        Buffer.from(await (await own.request('/card.png?bore=4in')).arrayBuffer()),
      ),
    )
    expect(one?.equals(other ?? Buffer.alloc(0))).toBe(true)
  })

  it('may be kept and shown on any page', async () => {
    const { headers } = await app.request('/card.png')
    expect(headers.get('cache-control')).toBe('public, max-age=86400')
    expect(headers.get('cross-origin-resource-policy')).toBe('cross-origin')
  })
})

describe('how often cards are drawn', () => {
  function counting() {
    let drawn = 0
    let now = 0
    const deps = {
      ...realDeps(),
      clock: () => now,
      drawPng: async () => {
        drawn++
        return new Uint8Array([1, 2, 3])
      },
    }
    const own = createApp(deps)
    const get = (query: string) => own.request(`/card.png?${query}`)
    return {
      get,
      drawn: () => drawn,
      pass: (ms: number) => {
        now += ms
      },
    }
  }

  it('once for each case, however its link is written, and once when asked for twice at once', async () => {
    const { get, drawn } = counting()
    await Promise.all([get('bore=4in&stroke=3in'), get('stroke=3in&bore=4in')])
    await get('v=0.1.0&bore=4in&stroke=3in&note=hello&nonsense=1')
    expect(drawn()).toBe(1)
    await get('bore=4in&stroke=3in&units=metric')
    expect(drawn()).toBe(2)
  })

  it('so many at once and no more, with the time after which to ask again', async () => {
    const { get, drawn, pass } = counting()
    const answers = []
    for (let bore = 0; bore < 24; bore++) answers.push(await get(`bore=${100 + bore}mm`))
    expect(answers.filter(({ status }) => status === 200).length).toBe(20)
    const refused = answers.at(-1)
    expect(refused?.status).toBe(429)
    expect(refused?.headers.get('retry-after')).toBe('1')
    expect((await get('bore=100mm')).status).toBe(200)
    expect(drawn()).toBe(20)
    pass(1000)
    expect((await get('bore=120mm')).status).toBe(200)
  })

  it('none where there is nothing to draw with, and no page promises one', async () => {
    const own = createApp({ ...realDeps(), drawPng: undefined })
    expect((await own.request('/card.png')).status).toBe(404)
    expect(await (await own.request('/')).text()).not.toContain('og:image')
  })

  it('is tried again after a drawing that failed', async () => {
    let broken = true
    const own = createApp({
      ...realDeps(),
      drawPng: async () => {
        if (broken) throw new Error('no ink')
        return new Uint8Array([1])
      },
    })
    expect((await own.request('/card.png')).status).toBe(500)
    broken = false
    expect((await own.request('/card.png')).status).toBe(200)
  })
})
