import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evenDecimals, LENGTHS } from '../../shared/even-decimals.ts'
import { printFigure, printFixed, printNumber } from '../../shared/print.ts'

const nb = (text: string) => text.replaceAll('_', '\u00a0')

describe('evenDecimals', () => {
  it.each([
    { texts: ['4.03_in', '4_in', '0.927_in'], even: ['4.030_in', '4.000_in', '0.927_in'] },
    { texts: ['9.71_bar', '112_N m', '48_bar'], even: ['9.71_bar', '112_N m', '48.00_bar'] },
    { texts: ['0.2', '1.52', '−3'], even: ['0.20', '1.52', '−3.00'] },
    { texts: ['at most 0.0005_in', '±0.00014_in'], even: ['at most 0.00050_in', '±0.00014_in'] },
    { texts: ['0.0018 to 0.0024_in', '0.00205_in'], even: ['0.00180 to 0.00240_in', '0.00205_in'] },
    { texts: ['17°, 2,500_rpm', '9.5°'], even: ['17.0°, 2,500_rpm', '9.5°'] },
    { texts: ['1/2-13', '9.2:1', 'V8', '4.5'], even: ['1/2-13', '9.2:1', 'V8', '4.5'] },
    { texts: ['1,850 to 2,130_USD', '0_USD'], even: ['1,850 to 2,130_USD', '0_USD'] },
  ])('of $texts', ({ texts, even }) => {
    expect(evenDecimals(texts.map(nb))).toEqual(even.map(nb))
  })

  it('leaves figures of other units alone when some are named', () => {
    expect(evenDecimals(['4_in', '4.03_in', '5_bar', '5.5_bar'].map(nb), LENGTHS)).toEqual(
      ['4.00_in', '4.03_in', '5_bar', '5.5_bar'].map(nb),
    )
  })

  it('changes no value, and gives every figure of a unit the same decimals', () => {
    const figure = fc.tuple(fc.integer({ min: -99999, max: 99999 }), fc.nat({ max: 4 }))
    fc.assert(
      fc.property(fc.array(figure, { minLength: 1 }), (figures) => {
        const texts = figures.map(([n, places]) => printFigure(n / 10 ** places, 'in', 4))
        const even = evenDecimals(texts)
        const value = (text: string) =>
          Number(text.replace('\u00a0in', '').replaceAll(',', '').replace('−', '-'))
        expect(even.map(value)).toEqual(texts.map(value))
        const decimals = even.map((text) => /\.(\d+)/.exec(text)?.[1]?.length ?? 0)
        expect(new Set(decimals).size).toBe(1)
      }),
    )
  })
})

describe('printFixed', () => {
  it('keeps the noughts that printNumber drops', () => {
    expect([printFixed(4, 2), printNumber(4, 2)]).toEqual(['4.00', '4'])
    expect([printFixed(-1234.5, 3), printFixed(-0.0001, 2)]).toEqual(['−1,234.500', '0.00'])
    expect(printFixed(12, 0)).toBe('12')
  })
})
