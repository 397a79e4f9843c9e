import { derivative } from 'mathjs'
import { describe, expect, it } from 'vitest'
import {
  pistonTravel,
  pistonTravelSlope,
  travelTable,
  volumeTable,
} from '../../src/mechanics/cylinder-volume.ts'

const DEGREE = Math.PI / 180

describe('cylinder volume', () => {
  // Worked example 16.1 of an open companion notebook to "Fundamental of Internal Combustion
  // Engines", read with its outputs: 3 litre, 6 cylinders, square, r 9, rod 172 mm: at 20° the
  // piston is 0.32 cm down and the volume 81.24 cm³. Half of the last printed digit.
  it('is the published one at 20°', () => {
    const bore = Math.cbrt((4 * 500) / Math.PI)
    const rodRatio = bore / 2 / 17.2
    const travel = pistonTravel(20 * DEGREE, rodRatio)
    expect(Math.abs(travel * bore - 0.32)).toBeLessThanOrEqual(0.005)
    const { volume } = volumeTable(rodRatio, 9, 1)
    // Index 400 is +20° in half degrees from −180°.
    expect(Math.abs(volume[400]! * 562.5 - 81.24)).toBeLessThanOrEqual(0.005)
  })

  it('has the slope that a symbolic library derives', () => {
    const travel = '(1 - cos(x)) / 2 + (1 - sqrt(1 - k^2 * sin(x)^2)) / (2 * k)'
    const slope = derivative(travel, 'x')
    for (const x of [-3, -1.2, 0.1, 0.8, 2, 3.1]) {
      const published = slope.evaluate({ x, k: 0.29 }) as number
      expect(pistonTravelSlope(x, 0.29)).toBeCloseTo(published, 12)
    }
  })

  it('tends to simple harmonic motion with a long rod', () => {
    for (const x of [0.3, 1, 2.5]) {
      expect(pistonTravel(x, 1e-9)).toBeCloseTo((1 - Math.cos(x)) / 2, 9)
      expect(pistonTravel(x, 0)).toBe((1 - Math.cos(x)) / 2)
    }
  })

  it('runs from one to 1/r and back, with tables that agree', () => {
    const { volume, inverse, logSlope } = volumeTable(0.3, 12, 2)
    const { travel } = travelTable(0.3, 2)
    expect(volume).toHaveLength(1441)
    expect(volume[0]).toBeCloseTo(1, 12)
    expect(volume[720]).toBeCloseTo(1 / 12, 12)
    expect(travel[720]).toBe(0)
    for (const i of [1, 300, 719, 1000]) {
      expect(volume[i]! * inverse[i]!).toBeCloseTo(1, 12)
      const step = Math.PI / 720
      const between = Math.log(volume[i + 1]! / volume[i - 1]!) / (2 * step)
      expect(Math.abs(logSlope[i]! - between)).toBeLessThan(1e-3)
    }
  })

  it('keeps tables apart by every number they depend on', () => {
    const first = volumeTable(0.3, 10, 1)
    expect(volumeTable(0.3, 10, 1)).toBe(first)
    expect(volumeTable(0.31, 10, 1).volume).not.toEqual(first.volume)
    expect(volumeTable(0.3, 10.5, 1).volume).not.toEqual(first.volume)
    for (let i = 0; i < 40; i++) volumeTable(0.2 + i / 1000, 10, 1)
    expect(volumeTable(0.3, 10, 1).volume).toEqual(first.volume)
  })
})
