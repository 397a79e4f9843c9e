import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { SWEEP_STEP, sweepSpeeds } from '../../src/mechanics/sweep-speeds.ts'

const speed = fc.double({ min: 100, max: 1500, noNaN: true })

describe('sweepSpeeds', () => {
  it('goes from torque peak by 500 rpm to the highest', () => {
    const rpm = (turns: number): number => (turns * Math.PI) / 30
    const speeds = sweepSpeeds(rpm(4000), rpm(6200)).map((one) => Math.round((one * 30) / Math.PI))
    expect(speeds).toEqual([4000, 4500, 5000, 5500, 6000, 6200])
  })

  it('keeps every speed but the last when the highest speed rises', () => {
    fc.assert(
      fc.property(speed, speed, fc.double({ min: 0, max: 500, noNaN: true }), (low, high, more) => {
        const before = sweepSpeeds(low, high)
        const after = sweepSpeeds(low, high + more)
        if (high > low) expect(after).toEqual(expect.arrayContaining(before.slice(0, -1)))
        expect(after.at(-1)).toBe(high + more)
      }),
    )
  })

  it('rises, in steps no longer than asked for', () => {
    fc.assert(
      fc.property(speed, speed, (low, high) => {
        const speeds = sweepSpeeds(low, high)
        expect(speeds.at(-1)).toBe(high)
        speeds.slice(1).forEach((one, index) => {
          expect(one).toBeGreaterThan(speeds[index]!)
          expect(one - speeds[index]!).toBeLessThan(SWEEP_STEP + 1e-9)
        })
      }),
    )
  })

  it('names what it refuses', () => {
    expect(() => sweepSpeeds(Number.NaN, 500)).toThrow(DomainError)
    expect(() => sweepSpeeds(300, 500, 0)).toThrow(/step is 0/)
  })
})
