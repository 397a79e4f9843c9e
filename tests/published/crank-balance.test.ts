import { describe, expect, it } from 'vitest'
import { orderBalance } from '../support/crank-balance.ts'

const rpm = (turns: number): number => (turns * Math.PI) / 30

const cylinder = (degrees: number) => ({
  bankAngle: (degrees * Math.PI) / 180,
  // Pins shared: each is at top dead centre when the crank has turned to its bank.
  firingAngle: (degrees * Math.PI) / 180,
  position: 0,
})

const rightAngledTwin = [cylinder(-45), cylinder(45)]

describe('right-angled V-twin with a shared pin', () => {
  // Source: published exercise, read: 11.5 kg a cylinder, crank 75 mm, rod 300 mm, 500 rpm. The
  // greatest second-order force 836 N from memory of R. S. Khurmi & J. K. Gupta, Theory of
  // Machines, ch. 22; both values recomputed. Tolerance 0.05 %: the print is rounded to 1 N.
  const unit = 11.5 * 0.075 * rpm(500) ** 2

  it('has a first-order resultant of constant size m R ω² = 2364.6 N, turning with the crank', () => {
    const { force } = orderBalance(rightAngledTwin, 1)
    expect(Math.abs((unit * force.forward) / 2364.6 - 1)).toBeLessThan(0.0005)
    expect(force.backward).toBeLessThan(1e-12)
  })

  it('has a greatest second-order force of √2 m R ω² R/l = 836 N', () => {
    const { force } = orderBalance(rightAngledTwin, 2)
    const greatest = unit * 0.25 * (force.forward + force.backward)
    expect(Math.abs(greatest / 836 - 1)).toBeLessThan(0.0005)
    // Along one line, so equal halves turn each way.
    expect(force.forward).toBeCloseTo(force.backward, 12)
  })
})

describe('V-twin of ±45°, 2 kg, stroke 120, rod 240 mm, 2500 rpm', () => {
  // Source: published exercise, statement read; values recomputed: with the crank along the
  // centreline the first order gives 8224.7 N along it and the second nothing at that moment.
  it('has 8224.7 N of the first order at every crank angle, also along the centreline', () => {
    const { force } = orderBalance(rightAngledTwin, 1)
    const found = 2 * 0.06 * rpm(2500) ** 2 * force.forward
    expect(Math.abs(found / 8224.7 - 1)).toBeLessThan(0.0005)
  })
})

describe('three-cylinder radial', () => {
  // Source: T. Bevan, The Theory of Machines, ch. 14, example 12 (an open worked copy, read):
  // 4 lb a cylinder, stroke 5 in, rod 9 in, 1500 rpm, g 32.2 ft/s²; primary balance 4.29 lb at
  // 3.5 in, constant second-order resultant 266 lb. Cylinders 120° apart are inferred.
  const radial = [0, 120, 240].map(cylinder)

  it('needs 4.29 lb at 3.5 in against the first order', () => {
    const { force } = orderBalance(radial, 1)
    // Tolerance: half of the last printed digit.
    expect(Math.abs((4 * 2.5 * force.forward) / 3.5 - 4.29)).toBeLessThan(0.005)
    expect(force.backward).toBeLessThan(1e-12)
  })

  it('has a constant second-order resultant of 266 lb', () => {
    const { force } = orderBalance(radial, 2)
    const unit = (4 / 32.2) * (2.5 / 12) * rpm(1500) ** 2 * (2.5 / 9)
    expect(Math.abs(unit * (force.forward + force.backward) - 266)).toBeLessThan(0.5)
    expect(Math.min(force.forward, force.backward)).toBeLessThan(1e-12)
  })
})
