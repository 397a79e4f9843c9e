import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type GearDriveInput,
  gearDrive,
  involute,
  mostShiftForBacklash,
  transversePressureAngle,
} from '../../src/mechanics/gear-backlash.ts'

const gears: GearDriveInput = {
  centreDistance: 0.075,
  pressureAngle: (20 * Math.PI) / 180,
  axisShift: 0.00005,
  backlashBefore: 0.0001,
}

describe('gearDrive', () => {
  it('is near its own approximation, and nearer for smaller shifts', () => {
    const error = (axisShift: number) => {
      const { change, changeApproximate } = gearDrive({ ...gears, axisShift })
      return Math.abs(change / changeApproximate - 1)
    }
    expect(error(0.00005)).toBeLessThan(0.01)
    expect(error(0.000005)).toBeLessThan(error(0.00005) / 5)
  })

  it('says at which shift the teeth bind', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.00001, max: 0.0005, noNaN: true }), (backlashBefore) => {
        const { shorteningToBind } = gearDrive({ ...gears, backlashBefore })
        const bound = gearDrive({ ...gears, backlashBefore, axisShift: shorteningToBind })
        expect(bound.backlash).toBeCloseTo(0, 12)
      }),
    )
  })

  it('says how far the axis may move for a backlash to be left, at any lean of the centres', () => {
    const lean = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.0003, noNaN: true }), lean, (least, camAngle) => {
        const axisShift = mostShiftForBacklash({ ...gears, camAngle }, least)
        expect(gearDrive({ ...gears, camAngle, axisShift }).backlash).toBeCloseTo(least, 12)
        if (least > gears.backlashBefore) expect(axisShift).toBeLessThan(0)
      }),
    )
  })

  it('counts from the standard centres when the gears stand farther apart', () => {
    const spread = gearDrive({ ...gears, standardCentreDistance: 0.0749 })
    // Working at a larger pressure angle, the same shift takes more backlash away.
    expect(spread.change).toBeLessThan(gearDrive(gears).change)
  })

  it('changes next to nothing for a shift across the line of centres', () => {
    const across = gearDrive({ ...gears, camAngle: Math.PI / 2 })
    expect(Math.abs(across.change)).toBeLessThan(1e-7)
  })

  it('names what does not fit', () => {
    expect(() => gearDrive({ ...gears, pressureAngle: 20 })).toThrow(/pressureAngle/)
    expect(() => gearDrive({ ...gears, backlashBefore: -1 })).toThrow(/backlashBefore/)
  })
})

describe('transversePressureAngle', () => {
  it('leaves spur gears alone and widens with the helix', () => {
    expect(transversePressureAngle(0.35, 0)).toBeCloseTo(0.35, 15)
    expect(transversePressureAngle(0.35, 0.5)).toBeGreaterThan(0.35)
    expect(() => transversePressureAngle(0.35, 2)).toThrow(/helix/)
  })
})

describe('involute', () => {
  // Source: tables of the involute function, inv 20° = 0.014904 (half of the last digit).
  it('has its tabled value at 20°', () => {
    expect(Math.abs(involute((20 * Math.PI) / 180) - 0.014904)).toBeLessThanOrEqual(5e-7)
  })
})
