import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isField, SINGLE_FIELDS, TABLES } from '../../src/shop-sheet/fields.ts'
import {
  keptText,
  type Measured,
  measuredFrom,
  measuredQuery,
} from '../../src/shop-sheet/link-code.ts'
import { readingsOf, readLength } from '../../src/shop-sheet/readings.ts'
import { goodBlock } from '../check-in/case.ts'

const names = [
  ...TABLES.flatMap(({ id, columns }) =>
    [1, 2, 7].flatMap((row) => columns.map((column) => `${id}.${row}.${column.id}`)),
  ),
  ...SINGLE_FIELDS.map(({ id }) => id),
]
const texts = fc.stringMatching(/^[0-9.,+-]{1,12}$/)
const measured = fc.record({
  unit: fc.constantFrom('in' as const, 'mm' as const),
  fields: fc.dictionary(fc.constantFrom(...names), texts, { minKeys: 1, noNullPrototype: true }),
})

function through(one: Measured, usual: 'in' | 'mm' = 'in'): Measured {
  return measuredFrom(new Map(new URLSearchParams(measuredQuery(one))), usual)
}

describe('measurements in a link', () => {
  it('come back as they were typed', () => {
    fc.assert(
      fc.property(measured, (one) => {
        expect(through(one)).toEqual(one)
        expect(measuredQuery(through(one))).toBe(measuredQuery(one))
      }),
    )
  })

  it('are nothing when nothing was measured, and then take the usual unit', () => {
    expect(measuredQuery({ unit: 'mm', fields: {} })).toBe('')
    expect(through({ unit: 'mm', fields: {} }, 'mm')).toEqual({ unit: 'mm', fields: {} })
  })

  it('never keep half a character, however long the text is', () => {
    for (const text of [`${'a'.repeat(15)}🙂`, '🙂'.repeat(100), 'x\ud83d', '\ude42x']) {
      for (const name of names) {
        const kept = keptText(name, text)
        expect(() => encodeURIComponent(kept)).not.toThrow()
        expect(keptText(name, kept)).toBe(kept)
      }
    }
  })

  it('leave a whole block short enough for any browser', () => {
    expect(measuredQuery(goodBlock()).length).toBeLessThan(1500)
  })

  it('keep words with signs of their own, and never more than fits', () => {
    const fields = { blockMark: 'A~1_2 & 3=4 <b>', capMark: 'x'.repeat(500) }
    const back = through({ unit: 'in', fields })
    expect(back.fields.blockMark).toBe('A 1 2 & 3=4 <b>')
    expect(back.fields.capMark).toHaveLength(80)
  })

  it('ignore what is no field', () => {
    const other = new Map([
      ['m.housing', '1_2~3'],
      ['m.nonsense', '4'],
      ['m.unit', 'furlong'],
      ['housing', '5'],
    ])
    expect(measuredFrom(other, 'mm')).toEqual({
      unit: 'mm',
      fields: { 'housing.1.fv': '1', 'housing.1.fl': '2', 'housing.2.fv': '3' },
    })
    expect(['housing.0.fv', 'housing.1.zz', '__proto__', 'housing.1', 'x.1.fv'].some(isField)).toBe(
      false,
    )
  })
})

describe('readLength', () => {
  it.each([
    ['2.6412', 'in', 0.06708648],
    ['.0005', 'in', 0.0000127],
    ['67,09', 'mm', 0.06709],
    ['67.09 mm', 'in', 0.06709],
    ['2.6412"', 'mm', 0.06708648],
    ['−0.001', 'in', -0.0000254],
    ['+1', 'mm', 0.001],
  ] as const)('reads %s among %s', (text, unit, metres) => {
    const read = readLength(text, unit)
    expect('value' in read && Math.abs(read.value - metres)).toBeLessThan(1e-15)
  })

  it.each(['', 'two', '1.2.3', '5 lb', '1e3', '1_000'])('refuses %j', (text) => {
    expect(readLength(text, 'in')).toHaveProperty('wrong')
  })

  it('takes a minus only where something can lie below nought', () => {
    const fields = {
      'housing.1.fv': '-1',
      'line.1.y': '-.001',
      deckBefore: '-.005',
      shellWall: '-1',
    }
    const { wrong, length } = readingsOf({ unit: 'in', fields })
    expect(wrong.map(({ field }) => field)).toEqual(['housing.1.fv', 'shellWall'])
    expect([length('line.1.y'), length('deckBefore')].every((value) => (value ?? 0) < 0)).toBe(true)
  })
})
