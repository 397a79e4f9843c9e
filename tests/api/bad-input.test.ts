import { describe, expect, it } from 'vitest'
import { problemDocument } from '../../src/api/problem-response.ts'
import { app, postJson } from '../support/app.ts'

type Problem = { field: string; code: string; found: string; fits: string }

/** Send a body that must be refused; the answer must be a problem document. */
async function refused(path: string, body: unknown, status: number) {
  const answer = await postJson(path, body)
  expect([answer.status, answer.type]).toEqual([status, 'application/problem+json'])
  const document = problemDocument.parse(answer.json)
  expect(document.status).toBe(status)
  return { ...document, errors: document.errors as Problem[] }
}

const fields = ({ errors }: { errors: Problem[] }) => errors.map(({ field, code }) => [field, code])

describe('bad answers', () => {
  it.each([
    ['unknown fact', { crank: 'forged' }, 'crank', 'unknown-fact', /fact key/],
    ['wrong unit', { bore: '4 psi' }, 'bore', 'unit-unknown', /in, mm/],
    ['no unit', { bore: 4.03 }, 'bore', 'unit-missing', /in, mm/],
    ['negative bore', { bore: '-4 in' }, 'bore', 'out-of-range', /2 to 5.9 in/],
    ['40-inch bore', { bore: '40 in' }, 'bore', 'out-of-range', /2 to 5.9 in/],
    ['3:1', { compressionRatio: 3 }, 'compressionRatio', 'out-of-range', /:1/],
    ['40:1', { compressionRatio: '40:1' }, 'compressionRatio', 'out-of-range', /:1/],
    ['a choice that is none', { use: 'racing' }, 'use', 'not-a-choice', /street-strip/],
    ['money without currency', { invested: 900 }, 'invested', 'currency-missing', /USD/],
    ['a currency without a rate', { invested: '900 XXX' }, 'invested', 'currency-missing', /USD/],
    [
      'an unknown part of an answer',
      { bore: { value: 4, unit: 'in', x: 1 } },
      'bore.x',
      'unknown-field',
      /value/,
    ],
  ])(
    '%s is named with what would fit, and the others are kept',
    async (_, bad, field, code, fits) => {
      const document = await refused('/api/assess', { answers: { stroke: '3.48 in', ...bad } }, 400)
      expect(document.type).toBe('/problems/invalid-answers')
      expect(fields(document)).toEqual([[field, code]])
      expect(document.errors[0]?.fits).toMatch(fits)
      expect(document.detail).toContain(field)
      expect(document.kept?.answers).toEqual({ stroke: { value: 3.48, unit: 'in' } })
    },
  )

  it('are all named at once', async () => {
    const answers = { bore: '40 in', use: 'racing', crank: 1, peakRpm: 6500, layout: 'inline-4' }
    const document = await refused('/api/assess', { answers }, 400)
    expect(document.errors.map(({ field }) => field).sort()).toEqual([
      'bore',
      'crank',
      'peakRpm',
      'use',
    ])
    expect(document.kept?.answers).toEqual({ layout: 'inline-4' })
  })

  it('say Infinity for a number too large for a double', async () => {
    const document = await refused('/api/assess', '{"answers":{"compressionRatio":1e999}}', 400)
    expect(document.errors).toMatchObject([{ field: 'compressionRatio', found: 'Infinity' }])
  })

  it('are refused by understand and turn too', async () => {
    const understood = await refused('/api/understand', { text: 'hi', answers: { bore: 4 } }, 400)
    expect(fields(understood)).toEqual([['bore', 'unit-missing']])
    const turned = await refused(
      '/api/turn',
      {
        text: 'hi',
        answers: { bore: 4, use: 'drag' },
        parked: { boost: '900 psi', fuel: 'e85' },
        before: { stroke: '90 in', use: null, crank: null },
      },
      400,
    )
    expect(fields(turned)).toEqual([
      ['bore', 'unit-missing'],
      ['parked.boost', 'out-of-range'],
      ['before.stroke', 'out-of-range'],
      ['before.crank', 'unknown-fact'],
    ])
    expect(turned.kept).toEqual({ answers: { use: 'drag' }, parked: { fuel: 'e85' } })
  })
})

