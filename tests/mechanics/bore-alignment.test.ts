import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boreAlignment } from '../../src/mechanics/bore-alignment.ts'

const positions = [0, 0.11, 0.22, 0.33, 0.44]
const micro = fc.double({ min: -0.0001, max: 0.0001, noNaN: true })
const centres = fc.array(fc.record({ x: micro, y: micro }), { minLength: 5, maxLength: 5 })

describe('boreAlignment', () => {
  it('finds nothing amiss along any straight axis', () => {
    fc.assert(
      fc.property(micro, micro, micro, micro, (x, y, leanX, leanY) => {
        const row = positions.map((z) => ({ x: x + leanX * z, y: y + leanY * z }))
        const { overall, greatestStep, greatestBow } = boreAlignment(positions, row)
        expect(Math.max(overall, greatestStep, greatestBow)).toBeLessThan(1e-15)
      }),
    )
  })

  it('points at the one main that is out', () => {
    const row = positions.map((_, place) => ({ x: 0, y: place === 3 ? -0.00005 : 0 }))
    const { offAxis, bows, steps, greatestBow } = boreAlignment(positions, row)
    expect(offAxis.indexOf(Math.max(...offAxis))).toBe(3)
    expect(bows.indexOf(greatestBow)).toBe(3)
    expect(greatestBow).toBeCloseTo(0.00005, 12)
    expect(steps).toHaveLength(4)
    expect([bows[0], bows[4]]).toEqual([0, 0])
  })

  // By hand: least squares through 0, 0, 0, −h, 0 leaves 0, 0.1, 0.2, −0.7 and 0.4 h.
  it('measures it from the best line through all of them', () => {
    const row = positions.map((_, place) => ({ x: 0, y: place === 3 ? -0.00005 : 0 }))
    const { offAxis, overall, greatestStep } = boreAlignment(positions, row)
    const shares = [0, 0.1, 0.2, 0.7, 0.4]
    offAxis.forEach((off, place) => {
      expect(off).toBeCloseTo((shares[place] ?? Number.NaN) * 0.00005, 12)
    })
    expect(overall).toBeCloseTo(0.7 * 0.00005, 12)
    expect(greatestStep).toBeCloseTo(1.1 * 0.00005, 12)
  })

  it('refuses two bores in one place, and bores out of order', () => {
    const row = [0, 0, 0].map(() => ({ x: 0, y: 0 }))
    expect(() => boreAlignment([0, 0.1, 0.1], row)).toThrow(/positions/)
    expect(() => boreAlignment([0, 0.2, 0.1], row)).toThrow(/positions\[2\]/)
  })

  it('does not depend on how the reference was held or turned', () => {
    fc.assert(
      fc.property(centres, fc.double({ min: -3, max: 3, noNaN: true }), micro, (row, turn, up) => {
        const moved = row.map(({ x, y }, place) => ({
          x: x * Math.cos(turn) - y * Math.sin(turn) + up,
          y: x * Math.sin(turn) + y * Math.cos(turn) - up * positions[place]!,
        }))
        const [one, other] = [boreAlignment(positions, row), boreAlignment(positions, moved)]
        expect(other.overall).toBeCloseTo(one.overall, 12)
        expect(other.greatestStep).toBeCloseTo(one.greatestStep, 12)
        expect(other.greatestBow).toBeCloseTo(one.greatestBow, 12)
      }),
    )
  })

  it('tells a slow curve from a sudden step', () => {
    const curve = positions.map((z) => ({ x: 0, y: 0.0001 * (1 - ((z - 0.22) / 0.22) ** 2) }))
    const step = positions.map((z) => ({ x: 0, y: z > 0.3 ? 0.0001 : 0 }))
    const [slow, sudden] = [boreAlignment(positions, curve), boreAlignment(positions, step)]
    expect(slow.overall).toBeGreaterThan(sudden.overall)
    expect(slow.greatestBow).toBeLessThan(sudden.greatestBow)
  })

  it('refuses bores out of order', () => {
    const row = [1, 2, 3].map(() => ({ x: 0, y: 0 }))
    expect(() => boreAlignment([0, 0.2, 0.1], row)).toThrow(/positions/)
    expect(() => boreAlignment([0, 0.2, 0.1], row)).toThrow(/positions\[2\]/)
  })
})
