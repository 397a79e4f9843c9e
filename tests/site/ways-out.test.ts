import { describe, expect, it } from 'vitest'
import { app } from '../support/app.ts'

/** Far more nitrous at a low speed than small cylinders can take: no pressure fits it. */
const FINE = 'bore=2in&induction=nitrous&torquePeakRpm=1000rpm&use=track'
const ODD = `${FINE}&nitrousPower=680kW`

interface Page {
  readonly status: number
  readonly main: string
  /** Text of each link to where it leads. */
  readonly ways: ReadonlyMap<string, string>
}

async function page(path: string, init?: RequestInit): Promise<Page> {
  const response = await app.request(path, init)
  const main = /<main[\s\S]*<\/main>/.exec(await response.text())?.[0] ?? ''
  const links = [...main.matchAll(/<a [^>]*href="([^"]*)"[^>]*>([^<]*)<\/a>/g)]
  const ways = links.map(([, href = '', text = '']): [string, string] => [
    text.trim(),
    href.replaceAll('&amp;', '&'),
  ])
  return { status: response.status, main, ways: new Map(ways) }
}

/** The keys that a link holds, its version left aside. */
function keysIn(href: string | undefined): string[] {
  const params = new URLSearchParams(href?.split('?')[1] ?? '')
  return [...params.keys()].filter((key) => key !== 'v').sort()
}

function post(path: string, fields: Record<string, string>): Promise<Page> {
  const headers = { 'content-type': 'application/x-www-form-urlencoded' }
  return page(path, { method: 'POST', headers, body: new URLSearchParams(fields).toString() })
}

describe('a page of answers that make no engine', () => {
  it.each(['/', '/call', '/sheet', '/check-in', '/forum'])(
    '%s leads to where each can be mended, left open, or all begun anew',
    async (path) => {
      const { status, ways } = await page(`${path}?${ODD}&units=metric`)
      expect(status).toBe(422)
      const mend = ways.get('Mend nitrous in the guide')
      expect(mend).toMatch(/^\/\?.*&ask=nitrousPower/)
      expect(keysIn(mend)).toEqual(['ask', ...keysIn(`?${FINE}`), 'units'].sort())
      const open = ways.get('Leave nitrous open')
      expect(open?.split('?')[0]).toBe(path)
      expect(keysIn(open)).toEqual([...keysIn(`?${FINE}`), 'units'].sort())
      expect(keysIn(ways.get('Start anew'))).toEqual(['units'])
      for (const [text, href] of ways) {
        const led = await page(href)
        expect([text, led.status]).toEqual([text, 200])
      }
      expect((await page(mend as string)).main).toContain('name="fact" value="nitrousPower"')
    },
  )

  it('keeps the frame of a shop', async () => {
    const { status, ways } = await page(`/embed?shop=millpond&${ODD}`)
    expect(status).toBe(422)
    expect(ways.size).toBeGreaterThan(2)
    for (const [text, href] of ways) {
      expect([text, href]).toEqual([text, expect.stringMatching(/^\/embed\?.*shop=millpond/)])
    }
  })

  it('keeps the readings of a check-in', async () => {
    const { ways } = await page(`/check-in?${ODD}&m.unit=mm&m.journal=62.19~62.2`)
    expect(ways.get('Leave nitrous open')).toContain('m.journal=62.19%7E62.2')
  })

  it('names the answer that the last turn changed, and goes back to what it was', async () => {
    const { ways } = await page(`/?${ODD}&was.nitrousPower=90kW`)
    const mends = [...ways.keys()].filter((text) => text.startsWith('Mend'))
    expect(mends).toEqual(['Mend nitrous in the guide'])
    expect(ways.get('Mend nitrous in the guide')).toContain('nitrousPower=90kW')
    expect(keysIn(ways.get('Leave nitrous open'))).not.toContain('nitrousPower')
  })

  it('holds the case that a form sent', async () => {
    const { status, ways } = await post('/', { state: ODD, text: 'hm', units: 'us' })
    expect(status).toBe(422)
    expect(keysIn(ways.get('Leave nitrous open'))).toEqual(keysIn(`?${FINE}`))
  })

  it('of a comparison says which case, and changes that one alone', async () => {
    const preset = '/preset/twin-turbo'
    for (const [a, b, side] of [
      [preset, ODD, 'B'],
      [ODD, preset, 'A'],
    ] as const) {
      const asked = new URLSearchParams({ a, b }).toString()
      const { status, main, ways } = await page(`/compare?${asked}&boost=9psi`)
      expect(status).toBe(422)
      expect(main).toContain(`<h1>Case ${side} makes no engine`)
      expect(main).toMatch(new RegExp(`Case ${side}, Nitrous system[^<]*680\u00a0kW`))
      expect(main).not.toContain('Boost')
      expect(keysIn(ways.get('Mend nitrous in the guide'))).toEqual(
        ['ask', ...keysIn(`?${FINE}`)].sort(),
      )
      const open = new URLSearchParams(ways.get('Leave nitrous open')?.split('?')[1])
      expect(open.get(side === 'B' ? 'a' : 'b')).toBe(preset)
      for (const [text, href] of ways)
        expect([text, (await page(href)).status]).toEqual([text, 200])
    }
  })

  it('of a what-if says that it was supposed, and took nothing', async () => {
    const said = encodeURIComponent('what if I ran a 910 hp shot?')
    const { status, main, ways } = await page(`/?${FINE}&said=${said}`)
    expect(status).toBe(422)
    expect(main).toContain('<h1>What you supposed makes no engine')
    expect(main).toMatch(/What you supposed, Nitrous system[^<]*910\u00a0hp/)
    expect(main.match(/does not fit/g)).toHaveLength(1)
    expect(keysIn(ways.get('Back to the guide, as it stands'))).toEqual(keysIn(`?${FINE}`))
    for (const [text, href] of ways) expect([text, (await page(href)).status]).toEqual([text, 200])
  })
})

describe('a link whose answers cannot be read', () => {
  it.each(['/call', '/sheet', '/forum'])('%s leads to the question of each', async (path) => {
    const { status, ways } = await page(`${path}?bore=900in&nonsense=1`)
    expect(status).toBe(422)
    expect(ways.get('Answer bore again')).toBe('/?ask=bore')
  })

  it('keeps the others, on a page that is made all the same', async () => {
    for (const path of ['/', '/call']) {
      const { status, ways } = await page(`${path}?bore=900in&use=street`)
      expect(status).toBe(200)
      expect(keysIn(ways.get('Answer bore again'))).toEqual(['ask', 'use'])
    }
  })
})
