import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LARGEST_BODY, readJson } from '../../src/api/json-body.ts'
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

describe('large bodies', () => {
  const big = JSON.stringify({ answers: {}, note: 'x'.repeat(LARGEST_BODY) })

  it.each(['/api/assess', '/api/understand', '/api/turn'])(
    '%s: 413 by content-length',
    async (path) => {
      const response = await app.request(path, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'content-length': String(big.length) },
        body: big,
      })
      expect(response.status).toBe(413)
      expect(problemDocument.parse(await response.json()).errors[0]?.fits).toContain(
        String(LARGEST_BODY),
      )
      expect(response.headers.get('access-control-allow-origin')).toBe('*')
    },
  )

  it('413 when it comes in pieces and says no length, and the rest is not read', async () => {
    let sent = 0
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += 16_384
        if (sent > 64 * LARGEST_BODY) controller.close()
        else controller.enqueue(new Uint8Array(16_384).fill(0x20))
      },
    })
    const request = new Request('http://localhost/api/assess', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
      duplex: 'half',
    } as RequestInit)
    const response = await app.request(request)
    expect(response.status).toBe(413)
    expect(problemDocument.parse(await response.json()).type).toBe('/problems/body-too-large')
    // One chunk over the limit and what the stream itself keeps ready.
    expect(sent).toBeLessThan(4 * LARGEST_BODY)
  })

  it('a megabyte is refused by length alone', async () => {
    const response = await app.request('/api/assess', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'content-length': '1048576' },
      body: ' '.repeat(1_048_576),
    })
    expect(response.status).toBe(413)
    expect(response.headers.get('content-type')).toBe('application/problem+json')
  })
})

describe('readJson', () => {
  it('reads any JSON as JSON.parse does, or names what is wrong', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), fc.constantFrom(undefined, 2), (value, indent) => {
        const text = JSON.stringify(value, null, indent)
        const read = readJson(text)
        if ('problems' in read)
          expect(read.problems.every(({ code }) => code === 'unknown-field')).toBe(true)
        else expect(read.ok).toEqual(JSON.parse(text))
      }),
      { numRuns: 300 },
    )
  })

  it('never throws, whatever the text', () => {
    const piece = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      '"',
      '\\',
      ':',
      ',',
      'a',
      '1',
      ' ',
      '\u2028',
      '__proto__',
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const read = readJson(pieces.join(''))
        expect('ok' in read || read.problems.length > 0).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })

  it('lists no more faults than a person can read', () => {
    const text = `{${'"a":1,'.repeat(500)}"a":1}`
    const read = readJson(text)
    expect('problems' in read && read.problems).toHaveLength(20)
  })
})
