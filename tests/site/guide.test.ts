import { describe, expect, it } from 'vitest'
import { talkFromQuery } from '../../src/talk/state.ts'
import { app, rulebook } from '../support/app.ts'

/** Post the guide's form as a browser without script does. */
function post(fields: Record<string, string>): Promise<Response> {
  return Promise.resolve(
    app.request('/', {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams(fields).toString(),
    }),
  )
}

/** The state that a post leads to: it must be a redirect to a link. */
async function leadsTo(fields: Record<string, string>) {
  const response = await post(fields)
  expect(response.status).toBe(303)
  const location = new URL(response.headers.get('location') ?? '', 'http://localhost')
  return {
    path: location.pathname,
    query: location.search.slice(1),
    ...talkFromQuery(location.search),
  }
}

const STATE = 'v=1.0.0&boost=12psi&induction=turbocharged&use=street'

describe('where a page opens without script', () => {
  const place = async (fields: Record<string, string>) =>
    (await post({ state: STATE, ...fields })).headers.get('location')?.split('#')[1]

  it('at the next question after an answer, at what was heard after a message', async () => {
    expect(await place({ fact: 'bore', value: '4.03', unit: 'in' })).toBe('question')
    expect(await place({ text: '4.03 bore' })).toBe('heard')
    expect(await place({ text: 'undo' })).toBe('question')
    expect(await place({ text: 'start over' })).toBe(undefined)
    const page = await (await app.request(`/?${STATE}&said=4.03+bore`)).text()
    for (const id of ['question', 'heard']) expect(page).toContain(`id="${id}"`)
  })
})

describe('an answer by form post', () => {
  it.each([
    [
      'a figure and its unit',
      { fact: 'bore', value: '4.03', unit: 'in' },
      { value: 4.03, unit: 'in' },
    ],
    [
      'a unit in the field wins',
      { fact: 'bore', value: '102.4 mm', unit: 'in' },
      { value: 102.4, unit: 'mm' },
    ],
    [
      'white space is nothing',
      { fact: 'bore', value: ' 4.03 ', unit: 'in' },
      { value: 4.03, unit: 'in' },
    ],
    ['a ratio', { fact: 'compressionRatio', value: '9.5' }, 9.5],
    ['a choice', { fact: 'layout', choice: 'inline-6' }, 'inline-6'],
    ['a thread', { fact: 'fastenerThread', value: '7/16-14' }, '7/16-14'],
    ['money', { fact: 'budget', value: '1,500', unit: 'USD' }, { value: 1500, currency: 'USD' }],
    [
      '“I don’t know” beats a half-typed field',
      { fact: 'bore', value: '4', unit: 'in', know: 'no' },
      'unknown',
    ],
  ])('%s', async (_, fields, answer) => {
    const { path, state, problems } = await leadsTo({ state: STATE, units: 'us', ...fields })
    expect([path, problems]).toEqual(['/', []])
    expect(state.answers[fields.fact as 'bore']).toEqual(answer)
    expect(state.answers).toMatchObject({ use: 'street', induction: 'turbocharged' })
  })

  it('keeps the person’s units in the link', async () => {
    const { query } = await leadsTo({ state: STATE, units: 'metric', fact: 'use', choice: 'drag' })
    expect(new URLSearchParams(query).get('units')).toBe('metric')
  })

  it('parks what no longer counts, and undo brings it back', async () => {
    const edited = await leadsTo({ state: STATE, fact: 'induction', choice: 'naturally-aspirated' })
    expect(edited.state.parked).toEqual({ boost: { value: 12, unit: 'psi' } })
    const undone = await leadsTo({ state: edited.query, text: 'undo' })
    expect(undone.state.answers).toEqual(talkFromQuery(STATE).state.answers)
  })

  it.each([
    ['too large', { fact: 'bore', value: '40', unit: 'in' }, '40'],
    ['no figure', { fact: 'bore', value: 'big', unit: 'in' }, 'big'],
    ['no unit', { fact: 'bore', value: '4.03' }, '4.03'],
    ['a choice that is none', { fact: 'layout', choice: 'w16' }, 'Inline'],
    ['markup', { fact: 'bore', value: '"><b>4</b>', unit: 'in' }, '&quot;&gt;&lt;b&gt;4'],
  ])(
    '%s: the same question again, with what was typed and what would fit',
    async (_, fields, shown) => {
      const response = await post({ state: STATE, ...fields })
      expect(response.status).toBe(422)
      const page = await response.text()
      expect(page).toContain(shown)
      expect(page).toContain('boost=12psi')
      expect(page).not.toContain('<b>4</b>')
      expect(page).toMatch(/role="alert"|class="[^"]*(error|problem)/)
    },
  )
})

