import { describe, expect, it } from 'vitest'
import { createApp } from '../../src/app.ts'
import { app, postJson, realDeps, rulebook } from '../support/app.ts'

const CASE = 'bore=4.03in&capFastening=two-bolt&induction=turbocharged&stroke=3.48in'

async function page(path: string, from = app): Promise<string> {
  const response = await from.request(path)
  expect(response.status, path).toBe(200)
  return response.text()
}

/** Every `href` of a page, entities read. */
function hrefs(text: string): string[] {
  return [...text.matchAll(/href="([^"]*)"/g)].map((match) =>
    (match[1] as string).replaceAll('&amp;', '&'),
  )
}

function post(path: string, fields: Readonly<Record<string, string>>) {
  return app.request(path, {
    method: 'POST',
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams(fields).toString(),
  })
}

describe('the canonical link', () => {
  it('is the same from the page, a shop’s frame and the API', async () => {
    const { json } = await postJson('/api/assess', {
      answers: {
        stroke: '3.48 in',
        induction: 'turbocharged',
        bore: { value: 4.03, unit: 'in' },
        capFastening: 'two-bolt',
      },
    })
    const link = json.link as string
    expect(link).toBe(`v=${rulebook.version}&${CASE}`)
    const messy =
      'stroke=3.48in&was.boost=10psi&bore=4.03in&note=hi&by=bore&induction=turbocharged&capFastening=two-bolt'
    const share = (text: string) =>
      /href="([^"]+)"[^>]*data-copy-link/.exec(text)?.[1]?.replaceAll('&amp;', '&')
    expect(share(await page(`/call?${messy}`))).toBe(`/call?${link}`)
    const framed = await page(`/embed?shop=harrow-lane&${messy}`)
    expect(framed).toContain(`data-link="${link.replaceAll('&', '&amp;')}"`)
    expect(share(await page(`/call?shop=harrow-lane&${messy}`))).toBe(`/call?${link}`)
  })

  it('names what it cannot read, keeps the rest, and says nothing of an address that it knows', async () => {
    for (const path of ['/', '/call']) {
      const text = await page(`${path}?${CASE}&bohrung=4in&peakRpm=fast`)
      expect(text).toContain('Part of this link could not be read')
      expect(text).toContain('bohrung')
      expect(text).toMatch(/Highest engine speed: “fast” does not fit/)
      const clean = await page(`${path}?${CASE}&units=metric`)
      expect(clean).not.toContain('could not be read')
    }
  })

  it('says that it was made with another rulebook, and what changed since', async () => {
    expect(await page(`/?v=0.9.0&${CASE}`)).toContain('made with rulebook 0.9.0')
    expect(await page(`/call?v=${rulebook.version}&${CASE}`)).not.toContain('made with rulebook')
    const older = {
      ...rulebook,
      version: '1.2.0',
      changes: [
        { version: '1.0.0', date: '2026-01-01', area: 'all', effect: 'First.' },
        { version: '1.1.0', date: '2026-02-01', area: 'caps', effect: 'Caps again.' },
        { version: '1.2.0', date: '2026-03-01', area: 'studs', effect: 'Studs again.' },
      ],
    }
    const text = await page(`/?v=1.0.0&${CASE}`, createApp({ ...realDeps(), rulebook: older }))
    expect(text).toMatch(/1\.2\.0: Studs again\.[\s\S]*1\.1\.0: Caps again\./)
    expect(text).not.toContain('First.')
  })
})

