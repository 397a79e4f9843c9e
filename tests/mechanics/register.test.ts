import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crossBoltCapacity } from '../../src/mechanics/cross-bolts.ts'
import { girdleEffect, girdleShare } from '../../src/mechanics/girdle.ts'
import {
  fitPressure,
  GIVE_BEFORE_SLIP,
  registerCapacity,
  registerEngagement,
} from '../../src/mechanics/register.ts'

const snug = { height: 0.006, length: 0.025, interference: 0, allowablePressure: 100e6 }

describe('capacity of a register', () => {
  it('is pressure times projected area for a fit of nought', () => {
    expect(registerCapacity(snug)).toBeCloseTo(15e3, 6)
  })

  it('is unchanged by a fit below half the allowable pressure, then falls', () => {
    // Two preloaded walls: below half, one wall comes free and the other carries all.
    expect(registerCapacity(snug, 50e6)).toBeCloseTo(15e3, 6)
    expect(registerCapacity(snug, 75e6)).toBeCloseTo(7.5e3, 6)
    expect(registerCapacity(snug, 100e6)).toBe(0)
  })

  it('of no height is nought', () => {
    expect(registerCapacity({ ...snug, height: 0 })).toBe(0)
  })

  it('counts with friction only as far as the faces give', () => {
    expect(registerEngagement(20e-6)).toBe(1)
    expect(registerEngagement(0)).toBe(1)
    expect(registerEngagement(-GIVE_BEFORE_SLIP / 2)).toBeCloseTo(0.5, 12)
    expect(registerEngagement(-GIVE_BEFORE_SLIP)).toBeCloseTo(0, 12)
  })

  it('never falls with a tighter fit, more height or a harder wall', () => {
    const size = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(size, size, size, (a, b, c) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)]
        const capacity = (fit: number, high: number, hard: number) =>
          registerCapacity({
            height: 0.001 + 0.01 * high,
            length: 0.025,
            interference: -20e-6 + 20e-6 * fit,
            allowablePressure: 50e6 + 300e6 * hard,
          })
        expect(capacity(more, c, c)).toBeGreaterThanOrEqual(capacity(less, c, c))
        expect(capacity(c, more, c)).toBeGreaterThanOrEqual(capacity(c, less, c))
        expect(capacity(c, c, more)).toBeGreaterThanOrEqual(capacity(c, c, less))
      }),
    )
  })
})

describe('pressure of the fit itself', () => {
  it('is E δ / 2s between equal metals and nought with clearance', () => {
    expect(fitPressure(50e-6, 0.12, 100e9, 100e9)).toBeCloseTo((100e9 * 50e-6) / 0.24, 3)
    expect(fitPressure(-50e-6, 0.12, 100e9, 100e9)).toBe(0)
  })
})

describe('cross bolts and girdle', () => {
  it('without any there is nothing', () => {
    expect(crossBoltCapacity({ count: 0, preload: 20e3 })).toBe(0)
    expect(girdleEffect(undefined)).toEqual({ clamp: 0, loadLeft: 1 })
  })

  it('springs side by side share by stiffness', () => {
    expect(girdleShare(1e9, 1e9)).toBeCloseTo(0.5, 12)
    expect(girdleShare(0, 1e9)).toBe(0)
  })

  it('refuse what cannot be', () => {
    expect(() => girdleEffect({ stiffnessShare: 0.9 })).toThrow(/stiffnessShare is 0.9/)
    expect(() => crossBoltCapacity({ count: 2, preload: Number.NaN })).toThrow(/preload is NaN/)
    expect(() => registerCapacity({ ...snug, height: -1 })).toThrow(/height is -1/)
  })
})
