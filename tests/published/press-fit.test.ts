import { describe, expect, it } from 'vitest'
import { pressFitHoop, pressFitPressure } from '../../src/mechanics/press-fit.ts'
import { wallPressure } from '../../src/mechanics/register.ts'

const INCH = 0.0254
const PSI = 4.4482216152605 / INCH ** 2

const steel = {
  innerModulus: 30e6 * PSI,
  innerPoisson: 0.292,
  outerModulus: 30e6 * PSI,
  outerPoisson: 0.292,
}

describe('a solid steel pin in a steel ring', () => {
  // Source: Shigley, 9th ed., eq 3–57 for one material, p = E δ/(2R)·(1 − (R/ro)²): R 0.5, ro 1,
  // δ 0.0005 in, E 30 Mpsi: 11 250 psi; hoop 18 750 psi. Form read, numbers worked by hand.
  const fit = {
    ...steel,
    radius: 0.5 * INCH,
    innerRadius: 0,
    outerRadius: 1 * INCH,
    radialInterference: 0.0005 * INCH,
  }

  it('pressure and hoop stress', () => {
    expect(pressFitPressure(fit) / PSI).toBeCloseTo(11250, 6)
    expect(pressFitHoop(fit) / PSI).toBeCloseTo(18750, 6)
  })

  it('a hollow pin presses less, and nothing presses without interference', () => {
    expect(pressFitPressure({ ...fit, innerRadius: 0.3 * INCH })).toBeLessThan(
      pressFitPressure(fit),
    )
    expect(pressFitPressure({ ...fit, radialInterference: 0 })).toBe(0)
    expect(() => pressFitPressure({ ...fit, innerRadius: 0.5 * INCH })).toThrow(/innerRadius/)
  })
})

describe('thin rings', () => {
  // Closed form: two thin rings of equal stiffness share δ: p = E t δ / (2 R²).
  it('share the interference', () => {
    const radius = 0.05
    const wall = 0.0002
    const pressure = pressFitPressure({
      ...steel,
      radius,
      innerRadius: radius - wall,
      outerRadius: radius + wall,
      radialInterference: 1e-5,
    })
    const thin = (steel.innerModulus * wall * 1e-5) / (2 * radius ** 2)
    expect(Math.abs(pressure / thin - 1)).toBeLessThan(0.01)
  })
})

describe('the wall of a register', () => {
  it('bears force over projected area', () => {
    expect(wallPressure(12e3, 0.006, 0.025)).toBeCloseTo(80e6, 3)
  })
})
