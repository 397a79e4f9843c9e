import { describe, expect, it } from 'vitest'
import { OPERATIONS } from '../../src/api/operations.ts'
import { PROBLEM_TYPES } from '../../src/api/problem-response.ts'
import { app } from '../support/app.ts'

const plain = (html: string) =>
  html
    .replaceAll('&#39;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')

const page = await (await app.request('http://guide.example/api')).text()

describe('/api', () => {
  it('shows every operation under its own heading', () => {
    for (const { id, method, path } of OPERATIONS) {
      expect(page).toContain(`id="${id}"`)
      expect(page).toContain(`href="#${id}"`)
      expect(page).toContain(`<code>${method.toUpperCase()} /api${path}</code>`)
    }
  })

  it('shows commands that send exactly the examples', () => {
    const commands = [...page.matchAll(/<pre[^>]*><code>([\s\S]*?)<\/code><\/pre>/g)].map((match) =>
      plain(match[1] as string),
    )
    const examples = OPERATIONS.flatMap(({ path, examples: all }) =>
      all.map(({ body }) => ({ path, body })),
    )
    expect(commands).toHaveLength(examples.length)
    for (const [at, { path, body }] of examples.entries()) {
      const command = commands[at] as string
      expect(command).toContain(`curl 'http://guide.example/api${path}'`)
      const sent = /<<'JSON'\n([\s\S]*)\nJSON$/.exec(command)?.[1]
      expect(sent === undefined ? undefined : JSON.parse(sent)).toEqual(body)
    }
  })

  it('has a place for every kind of refusal, where the type of a problem document leads', async () => {
    for (const kind of Object.keys(PROBLEM_TYPES)) {
      expect(page).toContain(`id="problem-${kind}"`)
      const response = await app.request(`/problems/${kind}`)
      expect([response.status, response.headers.get('location')]).toEqual([
        302,
        `/api#problem-${kind}`,
      ])
    }
    expect((await app.request('/problems/constructor')).status).toBe(404)
  })

  it('keeps the case and the units in the links of the page', async () => {
    const response = await app.request('/api?v=1.0.0&bore=4in&units=metric')
    expect(response.status).toBe(200)
    expect(plain(await response.text())).toMatch(/href="\/method\?v=[\d.]+&bore=4in&units=metric"/)
  })

  it('shows no address that a request made up', async () => {
    const response = await app.request("http://x'y.example/api")
    expect(await response.text()).not.toContain("curl 'http://x'y")
  })
})
