import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import {
  holeMinorDiameter,
  pitchDiameter,
  screwRootDiameter,
  tensileStressArea,
  threadFormOfPitch,
} from '../../src/mechanics/threads.ts'

const INCH = 0.0254

describe('tensile stress area of unified threads', () => {
  // Source: Shigley's Mechanical Engineering Design, 9th ed., Table 8–2, in². The areas of
  // 9/16 and 5/8-18 are from memory, the others read.
  // Tolerance: 0.3 %, the rounding of three printed digits at 0.0775 and truncated rows.
  it.each([
    ['3/8-16', 0.375, 16, 0.0775],
    ['3/8-24', 0.375, 24, 0.0878],
    ['7/16-14', 0.4375, 14, 0.1063],
    ['7/16-20', 0.4375, 20, 0.1187],
    ['1/2-13', 0.5, 13, 0.1419],
    ['1/2-20', 0.5, 20, 0.1599],
    ['9/16-12', 0.5625, 12, 0.182],
    ['9/16-18', 0.5625, 18, 0.203],
    ['5/8-11', 0.625, 11, 0.226],
    ['5/8-18', 0.625, 18, 0.256],
  ])('%s', (_, diameter, turns, area) => {
    const computed = tensileStressArea(diameter * INCH, INCH / turns) / INCH ** 2
    expect(Math.abs(computed / area - 1)).toBeLessThanOrEqual(0.003)
  })
})

describe('tensile stress area of metric threads', () => {
  // Source: ISO 898-1 nominal stress areas, mm², read from reprints (M16: Jindal, Machine
  // Design, Example 9–1). Tolerance: half of the last printed digit.
  it.each([
    ['M8 × 1.25', 8, 1.25, 36.6, 0.05],
    ['M8 × 1', 8, 1, 39.2, 0.05],
    ['M10 × 1.5', 10, 1.5, 58.0, 0.05],
    ['M10 × 1.25', 10, 1.25, 61.2, 0.05],
    ['M12 × 1.75', 12, 1.75, 84.3, 0.05],
    ['M12 × 1.25', 12, 1.25, 92.1, 0.05],
    ['M14 × 2', 14, 2, 115, 0.5],
    ['M14 × 1.5', 14, 1.5, 125, 0.5],
    ['M16 × 2', 16, 2, 156.7, 0.05],
    ['M16 × 1.5', 16, 1.5, 167.2, 0.1],
  ])('%s', (_, diameter, pitch, area, tolerance) => {
    const computed = tensileStressArea(diameter / 1000, pitch / 1000) * 1e6
    expect(Math.abs(computed - area)).toBeLessThanOrEqual(tolerance)
  })
})

describe('basic diameters', () => {
  // Source: ISO 724 for M10 × 1.5: d2 9.026, D1 8.376; d3 8.160 (ISO 898-1 root). mm.
  it('of M10 × 1.5 match the standard to the micrometre', () => {
    expect(Math.abs(pitchDiameter(0.01, 0.0015) * 1000 - 9.026)).toBeLessThanOrEqual(5e-4)
    expect(Math.abs(holeMinorDiameter(0.01, 0.0015) * 1000 - 8.376)).toBeLessThanOrEqual(5e-4)
    expect(Math.abs(screwRootDiameter(0.01, 0.0015) * 1000 - 8.16)).toBeLessThanOrEqual(5e-4)
  })

  // Source: ASME B1.1, 1/2-13: pitch diameter 0.4500, minor of the hole 0.4167 in.
  it('of 1/2-13 match the standard to the tenth of a thousandth', () => {
    expect(Math.abs(pitchDiameter(0.5 * INCH, INCH / 13) / INCH - 0.45)).toBeLessThan(5.1e-5)
    expect(Math.abs(holeMinorDiameter(0.5 * INCH, INCH / 13) / INCH - 0.4167)).toBeLessThan(5.1e-5)
  })
})

describe('the family of a pitch', () => {
  it.each([32, 28, 24, 20, 18, 16, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4.5, 4])(
    '%s turns an inch is unified',
    (turns) => expect(threadFormOfPitch(INCH / turns)).toBe('un'),
  )

  it.each([0.5, 0.7, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4])('%s mm is metric', (pitch) =>
    expect(threadFormOfPitch(pitch / 1000)).toBe('iso'),
  )
})

describe('what is no thread', () => {
  it('is refused by name', () => {
    expect(() => tensileStressArea(10, 1.5)).toThrow(DomainError)
    expect(() => tensileStressArea(10, 1.5)).toThrow(/nominalDiameter is 10/)
    expect(() => tensileStressArea(0.01, Number.NaN)).toThrow(/pitch is NaN/)
    expect(() => pitchDiameter(0.01, 0.0026)).toThrow(/pitch/)
    expect(() => threadFormOfPitch(0)).toThrow(/pitch is 0/)
  })
})
