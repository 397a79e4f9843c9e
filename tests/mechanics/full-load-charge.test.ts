import { describe, expect, it } from 'vitest'
import { airDensity, airPressureShare, evaporativeCooling } from '../../src/mechanics/charge.ts'
import { FUELS } from '../../src/mechanics/fuels.ts'
import { fullLoadCharge } from '../../src/mechanics/full-load-charge.ts'
import { nitrousFuel } from '../../src/mechanics/nitrous.ts'
import { v8 } from './full-load-case.ts'

const gasoline = FUELS['pump-gasoline']
const swept = (Math.PI / 4) * 0.1021 ** 2 * 0.0884

describe('the charge of a cylinder, by its balances', () => {
  const charge = fullLoadCharge(v8)

  // Definition of volumetric efficiency, on air at its own part of the manifold's pressure.
  it('holds the air that the breathing says', () => {
    const share = airPressureShare(gasoline, charge.lambda)
    const density = airDensity(charge.manifoldPressure * share, charge.chargeTemperature)
    expect(share).toBeLessThan(1)
    expect(charge.airMass / (charge.breathing * swept * density)).toBeCloseTo(1, 12)
  })

  it('holds the fuel that the air ratio says', () => {
    const ratio = charge.airMass / charge.fuelMass
    expect(ratio / (gasoline.stoichiometricRatio * charge.lambda)).toBeCloseTo(1, 12)
  })

  // Evaporating fuel cools the charge by its latent heat, but not below 270 K.
  it.each([
    ['pump-gasoline', 298],
    ['methanol', 298],
    ['pump-gasoline', 320],
  ] as const)('is cooled by its %s from %d K', (fuel, ambientTemperature) => {
    const found = fullLoadCharge({ ...v8, fuel, ambientTemperature })
    const cooling = evaporativeCooling(FUELS[fuel], found.lambda)
    expect(cooling).toBeGreaterThan(0)
    const expected = Math.max(270, ambientTemperature - cooling)
    expect(found.chargeTemperature).toBeCloseTo(expected, 9)
  })

  it('is not warmed to 270 K where the day is colder', () => {
    const cold = fullLoadCharge({ ...v8, ambientTemperature: 255 })
    expect(cold.chargeTemperature).toBeCloseTo(255, 9)
  })
})

describe('nitrous oxide in the charge', () => {
  const bare = fullLoadCharge(v8)
  const mass = 0.1 * bare.airMass
  const shot = fullLoadCharge(v8, mass)
  const own = mass * nitrousFuel(gasoline, bare.lambda)

  it('brings its own fuel, and leaves the air as it is', () => {
    expect(shot.airMass).toBe(bare.airMass)
    expect((shot.fuelMass - bare.fuelMass) / own).toBeCloseTo(1, 9)
    expect(shot.addedHeat).toBeGreaterThan(bare.addedHeat)
  })

  // Ideal gas, p V = m R T: at one pressure the temperature falls as the mass grows.
  it('cools the charge just so far that more mass fits in at the same pressure', () => {
    const trapped = (bare.airMass + bare.fuelMass) / (1 - bare.residualShare)
    const growth = (trapped + mass + own) / trapped
    expect(bare.startTemperature / shot.startTemperature).toBeCloseTo(growth, 9)
    expect(shot.startPressure / bare.startPressure).toBeCloseTo(1, 12)
  })

  it('cools it to 220 K at most; what is more then raises the pressure', () => {
    const flood = fullLoadCharge(v8, 2 * bare.airMass)
    expect(flood.startTemperature).toBe(220)
    expect(flood.startPressure).toBeGreaterThan(bare.startPressure)
  })
})
