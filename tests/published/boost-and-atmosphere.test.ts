import { describe, expect, it } from 'vitest'
import {
  airDensity,
  compressorOutlet,
  compressorPower,
  intercoolerOutlet,
} from '../../src/mechanics/charge.ts'

const within = (found: number, published: number, share: number) =>
  expect(Math.abs(found / published - 1)).toBeLessThanOrEqual(share)

describe('a supercharged engine', () => {
  // R. K. Rajput, A Textbook of Internal Combustion Engines, Ex 16.1 p. 525, read in an open
  // companion notebook with printed outputs: 325 K, pressure ratio 1.6, efficiency 0.70,
  // mechanical 0.9, 735 kW at 0.350 kg/kWh and air/fuel 12.8, cp 1.005. T2s 371.71, T2 391.73 K,
  // density ratio 1.3275, blower 90.47 kW. Air flow grows with density.
  const outlet = compressorOutlet(325, 1.6, 0.7)

  it('heats its air as published', () => {
    // Half of the last printed digit.
    expect(Math.abs(compressorOutlet(325, 1.6, 1) - 371.71)).toBeLessThanOrEqual(0.005)
    expect(Math.abs(outlet - 391.73)).toBeLessThanOrEqual(0.005)
    const ratio = airDensity(1.6e5, outlet) / airDensity(1e5, 325)
    expect(Math.abs(ratio - 1.3275)).toBeLessThanOrEqual(0.00005)
  })

  it('drives its blower with the published power', () => {
    const flow = ((735 * 0.35 * 12.8) / 3600) * 1.3275
    within(compressorPower(flow, outlet - 325, 0.9), 90.47e3, 5e-4)
  })
})

describe('a turbocharged engine', () => {
  // Young & Freedman, University Physics, 12th ed., chapter 19: air at 1.01 bar, 15 °C,
  // 1.23 kg/m³ compressed adiabatically to 1.45 bar in a 575 cm³ cylinder; cooled back to 15 °C it
  // makes 43.6 % more, uncooled 29.5 % more; masses 1.015 and 0.916 g. The statement was read; the
  // answers are recomputed, 0.5 % for figures given to three digits.
  const t = 288.15
  const outlet = compressorOutlet(t, 1.45 / 1.01, 1)

  it.each([
    { cooling: 1, gain: 1.436, grams: 1.015 },
    { cooling: 0, gain: 1.295, grams: 0.916 },
  ])('with intercooler effectiveness $cooling gains $gain', ({ cooling, gain, grams }) => {
    const cooled = intercoolerOutlet(outlet, t, cooling)
    const denser = airDensity(1.45e5, cooled) / airDensity(1.01e5, t)
    within(denser, gain, 5e-3)
    within(1.23 * denser * 575e-6 * 1e3, grams, 5e-3)
  })
})
