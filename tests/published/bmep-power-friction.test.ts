import { unit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { chenFlynnFriction } from '../../src/mechanics/friction.ts'
import { fullLoad } from '../../src/mechanics/full-load.ts'
import type { FullLoadInput } from '../../src/mechanics/full-load-input.ts'
import {
  displacementOf,
  mepOfTorque,
  powerOfMep,
  torqueOfMep,
} from '../../src/mechanics/mean-effective-pressure.ts'

const RPM = Math.PI / 30
const si = (value: number, from: string, to: string) => unit(value, from).toNumber(to)
const within = (found: number, published: number, share: number) =>
  expect(Math.abs(found / published - 1)).toBeLessThanOrEqual(share)

describe('mean effective pressure, torque and power', () => {
  it('one pound foot in one cubic inch is 150.8 psi', () => {
    // Derived: 48 π = 150.79645; Heywood 1988 prints 75.4 nR T/Vd, from memory.
    const mep = mepOfTorque(si(1, 'lbf ft', 'N m'), si(1, 'in^3', 'm^3'))
    within(mep / si(1, 'psi', 'Pa'), 150.79645, 1e-6)
  })

  it('horsepower is torque times speed over 5252', () => {
    // Derived: 33000/2π = 5252.1131.
    const torque = si(5252.1131, 'lbf ft', 'N m')
    const displacement = si(350, 'in^3', 'm^3')
    const power = powerOfMep(mepOfTorque(torque, displacement), displacement, 100 * RPM)
    within(power, 100 * 550 * si(1, 'lbf ft', 'N m'), 1e-7)
  })

  it('250 N m from 2.0 l is 1570.8 kPa', () => {
    within(mepOfTorque(250, 2e-3) / 1e3, 1570.8, 1e-4)
    within(torqueOfMep(1570.8e3, 2e-3), 250, 1e-4)
  })

  // R. K. Rajput, A Textbook of Internal Combustion Engines, read in an open companion notebook
  // with printed outputs.
  it('two-stroke of Ex 17.1 p. 570: 6 bar, 110 × 140 mm, 1000 r/min, 13.30 kW', () => {
    const power = powerOfMep(6e5, displacementOf(0.11, 0.14, 1), 1000 * RPM, 1)
    within(power / 1e3, 13.3, 1e-3)
  })

  it('four-stroke of Ex 17.2 p. 571: 14.7 kW, 1000 r/min, 5.5 bar, bore 87.96, stroke 131.94', () => {
    // 0.05 %: bore enters by its cube.
    const power = powerOfMep(5.5e5, displacementOf(0.08796, 0.13194, 4), 1000 * RPM)
    within(power / 1e3, 14.7, 1.5e-3)
  })
})

describe('friction', () => {
  it('is 2.917 bar at 70 bar peak and 15 m/s', () => {
    // Chen & Flynn, SAE 650733, from memory: 0.137 + 0.005 · 70 + 0.162 · 15 = 2.917.
    within(chenFlynnFriction(70e5, 15) / 1e5, 2.917, 1e-9)
  })
})

describe('full load against published bands', () => {
  const plain: FullLoadInput = {
    bore: 0.0995,
    stroke: 0.0877,
    rodLength: 0.145,
    compressionRatio: 9,
    cylinders: 8,
    speed: 4000 * RPM,
    torquePeakSpeed: 4000 * RPM,
    highestSpeed: 6000 * RPM,
    fuel: 'pump-gasoline',
    induction: 'naturally-aspirated',
    boost: 0,
    intercoolerEffectiveness: 0,
  }
  // Typical bmep at full load, read in an online engineering dictionary (the same ranges stand in
  // Heywood 1988, section 2.7, from memory): naturally aspirated spark ignition 850–1050 kPa,
  // turbocharged 1250–1700 kPa, for production engines. Peak pressures 60–90 and 90–130 bar for
  // builds of higher output are from memory, a plausibility band only.
  it('a production-like engine has a published bmep', () => {
    // Breathing 0.90 at best where a performance build has 0.95.
    const { bmep } = fullLoad({ ...plain, breathingScale: 0.9 / 0.95 })
    expect(bmep).toBeGreaterThan(0.85e6)
    expect(bmep).toBeLessThan(1.1e6)
  })

  it('a production-like turbocharged engine has a published bmep', () => {
    const turbo = {
      ...plain,
      induction: 'turbocharged',
      boost: 6e4,
      compressionRatio: 8.5,
    } as const
    const { bmep } = fullLoad({ ...turbo, intercoolerEffectiveness: 0.5, breathingScale: 0.95 })
    expect(bmep).toBeGreaterThan(1.25e6)
    expect(bmep).toBeLessThan(1.7e6)
  })

  const fifteenPounds = si(15, 'psi', 'Pa')
  it.each([
    { name: 'naturally aspirated 10:1', change: { compressionRatio: 10 }, low: 6e6, high: 9e6 },
    {
      name: 'naturally aspirated 13.5:1 on race gasoline',
      change: { compressionRatio: 13.5, fuel: 'race-gasoline', breathingScale: 1.05 },
      low: 9e6,
      high: 11e6,
    },
    {
      name: '15 psi, intercooled',
      change: {
        compressionRatio: 8.8,
        induction: 'turbocharged',
        boost: fifteenPounds,
        intercoolerEffectiveness: 0.7,
      },
      low: 10e6,
      high: 13e6,
    },
  ] as const)('peak pressure of $name is plausible', ({ change, low, high }) => {
    const { cycle, bmep } = fullLoad({ ...plain, ...change })
    expect(cycle.peakPressure).toBeGreaterThan(low)
    expect(cycle.peakPressure).toBeLessThan(high)
    expect(bmep).toBeGreaterThan(0.9e6)
    expect(bmep).toBeLessThan(2.3e6)
  })
})
