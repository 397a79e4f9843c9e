import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import {
  type ChainDriveInput,
  chainDrive,
  chainPitches,
  midStrandSag,
  mostShiftForSlack,
  shiftedCentres,
  shiftToCentres,
  sprocketRadius,
} from '../../src/mechanics/timing-drive.ts'

const INCH = 0.0254
const drive: ChainDriveInput = {
  centreDistance: 5 * INCH,
  pitch: 0.375 * INCH,
  crankTeeth: 21,
  camTeeth: 42,
  axisShift: 0.01 * INCH,
}

describe('chainDrive', () => {
  it('frees nothing when nothing moves', () => {
    const still = chainDrive({ ...drive, axisShift: 0 })
    expect(still.slack).toBeCloseTo(0, 15)
    expect(still.sag).toBe(0)
    expect(still.camRetard).toBeCloseTo(0, 15)
  })

  it('frees twice the shift over sprockets of the same size', () => {
    const even = chainDrive({ ...drive, crankTeeth: 30, camTeeth: 30 })
    expect(even.slackFreed).toBeCloseTo(2 * drive.axisShift, 12)
    expect(even.slackFreedApproximate).toBeCloseTo(2 * drive.axisShift, 12)
  })

  it('frees more the more the axis rises, and tightens when it sinks', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.002, max: 0.002, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.002, noNaN: true }),
        (shift, further) => {
          const one = chainDrive({ ...drive, axisShift: shift })
          const other = chainDrive({ ...drive, axisShift: shift + further })
          expect(other.slack).toBeGreaterThan(one.slack)
          if (Math.abs(shift) > 1e-9) expect(Math.sign(one.slackFreed)).toBe(Math.sign(shift))
        },
      ),
    )
  })

  it('takes up what the timing set is made for', () => {
    const set = chainDrive({ ...drive, setShortening: 0.01 * INCH })
    expect(set.slack).toBeCloseTo(0, 12)
    expect(set.camRetard).toBeCloseTo(0, 12)
    const half = chainDrive({ ...drive, setShortening: 0.005 * INCH, slackBefore: 0.001 * INCH })
    expect(half.slack / INCH).toBeCloseTo(0.001 + 0.00969, 4)
    expect(chainDrive({ ...drive, axisShift: 0, setShortening: 0.005 * INCH }).slack).toBeLessThan(
      0,
    )
  })

  it('turns the cam late by half of the freed length over its radius', () => {
    const { camRetard, slackFreed } = chainDrive(drive)
    expect(camRetard).toBeCloseTo(slackFreed / 2 / sprocketRadius(drive.pitch, 42), 15)
    // About a fifth of a cam degree for ten thousandths.
    expect((camRetard * 180) / Math.PI).toBeGreaterThan(0.2)
    expect((camRetard * 180) / Math.PI).toBeLessThan(0.25)
  })

  it('names what does not fit', () => {
    expect(() => chainDrive({ ...drive, centreDistance: 0.05 })).toThrow(/centreDistance/)
    expect(() => chainDrive({ ...drive, axisShift: 0.01 })).toThrow(/axisShift/)
    expect(() => sprocketRadius(0.01, 3)).toThrow(/teeth/)
    expect(() => midStrandSag(0.1, 0.05)).toThrow(DomainError)
    expect(() => chainPitches(0.1, 0, 20, 40)).toThrow(/pitch/)
  })
})

describe('mostShiftForSlack', () => {
  it('is the shift that frees just the slack allowed', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.001, noNaN: true }), (mostSlack) => {
        const axisShift = mostShiftForSlack({ ...drive, setShortening: 0.0001 }, mostSlack)
        const { slack } = chainDrive({ ...drive, setShortening: 0.0001, axisShift })
        expect(Math.abs(slack - mostSlack)).toBeLessThan(1e-9)
      }),
    )
  })

  it('stops at the end of the range', () => {
    expect(mostShiftForSlack(drive, 0.05)).toBe(0.005)
    expect(mostShiftForSlack({ ...drive, slackBefore: 0.02 }, 0)).toBe(-0.005)
  })
})

describe('shiftToCentres', () => {
  it('undoes shiftedCentres', () => {
    const angle = fc.double({ min: -1, max: 1, noNaN: true })
    const shift = fc.double({ min: -0.005, max: 0.005, noNaN: true })
    fc.assert(
      fc.property(angle, shift, (lean, moved) => {
        const back = shiftToCentres(0.1, shiftedCentres(0.1, moved, lean), lean)
        expect(back).toBeCloseTo(moved, 12)
      }),
    )
    expect(() => shiftToCentres(0.1, 0.05, 1)).toThrow(/centre distance/)
  })
})

describe('shiftedCentres', () => {
  it('loses the whole shift along the line of centres and next to none across it', () => {
    expect(shiftedCentres(0.1, 0.0002, 0)).toBeCloseTo(0.0998, 15)
    expect(shiftedCentres(0.1, 0.0002, Math.PI / 2) - 0.1).toBeCloseTo(0.0002 ** 2 / 0.2, 12)
    expect(shiftedCentres(0.1, 0.0002, Math.PI)).toBeCloseTo(0.1002, 15)
  })
})

describe('midStrandSag', () => {
  it('agrees with the arc length of the parabola, summed', () => {
    const sag = midStrandSag(0.12, 0.0005)
    let length = 0
    for (let step = 0; step < 10_000; step++) {
      const [from, to] = [step / 10_000, (step + 1) / 10_000]
      const height = (t: number) => 4 * sag * t * (1 - t)
      length += Math.hypot(0.12 * (to - from), height(to) - height(from))
    }
    // The first term of the series; the next is (e/s) smaller.
    expect(Math.abs((length - 0.12) / 0.0005 - 1)).toBeLessThan(0.01)
  })
})
