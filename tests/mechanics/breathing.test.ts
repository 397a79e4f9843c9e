import { describe, expect, it } from 'vitest'
import {
  BEST_VOLUMETRIC_EFFICIENCY,
  trappedCharge,
  volumetricEfficiency,
} from '../../src/mechanics/breathing.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'

describe('volumetricEfficiency', () => {
  it('is as stated at the torque peak, whatever the tilt', () => {
    for (const tilt of [0, 0.1, 0.2, 5]) {
      expect(volumetricEfficiency(400, 400, tilt)).toBeCloseTo(BEST_VOLUMETRIC_EFFICIENCY, 12)
    }
    expect(volumetricEfficiency(400, 400, 0.1, 0.8)).toBeCloseTo(0.76, 12)
  })

  it('rises by its tilt at the torque peak', () => {
    const up = volumetricEfficiency(401, 400, 0.15)
    const down = volumetricEfficiency(399, 400, 0.15)
    const found = Math.log(up / down) / Math.log(401 / 399)
    // The shape's own denominator is left out of the setting: up to a tenth of the tilt.
    expect(Math.abs(found - 0.15)).toBeLessThan(0.015)
  })

  it('falls to both sides and never to nothing', () => {
    const at = (speed: number) => volumetricEfficiency(speed, 400)
    expect(at(200)).toBeLessThan(at(300))
    expect(at(300)).toBeLessThan(at(400))
    expect(at(500)).toBeLessThan(at(400))
    expect(at(600)).toBeLessThan(at(500))
    expect(at(1300)).toBeGreaterThan(0.3)
    expect(at(52)).toBeGreaterThan(0.5)
  })

  it('refuses speeds and scales out of range', () => {
    expect(() => volumetricEfficiency(0, 400)).toThrow(DomainError)
    expect(() => volumetricEfficiency(400, 400, 0, 3)).toThrow(/scale is 3/)
  })
})

describe('trappedCharge', () => {
  const trapped = trappedCharge(7e-4, 300, 1.05e5, 6e-4, 10, 287)
  it('keeps mass and the gas law', () => {
    const clearance = 6e-4 / 9
    const residual = trapped.mass - 7e-4
    expect(residual).toBeCloseTo((1.05e5 * clearance) / (287 * 1150), 9)
    const law = (trapped.mass * 287 * trapped.temperature) / (6e-4 + clearance)
    expect(trapped.pressure / law).toBeCloseTo(1, 12)
  })

  it('leaves less behind with more compression and less back pressure', () => {
    const tighter = trappedCharge(7e-4, 300, 1.05e5, 6e-4, 13, 287)
    const freer = trappedCharge(7e-4, 300, 0.9e5, 6e-4, 10, 287)
    expect(tighter.residualShare).toBeLessThan(trapped.residualShare)
    expect(freer.residualShare).toBeLessThan(trapped.residualShare)
    expect(trapped.temperature).toBeGreaterThan(320)
    expect(trapped.temperature).toBeLessThan(370)
  })
})
