import { describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { app, postJson, realDeps } from '../support/app.ts'

const CASE = 'bore=4.03in&capFastening=two-bolt&boost=18psi&induction=turbocharged&stroke=3.48in'

async function get(path: string, from = app) {
  const response = await from.request(path)
  return { status: response.status, headers: response.headers, text: await response.text() }
}

function ancestors(headers: Headers): string | undefined {
  return /frame-ancestors ([^;]+)/.exec(headers.get('content-security-policy') ?? '')?.[1]
}

describe('a shop’s frame', () => {
  it('may be shown by that shop’s sites and nobody else, on every page of it', async () => {
    for (const path of ['/embed', '/call', '/learn', '/forum', '/preset/twin-turbo', '/nowhere']) {
      const { headers } = await get(`${path}?shop=harrow-lane&${CASE}`)
      expect(ancestors(headers), path).toBe('http://localhost:* http://127.0.0.1:*')
    }
    for (const path of [
      '/',
      '/call',
      '/shops',
      '/embed?shop=nobody',
      '/?shop=nobody',
      '/?shop=__proto__',
    ]) {
      expect(ancestors((await get(path)).headers), path).toBe("'none'")
    }
  })

  it('says first who runs it, and that routes, reasons and cautions are not the shop’s', async () => {
    for (const path of ['/embed', '/call', '/learn/register']) {
      const { text } = await get(`${path}?shop=harrow-lane&${CASE}`)
      const [before = ''] = text.split('<main')
      expect(before, path).toContain('<strong>Harrow Lane Machine</strong> (an invented shop)')
      expect(before, path).toContain('Routes, reasons and cautions are Mainstay’s')
    }
    expect((await get(`/call?${CASE}`)).text).not.toContain('Harrow Lane')
  })

  it('starts with what the shop knows, in its units, and lets it be changed', async () => {
    const { status, text } = await get('/embed?shop=millpond')
    expect(status).toBe(200)
    expect(text).toContain('Set by Millpond Engine Works')
    expect(text).toMatch(/shop line bores<\/span> <span class="figure-text">No, or only hones/)
    expect(text).toContain('name="units" value="metric"')
    const state = /name="state" value="([^"]*)"/.exec(text)?.[1]?.replaceAll('&amp;', '&') ?? ''
    expect(state).toContain('shop=millpond')
    const changed = await app.request('/embed?shop=millpond', {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams({ state, fact: 'shopLineBores', choice: 'yes' }).toString(),
    })
    expect(changed.status).toBe(303)
    const to = changed.headers.get('location') ?? ''
    expect(to).toMatch(/^\/embed\?.*shopLineBores=yes.*&by=taxRate,use&shop=millpond/)
  })

  it('keeps every link and every form of the guide in the frame', async () => {
    const { text } = await get(`/embed?shop=harrow-lane&${CASE}`)
    const actions = [...text.matchAll(/<form[^>]*action="([^"]*)"/g)].map((match) => match[1])
    expect(actions.length).toBeGreaterThan(0)
    expect(new Set(actions)).toEqual(new Set(['/embed?shop=harrow-lane']))
    const own = [...text.matchAll(/<a [^>]*href="(\/[^"]*)"([^>]*)>/g)].filter(
      ([, , rest]) => !rest?.includes('_blank'),
    )
    const leaving = own.filter(([, href]) => !href?.includes('shop=harrow-lane'))
    expect(leaving.map(([tag]) => tag)).toEqual([])
  })

  it('opens in a window of its own what cannot stand in it', async () => {
    const { text } = await get(`/call?shop=harrow-lane&${CASE}`)
    expect(text).toMatch(/<a [^>]*data-copy-link target="_blank">/)
    const sources = await get('/method?shop=harrow-lane')
    for (const [tag] of sources.text.matchAll(/<a [^>]*href="https?:[^>]*>/g)) {
      expect(tag).toContain('target="_blank"')
    }
    expect((await get(`/call?${CASE}`)).text).not.toContain('target="_blank"')
  })

  it('changes nothing inside a text of the person', async () => {
    const own = 'x+data-copy-link+x'
    const { text } = await get(`/sheet?shop=harrow-lane&${CASE}&m.blockMark=${own}`)
    expect(text).toContain('x data-copy-link x')
    expect(text).not.toContain('x data-copy-link target')
  })

  it('cannot be entered by a link of the guide itself', async () => {
    const { text } = await get(`/?shop=nobody&${CASE}`)
    expect(text).not.toContain('shop=nobody')
  })

  it('prices by the shop, with the very same routes, rules and cautions', async () => {
    const answers = {
      bore: '4.03 in',
      stroke: '3.48 in',
      induction: 'turbocharged',
      boost: '18 psi',
      capFastening: 'two-bolt',
    }
    const plain = await postJson('/api/assess', { answers })
    const priced = await postJson('/api/assess?shop=harrow-lane', { answers })
    const routes = (json: Record<string, unknown>) =>
      json.routes as {
        id: string
        margins: unknown
        cost: { items: { id: string; likely: number }[] }
      }[]
    expect(routes(priced.json).map(({ id, margins }) => ({ id, margins }))).toEqual(
      routes(plain.json).map(({ id, margins }) => ({ id, margins })),
    )
    expect(priced.json.cautions).toEqual(plain.json.cautions)
    const bore = routes(priced.json)
      .find(({ id }) => id === 'steel-caps')
      ?.cost.items.find(({ id }) => id === 'line-bore')
    expect(bore?.likely).toBe(980)
  })

  it('is dyed in the shop’s accent and in nothing else', async () => {
    const { text, headers } = await get('/embed/theme.css?shop=harrow-lane')
    expect(headers.get('content-type')).toMatch(/^text\/css/)
    expect(text.match(/--[a-z-]+: [^;]+/g)).toEqual(['--plate: #274b3b', '--plate-deep: #274b3b'])
    expect((await get('/embed/theme.css')).status).toBe(404)
  })
})

