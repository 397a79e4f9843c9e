import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { convert, printAnswer, printFigure, printMoney, printNumber } from '../../shared/print.ts'

describe('printing', () => {
  it.each([
    [0, 2, '0'],
    [-0.001, 2, '0'],
    [-0.006, 2, '−0.01'],
    [4.03, 4, '4.03'],
    [6500, 0, '6,500'],
    [999.96, 1, '1,000'],
    [1234567.891, 2, '1,234,567.89'],
    [-12000, 0, '−12,000'],
    [100, 2, '100'],
    [1000.5, 1, '1,000.5'],
  ])('%d to %d places is %s', (value, decimals, text) => {
    expect(printNumber(value, decimals)).toBe(text)
  })

  it('says the number that it was given, to the places asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), fc.nat(6), (value, decimals) => {
        const read = Number(printNumber(value, decimals).replaceAll(',', '').replace('−', '-'))
        // Half of the last place, and the last bit of a double near 1e9.
        expect(Math.abs(read - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 2e-7)
      }),
    )
  })

  it('puts a space that does not break before a unit, and none before a percent', () => {
    expect(printFigure(4.03, 'in')).toBe('4.03\u00a0in')
    expect(printFigure(8.25, '%')).toBe('8.25%')
    expect(printFigure(1.25, '')).toBe('1.25')
    expect(printFigure(45.123, 'kN')).toBe('45.1\u00a0kN')
    expect(printMoney(1449.6, 'USD')).toBe('1,450\u00a0USD')
  })

  it.each([
    ['bore', { value: 4.03, unit: 'in' }, '4.03\u00a0in'],
    ['boost', { value: 12, low: 10, high: 14, unit: 'psi' }, '12 (10 to 14)\u00a0psi'],
    ['invested', { value: 6000, currency: 'USD' }, '6,000\u00a0USD'],
    ['compressionRatio', 10.5, '10.5:1'],
    ['compressionRatio', { value: 10.5, low: 10, high: 11 }, '10.5 (10 to 11):1'],
    ['taxRate', { value: 8.25, unit: '%' }, '8.25%'],
    ['layout', 'v8-cross-plane', 'V8, cross-plane crank'],
    ['bore', 'unknown', 'not known'],
    ['fastenerThread', '7/16-14', '7/16-14'],
  ] as const)('the answer %s %j is “%s”', (key, answer, text) => {
    expect(printAnswer(key, answer)).toBe(text)
  })

  it('tells “unknown” as a choice from a question that was not answered', () => {
    expect(printAnswer('capHistory', 'unknown')).not.toBe('')
    expect(printAnswer('use', 'unknown')).toBe('not known')
  })

  it('converts by the exact inch', () => {
    // 25.4 mm is an exact inch since 1959; the bore 4 in is 101.6 mm to the last bit but one.
    expect(Math.abs(convert(4, 'in', 'mm') - 101.6)).toBeLessThan(1e-12)
  })
})