describe('bad bodies', () => {
  const kept = { bore: { value: 4, unit: 'in' } }

  it.each([
    ['empty', ''],
    ['white space', ' \n '],
    ['broken', '{"answers":'],
    ['not JSON', 'bore=4in'],
    ['a byte order mark in the middle', '{"answers":\ufeff{}}'],
    ['NaN', '{"answers":{"compressionRatio":NaN}}'],
    ['nested too deep', `{"answers":{"bore":${'['.repeat(50)}${']'.repeat(50)}}}`],
    ['nested very deep', `${'['.repeat(30_000)}${']'.repeat(30_000)}`],
    ['a list', '[]'],
    ['null', 'null'],
    ['a text', '"answers"'],
    ['a number', '7'],
  ])('%s: the body is named', async (_, body) => {
    const document = await refused('/api/assess', body, 400)
    expect(document.type).toBe('/problems/invalid-body')
    expect(document.errors.map(({ field }) => field)).toEqual(['body'])
    expect(document.errors[0]?.fits).not.toBe('')
  })

  it.each([
    ['a key twice', '{"answers":{"bore":"4 in","use":"drag","use":"street"}}', 'use', 'duplicate'],
    [
      'a key twice, once escaped',
      '{"answers":{"bore":"4 in","use":"drag","\\u0075se":"street"}}',
      'use',
      'duplicate',
    ],
    [
      'a key twice, far from its colon',
      `{"answers":{"bore":"4 in","use"${' '.repeat(99)}:"drag","use":"street"}}`,
      'use',
      'duplicate',
    ],
    [
      '__proto__',
      '{"answers":{"bore":"4 in","__proto__":{"use":"drag"}}}',
      '__proto__',
      'unknown-field',
    ],
    [
      'constructor',
      '{"answers":{"bore":"4 in","constructor":{"prototype":1}}}',
      'constructor',
      'unknown-field',
    ],
    ['an unknown member', '{"answers":{"bore":"4 in"},"engine":1}', 'engine', 'unknown-field'],
    [
      'units that are none',
      '{"answers":{"bore":"4 in"},"units":"imperial"}',
      'units',
      'wrong-shape',
    ],
  ])('%s: named, and the good answers are kept', async (_, body, field, code) => {
    const document = await refused('/api/assess', body, 400)
    expect(document.errors[0]).toMatchObject({ field, code })
    expect(document.kept?.answers).toEqual(kept)
    expect(({} as Record<string, unknown>).use).toBeUndefined()
  })

  it('a wrong member and bad answers are all named', async () => {
    const document = await refused(
      '/api/assess',
      { answers: { bore: 4, use: 'drag' }, unit: 'us' },
      400,
    )
    expect(fields(document)).toEqual([
      ['unit', 'unknown-field'],
      ['bore', 'unit-missing'],
    ])
    expect(document.kept?.answers).toEqual({ use: 'drag' })
  })

  it.each([
    ['/api/assess', {}, ['answers']],
    ['/api/assess', { answers: [] }, ['answers']],
    ['/api/assess', { answers: 'bore' }, ['answers']],
    ['/api/understand', {}, ['text']],
    ['/api/understand', { text: '  ' }, ['text']],
    ['/api/understand', { text: 7 }, ['text']],
    ['/api/understand', { text: 'x', asking: 'crank' }, ['asking']],
    ['/api/turn', {}, ['text']],
    ['/api/turn', { answers: {} }, ['text']],
    ['/api/turn', { text: 'x', answer: '4 in', asking: 'bore' }, ['answer']],
    ['/api/turn', { answer: '4 in' }, ['asking']],
    ['/api/turn', { answer: '4 in', asking: 'crank' }, ['asking']],
    ['/api/turn', { answer: '40 in', asking: 'bore' }, ['bore']],
    ['/api/turn', { answer: null, asking: 'bore' }, ['bore']],
    ['/api/turn', { answer: '900 XXX', asking: 'budget' }, ['budget']],
    ['/api/turn', { text: 'x', parked: 3 }, ['parked']],
  ])('%s %j names %j', async (path, body, named) => {
    const document = await refused(path, body, 400)
    expect(document.errors.map(({ field }) => field)).toEqual(named)
    expect(document.errors.every(({ fits }) => fits !== '')).toBe(true)
  })

  it('echo little, whatever was sent', async () => {
    const long = 'x'.repeat(5000)
    const document = await refused('/api/assess', { answers: { [long]: long } }, 400)
    expect(document.errors[0]?.field.length).toBeLessThanOrEqual(60)
    expect(document.errors[0]?.found.length).toBeLessThanOrEqual(60)
  })

  it.each([
    undefined,
    'text/plain',
    'application/x-www-form-urlencoded',
    'application/jsonp',
    'text/json',
  ])('of type %s are refused with 415', async (type) => {
    const response = await app.request('/api/assess', {
      method: 'POST',
      body: new TextEncoder().encode('{"answers":{}}'),
      ...(type === undefined ? {} : { headers: { 'content-type': type } }),
    })
    expect(response.status).toBe(415)
    expect(problemDocument.parse(await response.json()).errors[0]?.field).toBe('content-type')
  })

  it.each([
    'application/json',
    'application/json; charset=utf-8',
    'APPLICATION/JSON',
    'application/vnd.x+json',
  ])('of type %s are read', async (type) => {
    const response = await app.request('/api/understand', {
      method: 'POST',
      headers: { 'content-type': type },
      body: '{"text":"4 inch bore"}',
    })
    expect(response.status).toBe(200)
  })
})
