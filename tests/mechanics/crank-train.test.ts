import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  COSINE,
  type CylinderForceInput,
  cylinderForces,
  emptyCrankShape,
  fillCrankShape,
  SINE,
  zeroLoadSpeed,
} from '../../src/mechanics/crank-train.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { boreArea, pistonSpeed, pistonTravel } from '../../src/mechanics/slider-crank.ts'
import { pressureTrace } from '../support/pressure-trace.ts'

const base: CylinderForceInput = {
  bore: 0.1,
  stroke: 0.09,
  rodLength: 0.15,
  reciprocatingMass: 0.9,
  bigEndMass: 0.6,
  speed: 600,
  angle: 0.3,
  gaugePressure: 5e6,
}

describe('the rotating mass', () => {
  it('pulls with m r ω² whatever the angle, and not at all where there is none', () => {
    for (const angle of [0, 1, 4]) {
      const { bigEnd } = cylinderForces({ ...base, angle })
      expect(bigEnd).toBeCloseTo(0.6 * 0.045 * 600 ** 2, 6)
    }
    const { bigEndMass: _, ...bare } = base
    expect(cylinderForces(bare).bigEnd).toBe(0)
  })
})

describe('a crank turned degree by degree', () => {
  it('holds sines and cosines of a whole turn', () => {
    expect([SINE.length, COSINE.length]).toEqual([360, 360])
    for (let degree = 0; degree < 360; degree++) {
      expect(SINE[degree]).toBeCloseTo(Math.sin((degree * Math.PI) / 180), 15)
      expect(COSINE[degree]).toBeCloseTo(Math.cos((degree * Math.PI) / 180), 15)
    }
  })

  it('is worked anew for another rod, and only then', () => {
    const shape = emptyCrankShape()
    fillCrankShape(shape, 0.25)
    expect(shape.rodTangent[90]).toBeCloseTo(Math.tan(Math.asin(0.25)), 12)
    fillCrankShape(shape, 0.3)
    expect(shape.rodTangent[90]).toBeCloseTo(Math.tan(Math.asin(0.3)), 12)
  })
})

/** Torque of the crank averaged over the cycle of 720 samples. */
function meanTorque(pressure: Float64Array, change: Partial<CylinderForceInput>): number {
  const total = pressure.reduce((sum, absolute, index) => {
    const angle = (index * Math.PI) / 180
    const gaugePressure = absolute - 101_325
    return sum + cylinderForces({ ...base, ...change, angle, gaugePressure }).torque
  }, 0)
  return total / 720
}

/** Work of the gas over the cycle: ∮ p A dx by the same samples, dx from the piston's speed. */
function indicatedWork(pressure: Float64Array): number {
  const step = Math.PI / 180
  return pressure.reduce((sum, absolute, index) => {
    const slope = pistonSpeed(0.045, 0.15, index * step, 1)
    return sum + absolute * boreArea(0.1) * slope * step
  }, 0)
}

describe('cylinderForces', () => {
  it('has a mean torque of indicated work / 4π at any speed and mass', () => {
    const pressure = pressureTrace()
    const expected = indicatedWork(pressure) / (4 * Math.PI)
    expect(expected).toBeGreaterThan(10)
    for (const change of [
      { speed: 0 },
      { speed: 300 },
      { speed: 900 },
      { speed: 600, reciprocatingMass: 3 },
      { speed: 600, bigEndMass: 0 },
    ]) {
      // Inertia gives nothing back over a turn; what is left is rounding of forces 1e5 N and more.
      expect(Math.abs(meanTorque(pressure, change) / expected - 1)).toBeLessThan(1e-9)
    }
  })

  it('keeps energy: torque times speed is piston force times piston speed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 7, noNaN: true }),
        fc.double({ min: -1e5, max: 1e7, noNaN: true }),
        (angle, gaugePressure) => {
          const forces = cylinderForces({ ...base, angle, gaugePressure })
          const power = forces.piston * pistonSpeed(0.045, 0.15, angle, base.speed)
          const scale = Math.abs(forces.piston) * 0.045 * base.speed + 1
          expect(Math.abs(forces.torque * base.speed - power)).toBeLessThan(1e-12 * scale)
        },
      ),
    )
  })

  it('splits the rod force into along and across without loss', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 7, noNaN: true }), (angle) => {
        const forces = cylinderForces({ ...base, angle })
        const size = Math.abs(forces.rod)
        expect(Math.hypot(forces.tangential, forces.radial)).toBeCloseTo(size, 6)
        expect(Math.hypot(forces.piston, forces.wall)).toBeCloseTo(size, 6)
      }),
    )
  })

  it('scales inertia with the square of speed and, by size alone, with its fourth power', () => {
    const one = cylinderForces(base)
    expect(cylinderForces({ ...base, speed: 1200 }).inertia / one.inertia).toBeCloseTo(4, 12)
    expect(cylinderForces({ ...base, speed: 1200 }).bigEnd / one.bigEnd).toBeCloseTo(4, 12)
    const twice = cylinderForces({
      ...base,
      bore: 0.2,
      stroke: 0.18,
      rodLength: 0.3,
      reciprocatingMass: 8 * 0.9,
      bigEndMass: 8 * 0.6,
    })
    expect(twice.inertia / one.inertia).toBeCloseTo(16, 10)
    expect(twice.gas / one.gas).toBeCloseTo(4, 12)
  })

  it('has no wall force with an infinite rod', () => {
    const forces = cylinderForces({ ...base, rodLength: Number.POSITIVE_INFINITY })
    expect(forces.wall).toBe(0)
    expect(forces.rod).toBe(forces.piston)
  })

  it('names what it refuses', () => {
    expect(() => cylinderForces({ ...base, speed: -1 })).toThrow(/speed is -1/)
    expect(() => cylinderForces({ ...base, bore: Number.NaN })).toThrow(DomainError)
    expect(() => cylinderForces({ ...base, rodLength: 0.04 })).toThrow(/rodLength/)
  })
})

describe('zeroLoadSpeed', () => {
  it('is infinite where inertia pushes the same way as gas', () => {
    expect(zeroLoadSpeed({ ...base, angle: Math.PI })).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('fillCrankShape', () => {
  it('matches the travel by differences of whole degrees', () => {
    const shape = emptyCrankShape()
    fillCrankShape(shape, 0.3)
    const step = Math.PI / 180
    for (let degree = 0; degree < 360; degree += 7) {
      const at = (turn: number): number => pistonTravel(0.3, 1, turn * step)
      const second = (at(degree + 1) - 2 * at(degree) + at(degree - 1)) / (step * step)
      // Central difference: its error is step²/12 times the fourth derivative, about 1e-4.
      expect(Math.abs(second / 0.3 - shape.acceleration[degree]!)).toBeLessThan(2e-4)
    }
    expect(shape.rodTangent[90]).toBeCloseTo(0.3 / Math.sqrt(1 - 0.09), 14)
  })
})
