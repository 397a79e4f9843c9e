import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { OPERATIONS } from '../../src/api/operations.ts'
import { shapeWords } from '../../src/api/shape-words.ts'
import { postJson } from '../support/app.ts'

type Errors = { errors: { field: string; found: string; fits: string }[] }

/** What the schema library says of itself: none of it may reach a person. */
const LIBRARY = /Invalid|expected|received|Unrecognized|Too (big|small)|Infinity psi/

async function errorsOf(path: string, body: unknown) {
  const { status, json } = await postJson(path, body)
  expect(status).toBe(400)
  return (json as Errors).errors
}

describe('a body of another shape', () => {
  it.each([
    ['/api/assess', { answers: 'x' }, 'answers', /object of answers by fact key/],
    ['/api/assess', { answers: [] }, 'answers', /object of answers by fact key/],
    ['/api/assess', {}, 'answers', /object of answers by fact key/],
    ['/api/assess', [], 'body', /give an object/],
    ['/api/assess', { answers: {}, units: 4 }, 'units', /us or metric/],
    ['/api/assess', { answers: {}, note: 4 }, 'note', /leave this field out/],
    ['/api/compare', { a: 3, b: { answers: {} } }, 'a', /answers or a link/],
    ['/api/compare', { a: { link: 4 }, b: { answers: {} } }, 'a.link', /a text/],
    [
      '/api/compare',
      { a: { link: 'x'.repeat(13_000) }, b: { answers: {} } },
      'a.link',
      /at most 12000 characters/,
    ],
    ['/api/turn', { answers: {}, parked: 4, text: 'hi' }, 'parked', /object of answers/],
    ['/api/worksheets/preload', 3, 'body', /give an object/],
  ])('%s %o names %s and what would fit', async (path, body, field, fits) => {
    const errors = await errorsOf(path, body)
    expect(errors.map((one) => one.field)).toContain(field)
    const named = errors.find((one) => one.field === field)
    expect(named?.fits).toMatch(fits)
    for (const one of errors) expect(one.fits).not.toMatch(LIBRARY)
  })
})

describe('a figure too large for its usual unit', () => {
  it.each([
    ['boost', '1e308 psi', '1e+308 psi'],
    ['boost', { value: 1e308, unit: 'bar' }, '1e+308 bar'],
    ['displacement', '1e308 L', '1e+308 L'],
  ])('%s %o is shown as it was written', async (fact, answer, found) => {
    const errors = await errorsOf('/api/assess', { answers: { [fact]: answer } })
    expect(errors).toMatchObject([{ field: fact, code: 'out-of-range', found }])
  })
})

describe('any JSON to any operation', () => {
  const paths = OPERATIONS.filter(({ method }) => method === 'post').map(({ path }) => path)

  it('is never answered in the schema library’s words', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...paths),
        fc.oneof(
          fc.jsonValue({ maxDepth: 3 }),
          fc.record({
            answers: fc.jsonValue({ maxDepth: 2 }),
            a: fc.jsonValue({ maxDepth: 2 }),
            b: fc.jsonValue({ maxDepth: 2 }),
            text: fc.jsonValue({ maxDepth: 1 }),
            units: fc.jsonValue({ maxDepth: 1 }),
          }),
        ),
        async (path, body) => {
          const { status, json } = await postJson(`/api${path}`, JSON.stringify(body))
          expect(status).toBeLessThan(500)
          for (const { fits } of (json as Partial<Errors>).errors ?? []) {
            expect(fits).not.toMatch(LIBRARY)
          }
        },
      ),
      { numRuns: 300 },
    )
  })
})

describe('shapeWords', () => {
  const words = (schema: z.ZodType, value: unknown) =>
    schema.safeParse(value, { error: shapeWords }).error?.issues[0]?.message

  it.each([
    [z.boolean(), 'yes', 'give true or false'],
    [z.array(z.number()), 4, 'give a list'],
    [z.int(), '4', 'give a number'],
    [z.int(), 4.5, 'give a whole number'],
    [z.enum(['us', 'metric']), 'uk', 'use us, metric'],
    [z.number().max(4), 5, 'give at most 4'],
    [z.number().min(4), 3, 'give at least 4'],
    [z.string().min(3), 'x', 'give at least 3 characters'],
    [z.array(z.number()).max(1), [1, 2], 'give at most 1 entries'],
    [z.union([z.string(), z.number()]), true, 'give a value as the description of the API says'],
  ])('%#: in words of ours', (schema, value, expected) => {
    expect(words(schema, value)).toBe(expected)
  })

  it('leave a schema’s own words as they are', () => {
    expect(words(z.string('give the words as a text'), 4)).toBe('give the words as a text')
  })
})
