import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { chenFlynnFriction, meanPistonSpeed } from '../../src/mechanics/friction.ts'

describe('friction', () => {
  // Source: Heywood, Internal Combustion Engine Fundamentals, 1988, eq. 13.6, from memory:
  // motored friction 0.97 + 0.15 N + 0.05 N² bar, N in thousands of turns a minute.
  it('agrees within a bar with motored friction for a common engine', () => {
    // Motored friction has pumping in it and no gas load; a square 2-litre four, 65 bar peak.
    for (const turns of [2000, 4000, 6000]) {
      const speed = (turns * Math.PI) / 30
      const loaded = chenFlynnFriction(65e5, meanPistonSpeed(0.086, speed))
      const motored = (0.97 + 0.15 * (turns / 1000) + 0.05 * (turns / 1000) ** 2) * 1e5
      expect(Math.abs(loaded - motored)).toBeLessThan(1e5)
    }
  })

  it('grows with piston speed and with peak pressure', () => {
    expect(chenFlynnFriction(60e5, 20)).toBeGreaterThan(chenFlynnFriction(60e5, 10))
    expect(chenFlynnFriction(90e5, 10)).toBeGreaterThan(chenFlynnFriction(60e5, 10))
    expect(chenFlynnFriction(0, 0)).toBeCloseTo(0.137e5, 9)
  })

  it('takes mean piston speed as two strokes a turn', () => {
    expect(meanPistonSpeed(0.1, 2 * Math.PI)).toBeCloseTo(0.2, 12)
  })

  it('refuses what is not a speed or a pressure', () => {
    expect(() => chenFlynnFriction(-1, 10)).toThrow(DomainError)
    expect(() => chenFlynnFriction(1e5, Number.NaN)).toThrow(/Speed is NaN/)
  })
})
