import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clearance } from '../../src/mechanics/clearance.ts'
import { clearanceRange } from '../../src/mechanics/clearance-range.ts'

const limits = {
  housing: { low: 0.06835, high: 0.06838 },
  wall: { low: 0.002362, high: 0.002368 },
  journal: { low: 0.06354, high: 0.06356 },
}
const share = fc.double({ min: 0, max: 1, noNaN: true })

describe('clearanceRange', () => {
  it('holds every clearance that parts within their limits make, and reaches both ends', () => {
    const range = clearanceRange(limits)
    const at = ({ low, high }: { low: number; high: number }, t: number) => low + t * (high - low)
    const made = (bore: number, wall: number, shaft: number) => {
      const housing = at(limits.housing, bore)
      const crown = at(limits.wall, wall)
      return clearance({
        housing: { vertical: housing, horizontal: housing },
        shell: { crown, parting: crown },
        journal: at(limits.journal, shaft),
      }).vertical
    }
    fc.assert(
      fc.property(share, share, share, (bore, wall, shaft) => {
        expect(made(bore, wall, shaft)).toBeGreaterThanOrEqual(range.low - 1e-12)
        expect(made(bore, wall, shaft)).toBeLessThanOrEqual(range.high + 1e-12)
      }),
    )
    expect(made(0, 1, 1)).toBeCloseTo(range.low, 12)
    expect(made(1, 0, 0)).toBeCloseTo(range.high, 12)
  })

  it('adds in squares for the statistical range, each shell by itself', () => {
    const { statistical, middle, parts, low, high } = clearanceRange(limits)
    expect(statistical.high - statistical.low).toBeCloseTo(Math.hypot(30e-6, 6e-6, 6e-6, 20e-6), 12)
    expect((statistical.high + statistical.low) / 2).toBeCloseTo(middle, 15)
    expect(parts.housing + parts.shells + parts.journal).toBeCloseTo(high - low, 12)
  })

  it('names limits out of order', () => {
    const crossed = { ...limits, journal: { low: 0.06356, high: 0.06354 } }
    expect(() => clearanceRange(crossed)).toThrow(/journal\.low/)
  })
})
