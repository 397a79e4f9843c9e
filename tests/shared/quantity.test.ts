import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAnswer, readAnswers, withAnswer } from '../../shared/answers.ts'
import { FACT_KEYS, fact, isFactKey, isQuantity, unitsFor } from '../../shared/fact-keys.ts'
import { describeFound, problemSentence } from '../../shared/problem.ts'
import { readDecimal } from '../../shared/quantity.ts'
import { anyAnswer } from '../support/answers.ts'

const ok = (key: string, raw: unknown) => {
  const read = readAnswer(key as 'bore', raw)
  return 'ok' in read ? read.ok : read.problem
}

describe('reading one answer', () => {
  it.each([
    ['bore', '4.03 in', { value: 4.03, unit: 'in' }],
    ['bore', '4.03in', { value: 4.03, unit: 'in' }],
    ['bore', '4.03"', { value: 4.03, unit: 'in' }],
    ['bore', ' 102.4 MM ', { value: 102.4, unit: 'mm' }],
    ['bore', { value: 4.03, unit: 'inches' }, { value: 4.03, unit: 'in' }],
    [
      'bore',
      { value: 4, low: 3.9, high: 4.1, unit: 'in' },
      { value: 4, low: 3.9, high: 4.1, unit: 'in' },
    ],
    ['boost', '12~10~14psi', { value: 12, low: 10, high: 14, unit: 'psi' }],
    ['peakRpm', '6,500 rpm', { value: 6500, unit: 'rpm' }],
    ['invested', '12,500 USD', { value: 12500, currency: 'USD' }],
    ['invested', { value: 950, currency: 'USD' }, { value: 950, currency: 'USD' }],
    ['compressionRatio', 10.5, 10.5],
    ['compressionRatio', '10.5', 10.5],
    ['compressionRatio', '10.5:1', 10.5],
    ['compressionRatio', { value: 10.5 }, 10.5],
    ['compressionRatio', { value: 10.5, low: 10, high: 11 }, { value: 10.5, low: 10, high: 11 }],
    ['displacement', '5.7 litres', { value: 5.7, unit: 'L' }],
    ['fastenerTorque', '85 ft-lbs', { value: 85, unit: 'lb ft' }],
    ['fastenerThread', '7/16-14 UNC', '7/16-14'],
    ['fastenerThread', '.500-13', '1/2-13'],
    ['fastenerThread', 'm11 x 1.25', 'M11x1.25'],
    ['taxRate', '8.25%', { value: 8.25, unit: '%' }],
    ['use', 'street', 'street'],
  ])('%s takes %j', (key, raw, answer) => expect(ok(key, raw)).toEqual(answer))

  it.each(FACT_KEYS)('%s may be unknown', (key) => expect(ok(key, 'unknown')).toBe('unknown'))

  it.each([
    // The issue's own cases.
    ['bore', '-4 in', 'out-of-range'],
    ['bore', { value: -4, unit: 'in' }, 'out-of-range'],
    ['bore', '40 in', 'out-of-range'],
    ['bore', '4.03 psi', 'unit-unknown'],
    ['bore', '4.03 furlongs', 'unit-unknown'],
    ['bore', 4.03, 'unit-missing'],
    ['bore', '4.03', 'unit-missing'],
    ['compressionRatio', '3:1', 'out-of-range'],
    ['compressionRatio', '40:1', 'out-of-range'],
    ['compressionRatio', 3, 'out-of-range'],
    ['compressionRatio', 40, 'out-of-range'],
    // Numbers that are none.
    ['compressionRatio', Number.NaN, 'not-a-number'],
    ['compressionRatio', Number.POSITIVE_INFINITY, 'not-a-number'],
    ['compressionRatio', { value: Number.NaN }, 'not-a-number'],
    ['bore', { value: Number.NaN, unit: 'in' }, 'not-a-number'],
    ['bore', { value: Number.NEGATIVE_INFINITY, unit: 'in' }, 'not-a-number'],
    ['bore', { value: '4', unit: 'in' }, 'not-a-number'],
    ['bore', { value: null, unit: 'in' }, 'not-a-number'],
    ['bore', { unit: 'in' }, 'not-a-number'],
    ['bore', '1e999 in', 'not-a-number'],
    ['bore', 'NaN in', 'not-a-number'],
    ['bore', 'Infinity in', 'not-a-number'],
    ['bore', '0x4 in', 'unit-unknown'],
    ['bore', '4..03 in', 'not-a-number'],
    ['bore', '4,03 in', 'not-a-number'],
    ['peakRpm', '65,00 rpm', 'not-a-number'],
    ['peakRpm', '6,5000 rpm', 'not-a-number'],
    ['bore', '٤ in', 'not-a-number'],
    ['bore', '４.０３ in', 'not-a-number'],
    ['bore', '4\u0000 in', 'unit-unknown'],
    ['bore', '4 i\u200bn', 'unit-unknown'],
    ['bore', '😀', 'not-a-number'],
    ['bore', '', 'not-a-number'],
    // Shapes.
    ['bore', null, 'not-a-number'],
    ['bore', true, 'not-a-number'],
    ['bore', [4.03, 'in'], 'not-a-number'],
    ['bore', { value: 4, unit: 7 }, 'unit-unknown'],
    ['bore', { value: 4, unit: 'in', note: 'x' }, 'unknown-field'],
    ['bore', { value: 4, low: 4.1, high: 4.2, unit: 'in' }, 'range-reversed'],
    ['bore', { value: 4, low: 3.9, high: 3.95, unit: 'in' }, 'range-reversed'],
    ['bore', { value: 4, low: 1, high: 4.2, unit: 'in' }, 'out-of-range'],
    ['boost', '12~10 psi', 'unit-unknown'],
    ['invested', 6000, 'currency-missing'],
    ['invested', '6000', 'currency-missing'],
    ['invested', '6000 usd', 'currency-missing'],
    ['invested', '6000 dollars', 'currency-missing'],
    ['invested', '-5 USD', 'out-of-range'],
    ['use', 'Street', 'not-a-choice'],
    ['use', 'toString', 'not-a-choice'],
    ['use', '__proto__', 'not-a-choice'],
    ['use', 1, 'not-a-choice'],
    ['use', { value: 'street' }, 'not-a-choice'],
    ['fastenerThread', 'M11', 'not-a-thread'],
    ['fastenerThread', 11, 'not-a-thread'],
    ['use', 'x'.repeat(81), 'too-long'],
  ])('%s refuses %j: %s', (key, raw, code) => {
    const read = readAnswer(key as 'bore', raw)
    if ('ok' in read) expect.fail(`took ${JSON.stringify(read.ok)}`)
    expect(read.problem.code).toBe(code)
    expect(read.problem.field === key || read.problem.field.startsWith(`${key}.`)).toBe(true)
    expect(read.problem.fits).not.toBe('')
  })

  it('names the units that fit when a plain number comes', () => {
    expect(ok('bore', 4.03)).toMatchObject({
      found: '4.03',
      fits: expect.stringContaining('in, mm'),
    })
  })

  it('names the range in the usual unit, whatever unit was given', () => {
    expect(ok('bore', '1016 mm')).toMatchObject({ found: '40 in', fits: 'give 2 to 5.9 in' })
  })

  it('takes both ends of every range, in every unit of it', () => {
    for (const key of FACT_KEYS) {
      const entry = fact(key)
      if (!isQuantity(entry)) continue
      const usual = entry.units[0] as string
      for (const end of [entry.low, entry.high]) {
        expect(ok(key, { value: end, unit: usual })).toEqual({ value: end, unit: usual })
      }
      expect(ok(key, { value: entry.high * 1.001 + 1e-6, unit: usual })).toMatchObject({
        code: 'out-of-range',
      })
    }
  })

  it('reads what it made: canonical answers are fixed points', () => {
    for (const key of FACT_KEYS) {
      fc.assert(
        fc.property(anyAnswer(key), (answer) => {
          expect(ok(key, answer)).toEqual(answer)
        }),
        { numRuns: 30 },
      )
    }
  })

  it('never throws, and never takes what it cannot print again', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FACT_KEYS), fc.anything(), (key, raw) => {
        const read = readAnswer(key, raw)
        if ('ok' in read) expect(ok(key, read.ok)).toEqual(read.ok)
        else expect(read.problem.fits.length).toBeGreaterThan(0)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('reading a record of answers', () => {
  it('keeps the good ones whatever the others are', () => {
    const raw = JSON.parse(
      '{"bore":"4 in","stroke":"-1 in","crank":1,"__proto__":{"use":"drag"},"use":"street"}',
    )
    const { answers, problems } = readAnswers(raw)
    expect(answers).toEqual({ bore: { value: 4, unit: 'in' }, use: 'street' })
    expect(problems.map(({ field, code }) => [field, code])).toEqual([
      ['stroke', 'out-of-range'],
      ['crank', 'unknown-fact'],
      ['__proto__', 'unknown-fact'],
    ])
  })

  it.each([null, 'x', 4, [], undefined])('refuses %j as a record', (raw) => {
    expect(readAnswers(raw)).toMatchObject({ answers: {}, problems: [{ field: 'answers' }] })
  })

  it('orders them as the dictionary does, whatever the order they came in', () => {
    const { answers } = readAnswers({ use: 'street', bore: '4 in', layout: 'inline-4' })
    expect(Object.keys(answers)).toEqual(['layout', 'bore', 'use'])
    expect(Object.keys(withAnswer(answers, 'stroke', 'unknown'))).toEqual([
      'layout',
      'bore',
      'stroke',
      'use',
    ])
    expect(withAnswer(answers, 'bore', undefined)).toEqual({ layout: 'inline-4', use: 'street' })
  })

  it.each(['__proto__', 'constructor', 'toString', 'Bore', '', 'bore '])(
    '%j is no fact',
    (word) => {
      expect(isFactKey(word)).toBe(false)
    },
  )
})

describe('the smaller parts', () => {
  it.each([
    ['6,500', 6500],
    ['1,234,567.5', 1234567.5],
    ['.030', 0.03],
    ['4.', 4],
    ['-3', -3],
    ['1e3', 1000],
    ['1e-3', 0.001],
  ])('the decimal %s is %d', (text, value) => expect(readDecimal(text)).toBe(value))

  it.each(['', '.', '-', '1e', '1e999', '1e+3', '0x10', '1 000', '1,23', ',5', '1.2.3', 'NaN'])(
    '%j is no decimal',
    (text) => expect(readDecimal(text)).toBeUndefined(),
  )

  it('describes what was found in few characters', () => {
    expect(describeFound(Number.NaN)).toBe('NaN')
    expect(describeFound(Number.POSITIVE_INFINITY)).toBe('Infinity')
    expect(describeFound(undefined)).toBe('undefined')
    expect(describeFound({ a: 1 })).toBe('{"a":1}')
    expect(describeFound('x'.repeat(1000))).toHaveLength(60)
    expect(
      problemSentence({ field: 'bore', code: 'not-a-number', found: '', fits: 'give one' }),
    ).toBe('bore: found nothing; give one')
  })

  it('puts the units of a person’s system first and drops none', () => {
    for (const key of FACT_KEYS) {
      const entry = fact(key)
      if (!isQuantity(entry)) continue
      for (const system of ['us', 'metric'] as const) {
        expect([...unitsFor(entry, system)].sort()).toEqual([...entry.units].sort())
      }
    }
    const torque = fact('fastenerTorque')
    expect(isQuantity(torque) && unitsFor(torque, 'metric')[0]).toBe('N m')
    expect(isQuantity(torque) && unitsFor(torque, 'us')[0]).toBe('lb ft')
  })
})
