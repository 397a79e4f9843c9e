import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readJson } from '../../src/api/json-body.ts'

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
