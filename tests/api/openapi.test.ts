import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { answersShape } from '../../src/api/answers-schema.ts'
import { OPERATIONS } from '../../src/api/operations.ts'
import { apiRoutes } from '../../src/api/routes.ts'
import { anyAnswers } from '../support/answers.ts'
import { app, postJson, realDeps, rulebook } from '../support/app.ts'
import { checkerOf, type OpenApi, openApiShape, refsIn } from '../support/openapi-shape.ts'

let description: OpenApi

beforeAll(async () => {
  const response = await app.request('/api/openapi.json')
  expect(response.status).toBe(200)
  expect(response.headers.get('content-type')).toMatch(/^application\/json/)
  description = openApiShape.parse(await response.json())
})

describe('the description', () => {
  it('is of this rulebook, and has every operation and nothing else', () => {
    expect(description.info.version).toBe(rulebook.version)
    const listed = Object.entries(description.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method} ${path}`),
    )
    const real = OPERATIONS.map(({ method, path }) => `${method} /api${path}`)
    expect(listed.sort()).toEqual([...real, 'get /healthz'].sort())
  })

  it('has every route that is served', () => {
    const described = Object.keys(description.paths)
    const served = apiRoutes(realDeps())
      .routes.filter(({ method }) => method !== 'ALL')
      .map(({ path }) => `/api${path}`)
    expect(served.length).toBeGreaterThan(4)
    expect(served.filter((path) => !described.includes(path))).toEqual(['/api/openapi.json'])
  })

  it('names no operation twice, and every reference leads somewhere', () => {
    const ids = Object.values(description.paths)
      .flatMap(({ get, post }) => [get, post])
      .flatMap((operation) => operation?.operationId ?? [])
    expect(new Set(ids).size).toBe(ids.length)
    const names = Object.keys(description.components.schemas)
    const missing = refsIn(description).filter(
      (ref) => !names.includes(ref.split('/').at(-1) ?? ''),
    )
    expect(missing).toEqual([])
  })

  it('shows an example of every body', () => {
    for (const { method, examples, id } of OPERATIONS) {
      expect([id, examples.length > 0]).toEqual([id, true])
      for (const { body } of examples) expect(body === undefined).toBe(method === 'get')
    }
  })
})

const examples = OPERATIONS.flatMap((operation) =>
  operation.examples.map(
    (example) => [`${operation.id}: ${example.title}`, operation, example] as const,
  ),
)

describe('the examples', () => {
  it.each(examples)('%s', async (_, { id, method, path, response }, { body }) => {
    const name = id.replace(/(?:^|-)([a-z])/g, (__, letter: string) => letter.toUpperCase())
    if (method === 'post') {
      const request = checkerOf(description, `${name}Request`).safeParse(body)
      expect(request.error?.issues ?? []).toEqual([])
    }
    const answered =
      method === 'post'
        ? await postJson(`/api${path}`, body)
        : { status: 200, json: await (await app.request(`/api${path}`)).json() }
    expect(answered.status).toBe(200)
    const published = checkerOf(description, `${name}Response`).safeParse(answered.json)
    expect(published.error?.issues ?? []).toEqual([])
    expect(response.safeParse(answered.json).error?.issues ?? []).toEqual([])
  })

  it('of a refusal is as described', async () => {
    const { status, json } = await postJson('/api/assess', {
      answers: { bore: '40 in', use: 'drag' },
    })
    expect(status).toBe(400)
    expect(checkerOf(description, 'Problem').safeParse(json).error?.issues ?? []).toEqual([])
  })
})

describe('answers as described', () => {
  it('hold every answer that is read', () => {
    const published = checkerOf(description, 'Answers')
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        expect(readAnswers(answers).problems).toEqual([])
        expect(answersShape.safeParse(answers).error?.issues ?? []).toEqual([])
        expect(published.safeParse(answers).error?.issues ?? []).toEqual([])
      }),
      { numRuns: 60 },
    )
  })

  it.each([
    { bore: 4.03 },
    { bore: { value: 4.03 } },
    { bore: { value: 4.03, unit: 'psi' } },
    { bore: { value: 4.03, unit: 'in', note: '' } },
    { use: 'racing' },
    { compressionRatio: 40 },
    { invested: 6000 },
    { invested: { value: 6000, currency: 'dollars' } },
    { crank: 'forged' },
  ])('refuse %j, as the reader does', (raw) => {
    expect(readAnswers(raw).problems).toHaveLength(1)
    expect(answersShape.safeParse(raw).success).toBe(false)
    expect(checkerOf(description, 'Answers').safeParse(raw).success).toBe(false)
  })
})