describe('a helper’s link', () => {
  const helped = `/?${CASE}&by=bore,stroke&note=I+measured+both`

  it('shows the asker what was set by whom, and the note as plain words', async () => {
    const text = await page(helped)
    expect(text).toContain('Your helper set 2 answers')
    expect(text).toMatch(/4\.03\u00a0in<\/span> <span class="tag">set by your helper/)
    expect(text.match(/set by your helper/g)?.length).toBe(2)
    expect(text).toContain('<blockquote class="said">I measured both</blockquote>')
  })

  it('sets its answers apart from what the person said, in the list of what is known', async () => {
    const headings = async (by: string) =>
      [
        ...(await page(`/?${CASE}${by}`)).matchAll(
          /id="known-(\w+)">([^<]+) <span class="count">(\d)/g,
        ),
      ]
        .map(([, id, title, count]) => [id, title, count].join(' '))
        .filter((one) => /^(set|said)/.test(one))
    expect(await headings('&by=bore,stroke')).toEqual([
      'set Set by your helper 2',
      'said You said 2',
    ])
    expect(await headings('&by=helper')).toEqual(['set Set by your helper 4'])
    expect(await headings('')).toEqual(['said You said 4'])
  })

  it('marks every answer when it says by=helper', async () => {
    expect(await page(`/?${CASE}&by=helper`)).toContain('Your helper set 4 answers')
  })

  it('escapes the note, cuts a long one and says so, and keeps it to one line', async () => {
    const hostile = encodeURIComponent('<script>alert(1)</script>\n"quoted"\u202e')
    const text = await page(`/?bore=4in&note=${hostile}`)
    expect(text).not.toContain('<script>alert')
    expect(text).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &quot;quoted&quot;')
    const long = await page(`/?bore=4in&note=${'x'.repeat(300)}`)
    expect(long).toContain('at most 280 characters')
    expect(long).toContain(`>${'x'.repeat(280)}</blockquote>`)
  })

  it('names facts that do not exist and marks nothing that is not answered', async () => {
    const text = await page('/?bore=4in&by=bore,rocket,boost')
    expect(text).toContain('rocket')
    expect(text.match(/set by your helper/g)?.length).toBe(1)
  })

  it('stays marked while the asker answers, until the asker changes it', async () => {
    const state = helped.slice(2)
    const answered = await post('/', { state, fact: 'boost', value: '8', unit: 'psi' })
    expect(answered.status).toBe(303)
    expect(answered.headers.get('location')).toContain('by=bore,stroke&note=I+measured+both')
    const changed = await post('/', { state, fact: 'bore', value: '4.06', unit: 'in' })
    expect(changed.headers.get('location')).toContain('by=stroke&note=')
    const over = await post('/', { state, text: 'start over' })
    expect(over.headers.get('location')).toBe('/')
  })
})

describe('example builds', () => {
  it('are listed, and found by words of their title, summary or answers', async () => {
    const all = await page('/presets')
    for (const { id } of rulebook.presets) expect(hrefs(all)).toContain(`/preset/${id}`)
    const found = hrefs(await page('/presets?q=cross-bolted+aluminium')).filter((href) =>
      href.startsWith('/preset/'),
    )
    expect(found).toEqual(['/preset/cross-bolted-boost'])
    expect(await page('/presets?q=%3Cb%3E')).toContain('None has “&lt;b&gt;” in it.')
  })

  it.each(rulebook.presets.map(({ id }) => id))(
    '%s has a page that leads into the guide',
    async (id) => {
      const text = await page(`/preset/${id}`)
      expect(text).not.toContain('name="robots"')
      expect(text).toContain(`<link rel="canonical" href="http://localhost/preset/${id}">`)
      const [into] = hrefs(text).filter((href) => href.startsWith(`/?v=${rulebook.version}&`))
      expect(await page(into ?? '')).not.toContain('could not be read')
    },
  )

  it('answer 404 to a name that is none', async () => {
    expect((await app.request('/preset/rocket')).status).toBe(404)
  })
})

