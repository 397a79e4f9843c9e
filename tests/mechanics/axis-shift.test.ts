import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measuredAxisShift } from '../../src/mechanics/axis-shift.ts'
import { boreMachining } from '../../src/mechanics/bore-machining.ts'

const gauge = { depth: 0.00001, diameter: 0.000004 }

describe('measuredAxisShift', () => {
  it('finds the shift that a machined bore was given, from either face', () => {
    const shift = fc.double({ min: 0, max: 0.0005, noNaN: true })
    const growth = fc.double({ min: 0, max: 0.0003, noNaN: true })
    fc.assert(
      fc.property(shift, growth, (axisShift, grown) => {
        const size = 0.07 + grown
        const { finished } = boreMachining({
          blockBore: 0.07,
          capBore: 0.068,
          finished: { low: size, high: size },
          axisShift,
          honeLimit: 0,
        })
        const crown = finished.axis + finished.diameter / 2
        const diameters = { diameterBefore: 0.07, diameterAfter: size }
        const deck = measuredAxisShift(
          { ...diameters, crownBefore: 0.2 - 0.035, crownAfter: 0.2 - crown, from: 'deck' },
          gauge,
        )
        const rail = measuredAxisShift(
          { ...diameters, crownBefore: 0.035, crownAfter: crown, from: 'sump-rail' },
          gauge,
        )
        expect(deck.shift).toBeCloseTo(axisShift, 12)
        expect(rail.shift).toBeCloseTo(axisShift, 12)
      }),
    )
  })

  it('carries the uncertainty of two depths and two half diameters', () => {
    const readings = {
      crownBefore: 0.035,
      crownAfter: 0.035,
      diameterBefore: 0.07,
      diameterAfter: 0.07,
      from: 'deck',
    } as const
    const { uncertainty } = measuredAxisShift(readings, gauge)
    expect(uncertainty).toBeCloseTo(Math.hypot(1e-5, 1e-5, 2e-6, 2e-6), 15)
    expect(() => measuredAxisShift({ ...readings, crownAfter: 2 }, gauge)).toThrow(/crownAfter/)
  })
})
