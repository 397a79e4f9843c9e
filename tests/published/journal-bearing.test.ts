import { describe, expect, it } from 'vitest'
import { journalBearing } from '../../src/mechanics/journal-bearing.ts'

const INCH = 0.0254
const PSI = 6894.757293168361

describe('published journal bearings', () => {
  // Source: Shigley's Mechanical Engineering Design, 9th ed., example 12–1 (inputs as quoted
  // elsewhere): μ 4 µreyn, 30 rev/s, 500 lbf, r 0.75 in, c 0.0015 in, l 1.5 in; S 0.135
  // to half a digit.
  it('example 12–1, in inches', () => {
    const bearing = journalBearing({
      radius: 0.75 * INCH,
      radialClearance: 0.0015 * INCH,
      width: 1.5 * INCH,
      viscosity: 4e-6 * PSI,
      speed: 30 * 2 * Math.PI,
      load: 500 * 4.4482216152605,
    })
    expect(Math.abs(bearing.sommerfeld - 0.135)).toBeLessThanOrEqual(5e-4)
  })

  // Source: solutions to the same book, problem 12–1, read: d 25 mm, l 12.5 mm, c 0.015 mm,
  // 1.2 kN, 55 mPa s, 1100 rpm; P 3.84 MPa, S 0.182, to half a digit.
  it('problem 12–1, in millimetres', () => {
    const bearing = journalBearing({
      radius: 0.0125,
      radialClearance: 0.000015,
      width: 0.0125,
      viscosity: 0.055,
      speed: (1100 / 60) * 2 * Math.PI,
      load: 1200,
    })
    expect(Math.abs(bearing.unitLoad / 1e6 - 3.84)).toBeLessThanOrEqual(0.005)
    expect(Math.abs(bearing.sommerfeld - 0.182)).toBeLessThanOrEqual(5e-4)
  })

  // Source: worked example 17–2 of a machine design textbook (Jindal), read in an open notebook:
  // l = d = 60 mm, c 0.04 mm, 6000 N, 1260 rpm, 6.293 cP; S 0.0446 from the chart at h₀/c 0.2.
  it('example 17–2, with the viscosity that it asks for', () => {
    const { sommerfeld } = journalBearing({
      radius: 0.03,
      radialClearance: 0.00004,
      width: 0.06,
      viscosity: 6.293e-3,
      speed: (1260 / 60) * 2 * Math.PI,
      load: 6000,
    })
    expect(Math.abs(sommerfeld / 0.0446 - 1)).toBeLessThan(5e-4)
  })
})
