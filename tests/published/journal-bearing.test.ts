import { describe, expect, it } from 'vitest'
import { journalBearing, viscosityFor } from '../../src/mechanics/journal-bearing.ts'
import { oilFilm, oilFilmFor } from '../../src/mechanics/oil-film.ts'

const INCH = 0.0254
const PSI = 6894.757293168361

describe('published journal bearings', () => {
  // Source: Shigley's Mechanical Engineering Design, 9th ed., example 12–1 (inputs as quoted
  // elsewhere): μ 4 µreyn, 30 rev/s, 500 lbf, r 0.75 in, c 0.0015 in, l 1.5 in; S 0.135,
  // h₀/c 0.42, ε 0.58. S to half a digit; 3 % on readings from its chart.
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
    const film = oilFilmFor(bearing.sommerfeld, 1)
    expect(Math.abs(film.leastFilm / 0.42 - 1)).toBeLessThan(0.03)
  })

  // Source: solutions to the same book, problem 12–1, read: d 25 mm, l 12.5 mm, c 0.015 mm,
  // 1.2 kN, 55 mPa s, 1100 rpm; P 3.84 MPa, S 0.182, h₀/c 0.30, f r/c 5.4, torque 0.0972 N m,
  // loss 11.2 W. S to half a digit; 5 % on readings from charts at l/d ½.
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
    const film = oilFilmFor(bearing.sommerfeld, 0.5)
    expect(Math.abs(film.leastFilm / 0.3 - 1)).toBeLessThan(0.05)
    expect(Math.abs(film.friction / 5.4 - 1)).toBeLessThan(0.05)
    const torque = ((film.friction * 0.000015) / 0.0125) * 1200 * 0.0125
    expect(Math.abs(torque / 0.0972 - 1)).toBeLessThan(0.05)
    expect(Math.abs((torque * 1100 * 2 * Math.PI) / 60 / 11.2 - 1)).toBeLessThan(0.05)
  })

  // Source: worked example 17–2 of a machine design textbook (Jindal), read in an open notebook:
  // l = d = 60 mm, c 0.04 mm, 6000 N, 1260 rpm, S 0.0446 from the chart at h₀/c 0.2; 6.293 cP.
  it('viscosity for a film one fifth of the clearance', () => {
    const viscosity = viscosityFor(0.0446, {
      radius: 0.03,
      radialClearance: 0.00004,
      width: 0.06,
      speed: (1260 / 60) * 2 * Math.PI,
      load: 6000,
    })
    expect(Math.abs((viscosity * 1000) / 6.293 - 1)).toBeLessThan(5e-4)
  })
})

describe('Raimondi and Boyd’s table for l/d = 1', () => {
  // Source: Raimondi & Boyd, ASLE Trans. 1 (1958), rows as reprinted in the same notebook:
  // h₀/c 0.6, 0.4, 0.2 at S 0.264, 0.121, 0.0446; friction variable 5.79 and 3.22. 2 %: a grid of
  // 144 by 20 against one of theirs.
  it.each([
    { leastFilm: 0.6, sommerfeld: 0.264, friction: 5.79 },
    { leastFilm: 0.4, sommerfeld: 0.121, friction: 3.22 },
    { leastFilm: 0.2, sommerfeld: 0.0446, friction: undefined },
  ])('h₀/c $leastFilm', ({ leastFilm, sommerfeld, friction }) => {
    const film = oilFilm(1 - leastFilm, 1)
    expect(Math.abs(film.sommerfeld / sommerfeld - 1)).toBeLessThan(0.02)
    if (friction) expect(Math.abs(film.friction / friction - 1)).toBeLessThan(0.02)
  })
})