describe('what search engines may keep', () => {
  it('is what stands still, not a case', async () => {
    for (const path of [
      `/?${CASE}`,
      `/call?${CASE}`,
      `/forum?${CASE}`,
      `/compare?a=${encodeURIComponent(CASE)}&b=x`,
      '/presets?q=v8',
    ]) {
      const text = await (await app.request(path)).text()
      expect(text, path).toContain('<meta name="robots" content="noindex">')
    }
    for (const path of ['/', '/presets', '/learn', '/method', '/shops']) {
      expect(await page(path), path).not.toContain('name="robots"')
    }
  })

  it('is named in the sitemap, every address of which answers', async () => {
    const robots = await page('/robots.txt')
    expect(robots).toContain('Sitemap: http://localhost/sitemap.xml')
    const sitemap = await page('/sitemap.xml')
    const paths = [...sitemap.matchAll(/<loc>http:\/\/localhost([^<]*)<\/loc>/g)].map(
      (match) => match[1] as string,
    )
    expect(paths.length).toBeGreaterThan(20)
    expect(new Set(paths).size).toBe(paths.length)
    for (const path of paths) {
      const text = await page(path)
      expect(text, path).not.toContain('name="robots"')
    }
  })

  it('is at the operator’s own address when that is set', async () => {
    const own = createApp({ ...realDeps(), origin: 'https://guide.example' })
    for (const path of ['/robots.txt', '/sitemap.xml']) {
      const response = await own.request(path, { headers: { host: 'other.example' } })
      expect(await response.text()).toContain('https://guide.example/')
      expect(response.headers.get('cache-control')).toContain('public')
    }
    expect(await page('/api', own)).toContain('https://guide.example/api/assess')
    expect(await page(`/call?${CASE}`, own)).toContain(
      `<meta property="og:image" content="https://guide.example/card.png?v=${rulebook.version}&amp;bore`,
    )
  })
})

describe('copy for a forum', () => {
  it('offers three texts with the whole link, and nothing of who asked', async () => {
    const text = await page(`/forum?${CASE}&by=bore&note=secret`)
    for (const id of ['call-plain', 'call-markdown', 'call-bbcode']) {
      const field = new RegExp(`<textarea id="${id}"[^>]*>([^<]*)</textarea>`).exec(text)?.[1] ?? ''
      expect(field).toContain(`http://localhost/call?v=${rulebook.version}&amp;bore=4.03in`)
      expect(field).not.toContain('secret')
    }
  })

  it('makes a helper’s link of the answers that stay set', async () => {
    const text = await page(`/forum?${CASE}&hand=on&set=bore&set=stroke&note=Ask+the+seller`)
    const link = `/?v=${rulebook.version}&bore=4.03in&stroke=3.48in&by=bore,stroke&note=Ask+the+seller`
    expect(hrefs(text)).toContain(`http://localhost${link}`)
    expect(text).toContain('Left for you:')
    expect(await page(link)).toContain('Your helper set 2 answers')
  })

  it('has nothing to post for an empty link', async () => {
    expect((await app.request('/forum')).status).toBe(422)
  })

  it('is said by the API as by the page', async () => {
    const { json } = await postJson('/api/forum', {
      answers: {
        bore: '4.03 in',
        stroke: '3.48 in',
        induction: 'turbocharged',
        capFastening: 'two-bolt',
      },
    })
    const text = await page(`/forum?${CASE}`)
    const field = /<textarea id="call-plain"[^>]*>([^<]*)<\/textarea>/.exec(text)?.[1] ?? ''
    expect(field.replaceAll('&amp;', '&').replaceAll('&#39;', "'")).toBe(json.plain)
  })
})

describe('two links', () => {
  it('are laid side by side, by page and by API alike', async () => {
    const a = encodeURIComponent(`https://guide.example/call?${CASE}`)
    const text = await page(`/compare?a=${a}&b=/preset/mild-street`)
    const { json } = await postJson('/api/compare', {
      a: { link: `?${CASE}` },
      b: { link: '/preset/mild-street' },
    })
    const { sentence } = json.a as { sentence: string }
    expect(text).toContain(sentence)
    expect(text).toContain('Answers that differ')
    expect(text).toMatch(/lbf/)
    expect(await page(`/compare?a=${a}&b=/preset/mild-street&units=metric`)).toMatch(/kN/)
  })

  it('ask for both, and name what cannot be read', async () => {
    expect(await page('/compare')).toContain('Paste two links')
    const refused = await app.request(`/compare?a=hello&b=${encodeURIComponent(CASE)}`)
    expect(refused.status).toBe(422)
    expect(await refused.text()).toContain('First link')
    const { status, json } = await postJson('/api/compare', {
      a: { link: 'bore=wide' },
      b: { answers: {} },
    })
    expect(status).toBe(400)
    expect((json.errors as { field: string }[])[0]?.field).toBe('a.bore')
    expect((await postJson('/api/compare', { a: {}, b: { answers: {} } })).status).toBe(400)
  })
})
