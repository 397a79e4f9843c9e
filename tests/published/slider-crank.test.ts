import { describe, expect, it } from 'vitest'
import {
  clearanceVolume,
  cylinderVolume,
  meanPistonSpeed,
  pistonSpeed,
  pistonTravel,
  twoTermAccelerationFactor,
} from '../../src/mechanics/slider-crank.ts'

const rpm = (turns: number): number => (turns * Math.PI) / 30
const degrees = (angle: number): number => (angle * Math.PI) / 180

// Source: worked example 16.1 of an open companion notebook to the textbook "Fundamental of
// Internal Combustion Engines", chapter 16; read with its printed outputs.
describe('a 3-litre square six, compression 9, rod 172 mm, at 3000 rpm', () => {
  const bore = ((3e-3 / 6) * (4 / Math.PI)) ** (1 / 3)
  const geometry = { bore, stroke: bore, rodLength: 0.172, compressionRatio: 9 }

  it('has bore 8.60 cm and mean piston speed 8.60 m/s', () => {
    // Tolerance: half of the last printed digit.
    expect(Math.abs(bore * 100 - 8.6)).toBeLessThan(0.005)
    expect(Math.abs(meanPistonSpeed(bore, rpm(3000)) - 8.6)).toBeLessThan(0.005)
  })

  it('has clearance volume 62.5 cm³', () => {
    expect(Math.abs(clearanceVolume(geometry) * 1e6 - 62.5)).toBeLessThan(0.05)
  })

  it('at 20° moves at 5.71 m/s, 0.32 cm down, with 81.24 cm³ above the piston', () => {
    const angle = degrees(20)
    expect(Math.abs(pistonSpeed(bore / 2, 0.172, angle, rpm(3000)) - 5.71)).toBeLessThan(0.005)
    expect(Math.abs(pistonTravel(bore / 2, 0.172, angle) * 100 - 0.32)).toBeLessThan(0.005)
    // The example carries its travel on with four digits: 0.01 % of the volume.
    expect(Math.abs(cylinderVolume(geometry, angle) * 1e6 - 81.24)).toBeLessThan(0.01)
  })
})

// Source: R. S. Khurmi & J. K. Gupta, Theory of Machines, example 15.3: inputs and formula from an
// open worked copy; the answer 6.54 m/s at 75° from memory. It uses the two-term speed.
describe('a crank of 300 mm with a rod of 1 m at 200 rpm', () => {
  const speed = rpm(200)
  const twoTermSpeed = (angle: number): number =>
    0.3 * speed * (Math.sin(angle) + (0.3 * Math.sin(2 * angle)) / 2)

  it('is fastest where the two-term acceleration vanishes, at 75°, with 6.54 m/s', () => {
    // cos θ + λ cos 2θ = 0 solved by the quadratic formula in cos θ.
    const cosine = (-1 + Math.sqrt(1 + 8 * 0.3 * 0.3)) / (4 * 0.3)
    const angle = Math.acos(cosine)
    expect(twoTermAccelerationFactor(0.3, angle)).toBeCloseTo(0, 12)
    expect(Math.abs((angle * 180) / Math.PI - 75)).toBeLessThan(0.5)
    expect(Math.abs(twoTermSpeed(angle) - 6.54)).toBeLessThan(0.005)
  })

  it('reaches 6.5617 m/s at 74.53° by the exact form', () => {
    // Recomputed independently with another numeric library, to the digits given.
    const steps = Array.from({ length: 18_001 }, (_, index) => index / 100)
    const speeds = steps.map((at) => pistonSpeed(0.3, 1, degrees(at), speed))
    const most = Math.max(...speeds)
    expect(Math.abs(most - 6.5617)).toBeLessThan(0.0001)
    expect(Math.abs(steps[speeds.indexOf(most)]! - 74.53)).toBeLessThan(0.02)
  })
})
