import Qty from 'js-quantities'
import { unit as mathUnit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { fromSi, preferredUnit, toSi, UNITS, unitSymbol } from '../../shared/units.ts'

/**
 * Each unit as js-quantities 1.8.0 and mathjs 15.2.0 write it, with the SI unit of its
 * dimension. Where a library has no such unit, the reason stands in its place.
 */
const OUTSIDE: Readonly<Record<string, { qty?: [string, string]; math?: [string, string] }>> = {
  in: { qty: ['in', 'm'], math: ['in', 'm'] },
  mm: { qty: ['mm', 'm'], math: ['mm', 'm'] },
  'cu in': { qty: ['in^3', 'm^3'], math: ['cuin', 'm^3'] },
  L: { qty: ['l', 'm^3'], math: ['L', 'm^3'] },
  cc: { qty: ['cm^3', 'm^3'], math: ['cc', 'm^3'] },
  g: { qty: ['g', 'kg'], math: ['g', 'kg'] },
  kg: { qty: ['kg', 'kg'], math: ['kg', 'kg'] },
  lb: { qty: ['lb', 'kg'], math: ['lbm', 'kg'] },
  oz: { qty: ['oz', 'kg'], math: ['oz', 'kg'] },
  'lb ft': { qty: ['lbf*ft', 'N*m'], math: ['lbf ft', 'N m'] },
  'N m': { qty: ['N*m', 'N*m'], math: ['N m', 'N m'] },
  psi: { qty: ['psi', 'Pa'], math: ['psi', 'Pa'] },
  bar: { qty: ['bar', 'Pa'], math: ['bar', 'Pa'] },
  kPa: { qty: ['kPa', 'Pa'], math: ['kPa', 'Pa'] },
  MPa: { qty: ['MPa', 'Pa'], math: ['MPa', 'Pa'] },
  // mathjs rounds its horsepower to 745.6998715386 W; 550 ft lbf/s says more figures.
  hp: { math: ['ft lbf/s', 'W'] },
  kW: { qty: ['kW', 'W'], math: ['kW', 'W'] },
  rpm: { math: ['cycle/minute', 'rad/s'] },
  lbf: { qty: ['lbf', 'N'], math: ['lbf', 'N'] },
  kN: { qty: ['kN', 'N'], math: ['kN', 'N'] },
  'm/s': { qty: ['m/s', 'm/s'], math: ['m/s', 'm/s'] },
  'ft/min': { qty: ['ft/min', 'm/s'], math: ['ft/minute', 'm/s'] },
  '%': {},
}
/**
 * Relative tolerance where a library keeps fewer figures than the definitions give:
 * half of the last figure that stands in its table. Elsewhere both must agree to 1e-12.
 */
const MATH_KEEPS: Readonly<Record<string, number>> = { psi: 1e-10 } // 6894.75729276459, see its Unit.js
const QTY_KEEPS: Readonly<Record<string, number>> = {
  oz: 1e-9, // 0.0283495231
  lbf: 1.2e-6, // 4.448222
  'lb ft': 1.2e-6,
  psi: 7.3e-7, // 6894.76
}
/** How many of the outside unit make one of ours. */
const TIMES: Readonly<Record<string, number>> = { hp: 550 }

describe('units', () => {
  it('names an outside unit for each of ours', () => {
    expect(Object.keys(OUTSIDE).sort()).toEqual(Object.keys(UNITS).sort())
  })

  it.each(Object.entries(OUTSIDE).filter(([, { math }]) => math))(
    '%s is what mathjs says',
    (symbol, { math }) => {
      const [from, si] = math as [string, string]
      const outside = mathUnit(TIMES[symbol] ?? 1, from).toNumber(si)
      expect(relative(toSi(1, symbol), outside)).toBeLessThan(MATH_KEEPS[symbol] ?? 1e-12)
    },
  )

  it.each(Object.entries(OUTSIDE).filter(([, { qty }]) => qty))(
    '%s is what js-quantities says',
    (symbol, { qty }) => {
      const [from, si] = qty as [string, string]
      const outside = Qty(1, from).to(si).scalar
      expect(relative(toSi(1, symbol), outside)).toBeLessThan(QTY_KEEPS[symbol] ?? 1e-12)
    },
  )

  // NIST SP 811 (2008), Appendix B.8, to the seven figures printed there; bold ones are exact.
  it.each([
    ['in', 2.54e-2],
    ['cu in', 1.638706e-5],
    ['lb', 4.535924e-1],
    ['oz', 2.834952e-2],
    ['lb ft', 1.355818],
    ['psi', 6.894757e3],
    ['hp', 7.456999e2],
    ['lbf', 4.448222],
    ['ft/min', 5.08e-3],
    ['rpm', 1.047198e-1],
  ])('%s is the factor of NIST SP 811', (symbol, factor) => {
    expect(Number(toSi(1, symbol).toPrecision(7))).toBe(factor)
  })

  it.each(Object.keys(UNITS))('%s goes to SI and back', (symbol) => {
    for (const value of [1e-6, 0.1, 1, 4.03, 6500, 1e9]) {
      expect(relative(fromSi(toSi(value, symbol), symbol), value)).toBeLessThan(4e-16)
    }
  })

  it('takes a percent for a hundredth', () => expect(toSi(8.25, '%')).toBeCloseTo(0.0825, 15))

  it('reads every alias, in any case and spacing', () => {
    for (const [symbol, { aliases }] of Object.entries(UNITS)) {
      for (const written of [symbol, symbol.toUpperCase(), ` ${symbol} `, ...aliases]) {
        expect([written, unitSymbol(written)]).toEqual([written, symbol])
      }
    }
  })

  it('gives no spelling to two units', () => {
    const spellings = Object.entries(UNITS).flatMap(([symbol, { aliases }]) => [
      ...new Set([symbol, ...aliases].map((text) => text.replace(/[\s.·]/g, '').toLowerCase())),
    ])
    expect(spellings.filter((one, at) => spellings.indexOf(one) !== at)).toEqual([])
  })

  it.each(['furlong', '', '__proto__', 'constructor', 'toString', 'mm2'])(
    'refuses “%s”',
    (text) => {
      expect(unitSymbol(text)).toBeUndefined()
      expect(() => toSi(1, text)).toThrow(RangeError)
      expect(() => fromSi(1, text)).toThrow(RangeError)
      expect(preferredUnit(text, 'us')).toBe(text)
    },
  )

  it('shows each dimension in the units of a system', () => {
    expect(
      ['mm', 'bar', 'N m', 'kW', 'kN', 'rpm', '%'].map((unit) => preferredUnit(unit, 'us')),
    ).toEqual(['in', 'psi', 'lb ft', 'hp', 'lbf', 'rpm', '%'])
    expect(
      ['in', 'psi', 'lb ft', 'hp', 'lbf', 'cc'].map((unit) => preferredUnit(unit, 'metric')),
    ).toEqual(['mm', 'bar', 'N m', 'kW', 'kN', 'L'])
  })
})

function relative(found: number, wanted: number): number {
  return Math.abs(found / wanted - 1)
}
