import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type CompressionChangeInput,
  compressionChange,
} from '../../src/mechanics/compression-change.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'

const cylinder: CompressionChangeInput = {
  bore: 0.102,
  stroke: 0.088,
  rodLength: 0.145,
  compressionRatio: 10,
  deckClearance: 0.0005,
  axisShift: 0.0002,
}

describe('compressionChange', () => {
  it('lifts the piston by the shift in an upright cylinder and keeps the stroke', () => {
    const change = compressionChange(cylinder)
    expect(change.rise).toBeCloseTo(0.0002, 12)
    expect(change.deckClearance).toBeCloseTo(0.0003, 12)
    expect(change.stroke).toBeCloseTo(0.088, 12)
    // Clearance volume is stroke/9 of bore area: 9.7778 mm high, now 0.2 mm less.
    expect(change.compressionRatio).toBeCloseTo(1 + 88 / (88 / 9 - 0.2), 10)
  })

  it('lifts it by the cosine in a bank, and sets the cylinder off by the sine', () => {
    const change = compressionChange({ ...cylinder, bankAngle: Math.PI / 4 })
    expect(change.rise / 0.0002).toBeCloseTo(Math.SQRT1_2, 3)
    expect(change.offset / 0.0002).toBeCloseTo(Math.SQRT1_2, 12)
    // Offset slider-crank: stroke grows by about e² r / (l² − r²).
    const growth = (0.0002 ** 2 / 2) * (0.044 / (0.145 ** 2 - 0.044 ** 2))
    expect(Math.abs((change.stroke - 0.088) / growth - 1)).toBeLessThan(0.01)
  })

  it('raises compression with the shift, never lowers it', () => {
    const angle = fc.double({ min: -1.5, max: 1.5, noNaN: true })
    const shift = fc.double({ min: 0, max: 0.001, noNaN: true })
    fc.assert(
      fc.property(angle, shift, (bankAngle, axisShift) => {
        const { compressionRatio } = compressionChange({ ...cylinder, bankAngle, axisShift })
        expect(compressionRatio).toBeGreaterThanOrEqual(10 - 1e-3)
      }),
    )
  })

  it('counts a deck cut as a lift and undoes itself when the axis goes back', () => {
    const cut = compressionChange({ ...cylinder, axisShift: 0, deckCut: 0.0002 })
    expect(cut.compressionRatio).toBeCloseTo(compressionChange(cylinder).compressionRatio, 10)
    const back = compressionChange({
      ...cylinder,
      compressionRatio: cut.compressionRatio,
      axisShift: -0.0002,
    })
    expect(back.compressionRatio).toBeCloseTo(10, 10)
  })

  it('gives the volumes of the bore: π/4 b² s swept, and a ninth of it less the lift left', () => {
    const { sweptVolume, clearanceVolume } = compressionChange(cylinder)
    const area = Math.PI * 0.051 ** 2
    expect(sweptVolume / (area * 0.088)).toBeCloseTo(1, 12)
    expect(clearanceVolume / (area * (0.088 / 9 - 0.0002))).toBeCloseTo(1, 10)
  })

  it('takes a deck cut off what stands between piston and deck', () => {
    const { deckClearance } = compressionChange({ ...cylinder, deckCut: 0.0001 })
    expect(deckClearance).toBeCloseTo(0.0005 - 0.0002 - 0.0001, 12)
  })

  it('refuses a lift that leaves no clearance volume', () => {
    const tight = { ...cylinder, compressionRatio: 20, axisShift: 0.005 }
    expect(() => compressionChange(tight)).toThrow(/clearance volume/)
    expect(() => compressionChange({ ...cylinder, rodLength: 0.04 })).toThrow(DomainError)
  })
})
