import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { centreFromIndicator, gearboxAlignment } from '../../src/mechanics/gearbox-alignment.ts'

describe('gearboxAlignment', () => {
  it('leaves the gearbox low by the shift, and the indicator reads twice that', () => {
    const moved = gearboxAlignment(0.0001, { x: 0, y: 0 }, 0.2)
    expect(moved.y).toBeCloseTo(-0.0001, 15)
    expect(moved.indicatorReading).toBeCloseTo(0.0002, 15)
    expect(Math.abs(moved.direction)).toBeCloseTo(Math.PI, 12)
    expect(moved.shaftAngle).toBeCloseTo(0.0005, 9)
  })

  it('can cure an error that was there before', () => {
    expect(gearboxAlignment(0.0001, { x: 0, y: 0.0001 }, 0.2).offset).toBe(0)
    const skew = gearboxAlignment(0.0001, { x: 0.0003, y: 0.0005 }, 0.2)
    expect(skew.offset).toBeCloseTo(0.0005, 12)
  })

  it('names what does not fit', () => {
    expect(() => gearboxAlignment(1, { x: 0, y: 0 }, 0.2)).toThrow(/axisShift/)
    expect(() => gearboxAlignment(0, { x: 0, y: 0 }, 0)).toThrow(/inputShaft/)
  })
})

describe('centreFromIndicator', () => {
  it('finds the centre of a bore from the distances to its wall', () => {
    const micro = fc.double({ min: -0.0005, max: 0.0005, noNaN: true })
    fc.assert(
      fc.property(micro, micro, (x, y) => {
        const radius = 0.09
        const wall = (dx: number, dy: number) => {
          // Distance from the swing axis to a circle about (x, y), along (dx, dy).
          const along = x * dx + y * dy
          const across = x * dy - y * dx
          return along + Math.sqrt(radius ** 2 - across ** 2) - radius
        }
        const centre = centreFromIndicator({
          top: wall(0, 1),
          right: wall(1, 0),
          bottom: wall(0, -1),
          left: wall(-1, 0),
        })
        expect(centre.x).toBeCloseTo(x, 12)
        expect(centre.y).toBeCloseTo(y, 12)
        // Second order: e²/R.
        expect(Math.abs(centre.misread)).toBeLessThan(1e-5)
      }),
    )
  })

  it('shows a reading that does not belong', () => {
    const slip = { top: 0.0001, right: 0, bottom: -0.0001, left: 0.0005 }
    expect(centreFromIndicator(slip).misread).toBeCloseTo(-0.0005, 12)
    expect(() => centreFromIndicator({ ...slip, top: 1 })).toThrow(/top/)
  })
})
