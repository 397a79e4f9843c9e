import { describe, expect, it } from 'vitest'
import { type CrushInput, crush, overstandInBore } from '../../src/mechanics/crush.ts'

const seat: CrushInput = {
  housingBore: 0.0684,
  overstand: 0.00004,
  wall: 0.0022,
  width: 0.022,
  housing: { outside: 0.12, modulus: 100e9, poisson: 0.211 },
}

describe('crush', () => {
  it('squeezes the shell by all of the overstand when the housing is rigid', () => {
    // Strain 2a/(πD), stress E times that, pressure stress · t / R: the thin ring.
    const rigid = crush({ ...seat, housing: { outside: 10, modulus: 1e12, poisson: 0 } })
    const strain = (2 * 0.00004) / (Math.PI * 0.0684)
    // A modulus of 1e12 Pa still gives a little: 2 % here.
    expect(rigid.hoopStress / (207e9 * strain)).toBeGreaterThan(0.97)
    expect(rigid.hoopStress / (207e9 * strain)).toBeLessThan(1)
    expect(rigid.pressure).toBeCloseTo((rigid.hoopStress * 0.0022) / 0.0342, 3)
  })

  it('shares the interference between shell and housing', () => {
    const { interference, pressure, housingGrowth } = crush(seat)
    const shell = (pressure * 0.0342 ** 2) / (207e9 * 0.0022)
    expect(shell + housingGrowth / 2).toBeCloseTo(interference, 12)
    expect(interference).toBeCloseTo(0.00004 / Math.PI, 15)
  })

  it('pushes each joint with the shell’s own hoop force, twice on a cap', () => {
    const { hoopStress, jointForce, capForce } = crush(seat)
    expect(jointForce).toBeCloseTo(hoopStress * 0.0022 * 0.022, 9)
    expect(capForce).toBe(2 * jointForce)
  })

  it('loses grip in a larger bore, and as an aluminium housing warms', () => {
    const large = crush({ ...seat, checkingBore: 0.0684, housingBore: 0.06841 })
    expect(large.pressure).toBeLessThan(crush(seat).pressure)
    const warm = crush({ ...seat, warmth: { difference: 9.2e-6, rise: 20 } })
    expect(warm.interference).toBeCloseTo(crush(seat).interference - 9.2e-6 * 20 * 0.0342, 15)
    const hot = crush({ ...seat, warmth: { difference: 9.2e-6, rise: 100 } })
    expect(hot.interference).toBeLessThan(0)
    expect(hot.pressure).toBe(0)
  })

  it('names what does not fit', () => {
    expect(() => crush({ ...seat, wall: 0 })).toThrow(/wall/)
    const inside = { ...seat.housing, outside: 0.06 }
    expect(() => crush({ ...seat, housing: inside })).toThrow(/housing\.outside/)
  })
})

describe('overstandInBore', () => {
  it('loses π/2 of every increase of the bore', () => {
    expect(overstandInBore(0.00004, 0.07, 0.07001)).toBeCloseTo(0.00004 - Math.PI * 0.000005, 12)
  })
})
