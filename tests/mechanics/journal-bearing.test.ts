import { describe, expect, it } from 'vitest'
import { type JournalBearingInput, journalBearing } from '../../src/mechanics/journal-bearing.ts'

const bearing: JournalBearingInput = {
  radius: 0.0315,
  radialClearance: 0.00003,
  width: 0.021,
  viscosity: 0.009,
  speed: 600,
  load: 9000,
}

describe('journalBearing', () => {
  it('depends on the Sommerfeld group alone', () => {
    const { sommerfeld } = journalBearing(bearing)
    const thicker = journalBearing({ ...bearing, viscosity: 0.018, load: 18_000 })
    expect(thicker.sommerfeld).toBeCloseTo(sommerfeld, 12)
    const wider = journalBearing({ ...bearing, radialClearance: 0.00006, speed: 2400 })
    expect(wider.sommerfeld).toBeCloseTo(sommerfeld, 12)
  })

  it('has Petroff’s torque: shear μ U / c over the whole journal', () => {
    const { petroffTorque, petroffPower } = journalBearing(bearing)
    const { radius, radialClearance, width, viscosity, speed } = bearing
    const shear = (viscosity * speed * radius) / radialClearance
    expect(petroffTorque).toBeCloseTo(shear * 2 * Math.PI * radius * width * radius, 12)
    expect(petroffPower).toBeCloseTo(petroffTorque * speed, 9)
  })

  it('names what does not fit', () => {
    expect(() => journalBearing({ ...bearing, load: 0 })).toThrow(/load/)
    expect(() => journalBearing({ ...bearing, radialClearance: 0.01 })).toThrow(/radialClearance/)
  })
})
