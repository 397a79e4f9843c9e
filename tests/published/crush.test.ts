import { describe, expect, it } from 'vitest'
import { crush } from '../../src/mechanics/crush.ts'

const PSI = 6894.757293168361
const INCH = 0.0254

describe('the housing as a thick ring', () => {
  // Source: press fit of a solid steel shaft, Shigley's Mechanical Engineering Design, 9th ed.,
  // section 3–16: p = E δ/(2R)·[1 − (R/r_o)²]. E 30e6 psi, R 0.5 in, r_o 1.0 in, δ 0.0005 in give
  // 11 250 psi; of δ the solid shaft takes p R (1 − ν)/E, the ring the rest. Worked to 0.01 %.
  it('grows under pressure as the press-fit formula says', () => {
    const seat = crush({
      housingBore: 1 * INCH,
      overstand: 0.0003 * INCH,
      wall: 0.05 * INCH,
      width: INCH,
      housing: { outside: 2 * INCH, modulus: 30e6 * PSI, poisson: 0.292 },
    })
    const shaft = (11_250 * 0.5 * (1 - 0.292)) / 30e6
    const ring = (0.0005 - shaft) * 2 * INCH
    const grown = (seat.housingGrowth / seat.pressure) * 11_250 * PSI
    expect(Math.abs(grown / ring - 1)).toBeLessThan(1e-4)
  })
})
