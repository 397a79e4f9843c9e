import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import type { MarginPoint } from '../../src/mechanics/margin-points.ts'
import { slipMargin, worstSlip } from '../../src/mechanics/slip-margin.ts'

const point = (x: number, y: number): MarginPoint => ({
  main: 0,
  speedIndex: 0,
  angle: 0,
  gasX: x,
  gasY: y,
  inertiaX: 0,
  inertiaY: 0,
  half: 1,
})

describe('slipMargin', () => {
  it('is friction on what clamp is left, over the side push', () => {
    // Coulomb: 0.2 × (10 000 − 0.5 × 4000) = 1600 N, and 400 N besides, against 1000 N.
    const law = { clamp: 10_000, friction: 0.2, relief: 0.5 }
    expect(slipMargin(law, 4000, 1000)).toBeCloseTo(1.6, 12)
    expect(slipMargin({ ...law, resistance: 400 }, 4000, 1000)).toBeCloseTo(2, 12)
  })

  it('has no friction left once the joint is open, and no limit without side push', () => {
    const law = { clamp: 1000, friction: 0.2 }
    expect(slipMargin(law, 2000, 10)).toBe(0)
    expect(slipMargin(law, 0, 0)).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('worstSlip', () => {
  it('finds the moment where pull and push together are worst, not each alone', () => {
    const points = [point(0, -9000), point(3000, 3000), point(3000, -4000)]
    const { margin, point: worst } = worstSlip(points, { clamp: 10_000, friction: 0.15 })
    expect(worst).toBe(points[2])
    expect(margin).toBeGreaterThan(0)
    expect(margin).toBeLessThan(1)
  })

  it('worsens as loads grow', () => {
    const points = [point(3000, -4000)]
    const law = { clamp: 10_000, friction: 0.15 }
    expect(worstSlip(points, law, 1.2).margin).toBeLessThan(worstSlip(points, law).margin)
  })

  it('names what it refuses', () => {
    expect(() => worstSlip([], { clamp: 1, friction: 0.1 })).toThrow(DomainError)
    expect(() => worstSlip([point(1, 1)], { clamp: 1, friction: 2 })).toThrow(/friction is 2/)
  })
})
