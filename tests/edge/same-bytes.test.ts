import { existsSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { OPERATIONS } from '../../src/api/operations.ts'
import { createApp } from '../../src/app.ts'
import { realDeps, rulebook } from '../support/app.ts'
import { type Edge, startEdge } from './run-edge.ts'

const manifestFile = new URL('../../dist/assets/manifest.json', import.meta.url)
const node = createApp({ ...realDeps(), drawPng: undefined, printFonts: undefined })
let edge: Edge

beforeAll(async () => {
  edge = await startEdge()
  const manifest: unknown = existsSync(manifestFile)
    ? JSON.parse(readFileSync(manifestFile, 'utf8'))
    : {}
  // What the build puts into both bundles.
  Object.assign(globalThis, { ASSET_MANIFEST: manifest })
})
afterAll(() => edge.close())

/** Status, headers that say what it is, and the bytes of one answer. */
async function answerOf(response: Response) {
  const headers = Object.fromEntries(
    [...response.headers].filter(([name]) => !NOT_THE_ANSWER.has(name)),
  )
  return { status: response.status, headers, body: await response.text() }
}
/** Of the connection, or a name for one request. */
const NOT_THE_ANSWER = new Set([
  'date',
  'connection',
  'keep-alive',
  'content-length',
  'transfer-encoding',
  'x-request-id',
])

async function both(path: string, init: RequestInit = {}) {
  const address = `${edge.origin}${path}`
  // The address that was asked is written in some answers, so both are asked by the same.
  const [fromNode, fromEdge] = [await node.request(address, init), await fetch(address, init)]
  return [await answerOf(fromNode), await answerOf(fromEdge)] as const
}

const LINK = new URLSearchParams({
  ...{ v: rulebook.version, layout: 'v8-cross-plane', bore: '4.03in', stroke: '3.48in' },
  ...{ targetPower: '550hp', peakRpm: '6500rpm', capMaterial: 'grey-iron' },
}).toString()

const PAGES = [
  '/',
  `/?${LINK}`,
  `/?${LINK}&u=metric`,
  `/call?${LINK}`,
  `/sheet?${LINK}`,
  `/check-in?${LINK}`,
  '/learn',
  '/learn/register',
  '/method',
  '/rules',
  '/worksheets',
  '/worksheets/preload',
  '/shops',
  '/api',
  '/api/openapi.json',
  '/api/facts',
  '/healthz',
  '/nothing-here',
  '/?shop=millpond',
]

describe('the edge runtime and the server answer alike, byte for byte', () => {
  it.each(PAGES)('GET %s', async (path) => {
    const [fromNode, fromEdge] = await both(path)
    expect(fromEdge).toEqual(fromNode)
    expect(fromEdge.body.length).toBeGreaterThan(20)
    expect(fromEdge.status).toBe(path === '/nothing-here' ? 404 : 200)
  })

  const examples = OPERATIONS.filter(({ method }) => method === 'post').flatMap(
    ({ path, examples }) => examples.map(({ body }) => [path, body] as const),
  )
  it.each(examples)('POST /api%s', async (path, body) => {
    const [fromNode, fromEdge] = await both(`/api${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    expect(fromEdge).toEqual(fromNode)
    expect(fromEdge.status).toBe(200)
  })

  it('a message in the person’s own words', async () => {
    const [fromNode, fromEdge] = await both('/', {
      method: 'POST',
      redirect: 'manual',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams({ text: 'a 355 with 9.5:1 and 8 psi of boost' }),
    })
    expect(fromEdge).toEqual(fromNode)
    expect(fromEdge.status).toBeLessThan(400)
  })

  it('shows no link to what it cannot draw', async () => {
    const [, { body }] = await both(`/sheet?${LINK}`)
    expect(body).not.toContain('/sheet.pdf')
    expect(body).not.toContain('/card.png')
    const [, pdf] = await both(`/sheet.pdf?${LINK}`)
    expect(pdf.status).toBe(404)
  })

  it('serves the built assets', async () => {
    const { body } = await answerOf(await fetch(`${edge.origin}/`))
    const sheet = /href="(\/assets\/site[^"]*\.css)"/.exec(body)?.[1] as string
    const [fromNode, fromEdge] = await both(sheet)
    expect(fromEdge).toEqual(fromNode)
    expect(fromEdge.headers['cache-control']).toContain('immutable')
  })
})
