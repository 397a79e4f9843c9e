import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capShare } from '../../src/mechanics/cap-share.ts'

/**
 * Oracle: the cosine pressure summed strip by strip over the whole ring, midpoint rule, with no use
 * of the closed form: p ∝ cos(φ − α) where positive, and only strips with y < 0 counted.
 */
function summed(x: number, y: number, strips = 20_000): { pull: number; side: number } {
  const force = Math.hypot(x, y)
  const toward = Math.atan2(y, x)
  let pull = 0
  let side = 0
  for (let strip = 0; strip < strips; strip++) {
    const at = -Math.PI + ((strip + 0.5) * Math.PI) / strips
    const pressure = Math.max(0, Math.cos(at - toward))
    pull -= pressure * Math.sin(at)
    side += pressure * Math.cos(at)
  }
  const unit = ((2 * force) / Math.PI) * (Math.PI / strips)
  return { pull: pull * unit, side: Math.abs(side) * unit }
}

const load = fc.double({ min: -1e5, max: 1e5, noNaN: true })

describe('capShare', () => {
  it('gives the cap all of a load straight down and nothing of one straight up', () => {
    expect(capShare(0, -1000)).toEqual({ pull: 1000, side: 0 })
    expect(capShare(0, 1000)).toEqual({ pull: 0, side: 0 })
    expect(capShare(0, 0)).toEqual({ pull: 0, side: 0 })
    expect(capShare(-0, -0)).toEqual({ pull: 0, side: 0 })
  })

  it('gives the cap half the push and 1/π of the force of a load along the face', () => {
    expect(capShare(1000, 0).side).toBeCloseTo(500, 10)
    expect(capShare(1000, 0).pull).toBeCloseTo(1000 / Math.PI, 10)
  })

  it('is the same as summing the pressure over the cap', () => {
    fc.assert(
      fc.property(load, load, (x, y) => {
        const exact = capShare(x, y)
        const sum = summed(x, y)
        // Tolerance: the midpoint rule across the kink of the pressure, (π/20 000)² and a margin.
        const allowed = 1e-7 * Math.hypot(x, y) + 1e-9
        expect(Math.abs(exact.pull - sum.pull)).toBeLessThan(allowed)
        expect(Math.abs(exact.side - sum.side)).toBeLessThan(allowed)
      }),
      { numRuns: 200 },
    )
  })

  it('leaves the rest of the load to the block: cap and block together carry the load', () => {
    fc.assert(
      fc.property(load, load, (x, y) => {
        const cap = capShare(x, y)
        // The block is the same half circle turned over.
        const block = capShare(x, -y)
        const force = Math.hypot(x, y)
        expect(Math.abs(cap.pull - block.pull + y)).toBeLessThan(1e-12 * force + 1e-12)
        expect(Math.abs(cap.side + block.side - Math.abs(x))).toBeLessThan(1e-12 * force + 1e-12)
      }),
    )
  })

  it('scales with the load', () => {
    fc.assert(
      fc.property(load, load, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (x, y, scale) => {
        const one = capShare(x, y)
        const many = capShare(scale * x, scale * y)
        const allowed = 1e-11 * scale * Math.hypot(x, y) + 1e-12
        expect(Math.abs(many.pull - scale * one.pull)).toBeLessThan(allowed)
        expect(Math.abs(many.side - scale * one.side)).toBeLessThan(allowed)
      }),
    )
  })

  it('never falls when a load is turned more downward or pushed harder downward', () => {
    fc.assert(
      fc.property(load, load, fc.double({ min: 0, max: 1e5, noNaN: true }), (x, y, more) => {
        const before = capShare(x, y)
        const after = capShare(x, y - more)
        expect(after.pull).toBeGreaterThanOrEqual(before.pull - 1e-9)
        expect(after.side).toBeGreaterThanOrEqual(before.side - 1e-9)
      }),
    )
  })

  it('has a convex pull: of two loads together never more than of each apart', () => {
    fc.assert(
      fc.property(load, load, load, load, (x1, y1, x2, y2) => {
        const together = capShare(x1 + x2, y1 + y2).pull
        const apart = capShare(x1, y1).pull + capShare(x2, y2).pull
        expect(together).toBeLessThanOrEqual(apart + 1e-9)
      }),
    )
  })

  it('is the same for a load to the left as to the right, and never negative', () => {
    fc.assert(
      fc.property(load, load, (x, y) => {
        const share = capShare(x, y)
        expect(capShare(-x, y)).toEqual(share)
        expect(share.pull).toBeGreaterThanOrEqual(0)
        expect(share.side).toBeGreaterThanOrEqual(0)
      }),
    )
  })
})