describe('a message by form post', () => {
  it('becomes answers in a link', async () => {
    const { state } = await leadsTo({ state: STATE, text: 'bore 4.03 in and 9.5:1' })
    expect(state.answers).toMatchObject({
      use: 'street',
      bore: { value: 4.03, unit: 'in' },
      compressionRatio: 9.5,
    })
  })

  it('asking for the result leads to the call', async () => {
    expect((await leadsTo({ state: STATE, text: 'just tell me' })).path).toBe('/call')
  })

  it('to start over leads to an empty case', async () => {
    const { state } = await leadsTo({ state: STATE, text: 'start over' })
    expect(state.answers).toEqual({})
  })

  it('keeps what was supposed, when the form stands beside a what-if', async () => {
    const supposed = STATE.replace('12psi', '9psi')
    for (const text of ['keep it', 'Yes, keep that!', "ok let's do it"]) {
      const { state } = await leadsTo({ state: STATE, supposed, text })
      expect(state.answers).toMatchObject({ use: 'street', boost: { value: 9, unit: 'psi' } })
    }
    const metric = await leadsTo({ state: STATE, supposed, text: 'keep it', units: 'metric' })
    expect(metric.query).toContain('units=metric')
    const other = await leadsTo({ state: STATE, supposed, text: 'keep it, bore 4.03 in' })
    expect(other.state.answers).toMatchObject({ boost: { value: 12 }, bore: { value: 4.03 } })
    expect((await post({ state: STATE, text: 'keep it' })).status).toBe(422)
    expect((await post({ state: STATE, supposed: 'boost=x', text: 'keep it' })).status).toBe(422)
  })

  it('that bounds from above what is lower already raises nothing', async () => {
    const { query } = await leadsTo({ state: STATE, text: 'what if I stay under 9,000 rpm?' })
    const page = await (await app.request(`/?${query}`)).text()
    expect(page).toMatch(/already stays under 9,000\srpm/)
    expect(page).not.toContain('class="what-if"')
  })

  it('leaves what was supposed, and says so, when the form stands beside a what-if', async () => {
    const supposed = STATE.replace('12psi', '9psi')
    const said = ['leave it', 'Leave it as it is', 'leave it as it stands', 'no, leave it alone.']
    for (const text of [...said, 'never mind', "don't keep it"]) {
      const { state, query } = await leadsTo({ state: STATE, supposed, text, fact: 'bore' })
      expect(state.answers).toMatchObject({ use: 'street', boost: { value: 12, unit: 'psi' } })
      const page = await (await app.request(`/?${query}`)).text()
      expect(page).toContain('Left as it stands: nothing is changed.')
      expect(page).not.toContain('I could take nothing from that')
    }
    const more = await leadsTo({ state: STATE, supposed, text: 'leave it, bore is 4.03 in' })
    expect(more.state.answers).toMatchObject({ boost: { value: 12 }, bore: { value: 4.03 } })
  })

  it('that gives no fact says why not, and what the guide can use at this point', async () => {
    const page = async (text: string, fact: string) =>
      (await (await post({ state: STATE, text, fact })).text()).replace(/<[^>]+>/g, '')
    const crank = await page('the crank is cast', 'capMaterial')
    expect(crank).toContain('“crank” — about another part')
    expect(crank).toMatch(/Asked is: [^?]+\? It takes an answer such as “[^”]+”, “[^”]+”, “/)
    expect(await page('hello there', 'bore')).toContain('It takes a figure in in or mm')
    expect(await page("I don't want to fit studs", 'bore')).toContain(
      '“studs” — says only what is not there or not wanted; for fasteners, say what there is',
    )
  })

  it('that says nothing usable comes back in its field, and nothing is lost', async () => {
    const response = await post({ state: STATE, text: 'lorem <i>ipsum</i>' })
    expect(response.status).toBe(422)
    const page = await response.text()
    expect(page).toContain('lorem &lt;i&gt;ipsum&lt;/i&gt;')
    expect(page).toContain('boost=12psi')
  })
})

describe('a post that no form of ours makes', () => {
  it.each([
    ['nothing at all', {}],
    ['an unknown fact', { fact: 'crank', value: '1' }],
    ['an inherited name', { fact: '__proto__', value: '1' }],
    ['a broken state', { state: '%%%&bore=40in&=&&', fact: 'crank' }],
  ])('%s: the guide again, no fault', async (_, fields) => {
    const response = await post(fields as Record<string, string>)
    expect(response.status).toBe(422)
    expect(response.headers.get('content-type')).toMatch(/^text\/html/)
  })

  it('a file upload is not read as answers', async () => {
    const form = new FormData()
    form.set('fact', 'bore')
    const response = await app.request('/', { method: 'POST', body: form })
    expect(response.status).toBeGreaterThanOrEqual(400)
    expect(response.status).toBeLessThan(500)
  })
})

describe('links', () => {
  it.each(rulebook.presets.map(({ id }) => id))('/preset/%s leads to a case', async (id) => {
    const response = await app.request(`/preset/${id}`)
    const page = response.status === 200 ? await response.text() : ''
    const link = response.headers.get('location') ?? /href="(\/\?v=[^"]+)"/.exec(page)?.[1] ?? ''
    const { state, problems } = talkFromQuery(link.replaceAll('&amp;', '&').replace(/^\/\?/, ''))
    expect(problems).toEqual([])
    expect(Object.keys(state.answers).length).toBeGreaterThan(8)
  })

  it('a broken part is named on the page, and the rest is kept', async () => {
    const response = await app.request('/?bore=40in&use=drag&stroke=%3Cb%3E')
    expect(response.status).toBe(200)
    const page = await response.text()
    expect(page).toContain('40 in')
    expect(page).toContain('use=drag')
    expect(page).not.toContain('<b>')
    expect(page).not.toContain('bore=40in')
  })

  it('a call without answers says so', async () => {
    const response = await app.request('/call')
    expect(response.status).toBe(422)
    expect(await response.text()).toContain('nothing about a build')
  })

  it('the same link gives the same page, byte for byte', async () => {
    const ask = async () => (await app.request(`/?${STATE}`)).text()
    const [one, two] = await Promise.all([ask(), ask()])
    expect(two).toBe(one)
  })
})

describe('a what-if before there is a call', () => {
  it('says that neither side is one, as the panel beside it does', async () => {
    const said = encodeURIComponent('what if I ran 20 psi?')
    const page = await (await app.request(`/?${STATE}&said=${said}`)).text()
    expect(page).toContain('No call yet')
    expect(page).toContain('Neither side is a call yet.')
  })
})