describe('ask this shop', () => {
  it('writes a mail of the person’s own and stores nothing', async () => {
    const { text, headers } = await get(`/ask-shop?shop=millpond&${CASE}`)
    const mailto = /href="(mailto:[^"]*)"/.exec(text)?.[1]?.replaceAll('&amp;', '&') ?? ''
    const body = new URL(mailto).searchParams.get('body') ?? ''
    expect(mailto.startsWith('mailto:works@millpond.example?')).toBe(true)
    expect(body).toMatch(/Build: .*bore 4.03 in/)
    expect(body).not.toMatch(/bores or only hones|:\r\n\r\nCut here/)
    expect(text).toContain('bore 4.03 in')
    expect(body).toMatch(
      /The whole sheet for the machine shop: http:\/\/localhost\/sheet\?.*shop=millpond/,
    )
    expect(headers.get('cache-control')).toBe('no-store')
    expect(headers.get('set-cookie')).toBeNull()
  })

  it('has the whole sheet as text to copy, and says how much of it the mail carries', async () => {
    const { text } = await get(`/ask-shop?shop=millpond&${CASE}&m.unit=in&m.housingLow=2.6406`)
    const whole = /<textarea[^>]*>([^<]*)<\/textarea>/.exec(text)?.[1] ?? ''
    expect(whole).toContain('FINISHED BORES AND CLEARANCE')
    expect(whole).toContain('- Finished housing bore, least: 67.071\u00a0mm (Your service data)')
    expect(whole).toContain('- Finished housing bore, most: ______ mm (From the service data)')
    const mailto = /href="(mailto:[^"]*)"/.exec(text)?.[1]?.replaceAll('&amp;', '&') ?? ''
    expect(mailto.length).toBeLessThanOrEqual(1800)
    const [, lines, of] = /has the first (\d+) of (\d+) lines/.exec(text) ?? []
    expect(Number(of)).toBe(whole.split('\n').filter((line) => line !== '').length)
    expect(Number(lines)).toBeGreaterThan(10)
    const body = new URL(mailto).searchParams.get('body') ?? ''
    expect(body).toMatch(/Cut here for the mail\. All of it is on the sheet:\r\n.*\/sheet\?.*$/)
  })

  it('is there only for a shop', async () => {
    expect((await get('/ask-shop')).status).toBe(404)
    expect((await get(`/call?shop=harrow-lane&${CASE}`)).text).toContain('/ask-shop?')
  })
})

describe('/shops', () => {
  it('explains, with two lines to copy and every shop it knows', async () => {
    const { text } = await get('/shops')
    expect(text).toContain('&lt;mainstay-guide shop=&quot;harrow-lane&quot;&gt;')
    expect(text).toContain('What you cannot change')
    expect(text).toContain('id="millpond"')
    for (const { id } of realDeps().rulebook.cost.items)
      expect(text, id).toContain(`<code>${id}</code>`)
  })

  it('shows the invented shop on the machine’s other name', async () => {
    const { text, headers } = await get('http://127.0.0.1:3101/shops')
    expect(text).toContain('src="http://localhost:3101/shops/demo"')
    expect(headers.get('content-security-policy')).toContain('frame-src http://localhost:3101;')
    const demo = await get('http://localhost:3101/shops/demo')
    expect(demo.text).toContain('<script src="http://127.0.0.1:3101/embed.js" async>')
    expect(demo.headers.get('content-security-policy')).toContain("default-src 'none'")
    expect(ancestors(demo.headers)).toBe('http://127.0.0.1:3101')
  })

  it('shows it at the operator’s second address, and says so where there is none', async () => {
    const deps = {
      ...realDeps(),
      origin: 'https://guide.example',
      demoOrigin: 'https://demo.example',
    }
    const own = createApp(deps)
    expect((await get('https://guide.example/shops', own)).text).toContain(
      'src="https://demo.example/shops/demo"',
    )
    const { headers } = await get('https://guide.example/embed?shop=harrow-lane', own)
    expect(ancestors(headers)).toContain('https://demo.example')
    const { text } = await get('https://only.example/shops')
    expect(text).toContain('DEMO_ORIGIN')
    expect((await get('https://only.example/shops/demo')).status).toBe(404)
  })
})
