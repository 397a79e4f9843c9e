import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { OPERATIONS } from '../../src/api/operations.ts'
import { problemDocument } from '../../src/api/problem-response.ts'
import { app } from '../support/app.ts'

const POSTS = OPERATIONS.filter(({ method }) => method === 'post')
/** Operations that only read or reckon one thing; the others assess a whole build each time. */
const QUICK = POSTS.filter(({ id }) => id === 'understand' || id.startsWith('worksheet-'))

async function statusOf(path: string, body: string): Promise<number> {
  const response = await app.request(`/api${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body,
  })
  const json = await response.json()
  if (response.status !== 200) {
    const { errors, status } = problemDocument.parse(json)
    expect(status).toBe(response.status)
    for (const { fits } of errors) expect(fits).not.toBe('')
  }
  return response.status
}

const odd = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    '',
    0,
    -1,
    1e308,
    -1e-308,
    '1e999 in',
    '-0',
    '0 in',
    '9'.repeat(80),
  ),
  fc.constantFrom<unknown>(
    {},
    [],
    [[]],
    { value: 0, unit: 'in' },
    { value: -1, unit: 'psi' },
    'unknown',
  ),
  fc.jsonValue({ maxDepth: 3 }),
)

/** A good body with one of its members replaced by something odd, taken out, or added. */
function spoilt(example: unknown): fc.Arbitrary<Record<string, unknown>> {
  const good = example as Record<string, unknown>
  const key = fc.oneof(fc.constantFrom(...Object.keys(good)), fc.string({ maxLength: 8 }))
  return fc
    .tuple(key, fc.option(odd, { nil: undefined }))
    .map(([name, value]) => ({ ...good, [name]: value }))
}

describe('whatever is sent', () => {
  it.each(POSTS.map(({ path }) => path))('%s never fails on any JSON', async (path) => {
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 4 }), async (body) => {
        expect(await statusOf(path, body)).toBeLessThan(500)
      }),
      { numRuns: 60 },
    )
  })

  it.each(POSTS.map(({ path }) => path))('%s never fails on any bytes', async (path) => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 60 }), async (bytes) => {
        const response = await app.request(`/api${path}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: new Uint8Array(bytes),
        })
        expect(response.status).toBe(400)
      }),
      { numRuns: 40 },
    )
  })

  it.each(QUICK.flatMap(({ path, examples }) => examples.map(({ body }) => [path, body] as const)))(
    '%s never fails on an example with one member spoilt',
    async (path, body) => {
      await fc.assert(
        fc.asyncProperty(spoilt(body), async (sent) => {
          expect(await statusOf(path, JSON.stringify(sent))).toBeLessThan(500)
        }),
        { numRuns: 150 },
      )
    },
  )
})
