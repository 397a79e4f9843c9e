import { derivative, parse } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import {
  clearanceVolume,
  cylinderVolume,
  meanPistonSpeed,
  pistonAcceleration,
  pistonSpeed,
  pistonTravel,
  rodAngle,
  sweptVolume,
  twoTermAccelerationFactor,
} from '../../src/mechanics/slider-crank.ts'

// Oracle: the travel written as in textbooks, differentiated symbolically by mathjs.
const TRAVEL = parse('r * (1 - cos(q)) + l - sqrt(l^2 - r^2 * sin(q)^2)')
const SPEED = derivative(TRAVEL, 'q')
const ACCELERATION = derivative(SPEED, 'q')
const DEGREES = Array.from({ length: 73 }, (_, index) => index * 5)
const CRANKS = [
  { radius: 0.0442, rod: 0.1448 },
  { radius: 0.05, rod: 0.14 },
  { radius: 0.03, rod: 0.3 },
]

describe('slider-crank motion', () => {
  it.each(CRANKS)('agrees with symbolic derivatives, R $radius, l $rod', ({ radius, rod }) => {
    const speed = 600
    for (const degrees of DEGREES) {
      const q = (degrees * Math.PI) / 180
      const scope = { r: radius, l: rod, q }
      // Tolerance: rounding of the textbook form, which subtracts nearly equal lengths.
      expect(pistonTravel(radius, rod, q)).toBeCloseTo(TRAVEL.evaluate(scope), 14)
      expect(pistonSpeed(radius, rod, q, speed)).toBeCloseTo(speed * SPEED.evaluate(scope), 10)
      const acceleration = speed * speed * ACCELERATION.evaluate(scope)
      const found = pistonAcceleration(radius, rod, q, speed)
      expect(Math.abs(found - acceleration)).toBeLessThan(1e-8 * radius * speed * speed)
    }
  })

  it('is simple harmonic with an infinite rod', () => {
    for (const degrees of DEGREES) {
      const q = (degrees * Math.PI) / 180
      expect(pistonTravel(0.05, Number.POSITIVE_INFINITY, q)).toBeCloseTo(
        0.05 * (1 - Math.cos(q)),
        15,
      )
      expect(pistonAcceleration(0.05, Number.POSITIVE_INFINITY, q, 100)).toBeCloseTo(
        500 * Math.cos(q),
        10,
      )
      expect(rodAngle(0.05, Number.POSITIVE_INFINITY, q)).toBeCloseTo(0, 15)
    }
  })

  it('has its known values at the dead centres', () => {
    expect(pistonTravel(0.05, 0.15, Math.PI)).toBeCloseTo(0.1, 15)
    expect(pistonAcceleration(0.05, 0.15, 0, 100)).toBeCloseTo(500 * (4 / 3), 9)
    expect(pistonAcceleration(0.05, 0.15, Math.PI, 100)).toBeCloseTo(-500 * (2 / 3), 9)
  })

  it('differs from the two-term form by the order of λ³', () => {
    // The next terms of the series are λ³/4 (cos 2θ − cos 4θ) and less: at most about λ³/2.
    for (const ratio of [0.2, 0.3]) {
      for (const degrees of DEGREES) {
        const q = (degrees * Math.PI) / 180
        const exact = pistonAcceleration(ratio, 1, q, 1) / ratio
        const gap = Math.abs(exact - twoTermAccelerationFactor(ratio, q))
        expect(gap).toBeLessThan(0.6 * ratio ** 3)
      }
    }
  })

  it('covers twice the stroke in a turn', () => {
    // Mean of |v| over a turn by the midpoint rule, against the definition 2 S n.
    const samples = 3600
    const total = Array.from({ length: samples }, (_, index) =>
      Math.abs(pistonSpeed(0.05, 0.15, ((index + 0.5) * 2 * Math.PI) / samples, 300)),
    ).reduce((sum, value) => sum + value, 0)
    expect(total / samples / meanPistonSpeed(0.1, 300)).toBeCloseTo(1, 6)
  })
})

describe('cylinderVolume', () => {
  const geometry = { bore: 0.1, stroke: 0.09, rodLength: 0.15, compressionRatio: 10 }

  it('runs from clearance volume to compression ratio times that', () => {
    const clearance = clearanceVolume(geometry)
    expect(cylinderVolume(geometry, 0)).toBeCloseTo(clearance, 15)
    expect(cylinderVolume(geometry, Math.PI) / clearance).toBeCloseTo(10, 12)
    expect(sweptVolume(0.1, 0.09) / clearance).toBeCloseTo(9, 12)
  })

  it('refuses what cannot be built, naming the argument', () => {
    expect(() => pistonTravel(0.05, 0.05, 1)).toThrow(/rodLength is 0\.05/)
    expect(() => pistonTravel(Number.NaN, 0.15, 1)).toThrow(DomainError)
    expect(() => clearanceVolume({ ...geometry, compressionRatio: 1 })).toThrow(/compressionRatio/)
    expect(() => cylinderVolume({ ...geometry, bore: 0 }, 1)).toThrow(/bore is 0/)
  })
})
