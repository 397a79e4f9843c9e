import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { closedThrottle, fullLoad } from '../../src/mechanics/full-load.ts'
import {
  BOOST_RANGE,
  BREATHING_RANGE,
  calibrateToPeakPressure,
  calibrateToPower,
} from '../../src/mechanics/full-load-calibration.ts'
import type { FullLoadInput } from '../../src/mechanics/full-load-input.ts'
import { RPM, v8 } from './full-load-case.ts'

const turbo: FullLoadInput = {
  ...v8,
  compressionRatio: 8.8,
  induction: 'turbocharged',
  boost: 1e5,
  intercoolerEffectiveness: 0.7,
}

/** Boosted engines over the whole allowed range. */
const engines = fc
  .record({
    bore: fc.double({ min: 0.05, max: 0.15, noNaN: true }),
    strokeRatio: fc.double({ min: 0.6, max: 1.4, noNaN: true }),
    rodRatio: fc.double({ min: 1.3, max: 2.4, noNaN: true }),
    compressionRatio: fc.double({ min: 6, max: 17.8, noNaN: true }),
    speed: fc.double({ min: 500 * RPM, max: 12000 * RPM, noNaN: true }),
    torquePeakSpeed: fc.double({ min: 500 * RPM, max: 12000 * RPM, noNaN: true }),
    fuel: fc.constantFrom('pump-gasoline', 'race-gasoline', 'e85', 'methanol'),
    induction: fc.constantFrom('turbocharged', 'supercharged'),
    boost: fc.double({ min: 0, max: 3.9e5, noNaN: true }),
    intercoolerEffectiveness: fc.double({ min: 0, max: 1, noNaN: true }),
    compressorEfficiency: fc.double({ min: 0.5, max: 0.85, noNaN: true }),
    ambientPressure: fc.double({ min: 6e4, max: 1.08e5, noNaN: true }),
    ambientTemperature: fc.double({ min: 250, max: 325, noNaN: true }),
  })
  .map(({ strokeRatio, rodRatio, ...x }): FullLoadInput => {
    const stroke = x.bore * strokeRatio
    return { ...x, stroke, rodLength: stroke * rodRatio, cylinders: 8, highestSpeed: 1250 } as const
  })
const runs = { numRuns: 400, seed: 11 }

const figures = (input: FullLoadInput) => {
  const { cycle, bmep, fmep, torque, power, chargeTemperature, charge } = fullLoad(input)
  return [cycle.peakPressure, cycle.imepNet, bmep, fmep, torque, power, chargeTemperature].concat(
    Object.values(charge),
  )
}

describe('fullLoad over its whole range', () => {
  it('gives finite figures', () => {
    fc.assert(
      fc.property(engines, (input) => {
        const load = fullLoad(input)
        expect(figures(input).every(Number.isFinite)).toBe(true)
        expect(load.cycle.pressure.every((p) => p > 0 && p < 1e8)).toBe(true)
      }),
      runs,
    )
  })

  it('never lowers the peak pressure for more boost', () => {
    fc.assert(
      fc.property(engines, fc.double({ min: 500, max: 1e4, noNaN: true }), (input, more) => {
        const { peakPressure } = fullLoad(input).cycle
        const boosted = fullLoad({ ...input, boost: input.boost + more }).cycle
        expect(boosted.peakPressure).toBeGreaterThanOrEqual(peakPressure)
      }),
      runs,
    )
  })

  it('never lowers the peak pressure for more compression', () => {
    fc.assert(
      fc.property(engines, fc.double({ min: 0.01, max: 0.2, noNaN: true }), (input, more) => {
        const { peakPressure } = fullLoad(input).cycle
        const tighter = fullLoad({ ...input, compressionRatio: input.compressionRatio + more })
        expect(tighter.cycle.peakPressure).toBeGreaterThanOrEqual(peakPressure)
      }),
      runs,
    )
  })

  it('never retards for more octane', () => {
    fc.assert(
      fc.property(engines, (input) => {
        const { sparkRetard } = fullLoad({ ...input, knockNumber: 95 })
        expect(fullLoad({ ...input, knockNumber: 97 }).sparkRetard).toBeLessThanOrEqual(sparkRetard)
      }),
      runs,
    )
  })

  it('never lowers the peak of a naturally aspirated engine for compression or nitrous oxide', () => {
    fc.assert(
      fc.property(engines, fc.double({ min: 0.01, max: 0.2, noNaN: true }), (boosted, more) => {
        const input = { ...boosted, induction: 'nitrous', boost: 0 } as const
        const base = fullLoad(input)
        const tighter = fullLoad({ ...input, compressionRatio: input.compressionRatio + more })
        expect(tighter.cycle.peakPressure).toBeGreaterThanOrEqual(base.cycle.peakPressure)
        const part = 0.5 * Math.max(1e3, base.power)
        const half = fullLoad({ ...input, nitrousPower: part })
        const whole = fullLoad({ ...input, nitrousPower: 2 * part })
        expect(half.cycle.peakPressure).toBeGreaterThan(base.cycle.peakPressure)
        expect(whole.cycle.peakPressure).toBeGreaterThan(half.cycle.peakPressure)
        expect(Number.isFinite(whole.power)).toBe(true)
      }),
      runs,
    )
  })

  it('gives torque by the number of cylinders', () => {
    const four = fullLoad({ ...v8, cylinders: 4 })
    expect(Math.abs((2 * four.torque) / fullLoad(v8).torque - 1)).toBeLessThan(1e-12)
    expect(four.bmep).toBe(fullLoad(v8).bmep)
  })
})

describe('fullLoad of common engines', () => {
  it.each([
    [v8, 2000],
    [v8, 3500],
    [v8, 4500],
    [{ ...v8, bore: 0.086, stroke: 0.086, rodLength: 0.14, cylinders: 4 }, 5500],
    [{ ...v8, bore: 0.108, stroke: 0.1016, rodLength: 0.156 }, 4000],
    [turbo, 4000],
    [{ ...turbo, induction: 'supercharged', boost: 6e4 } as const, 4500],
  ])('peaks in torque near the speed it is said to (%#)', (engine, peak) => {
    let best = 0
    let at = 0
    for (let share = 0.5; share <= 1.5; share += 0.01) {
      const { torque } = fullLoad({
        ...engine,
        speed: share * peak * RPM,
        torquePeakSpeed: peak * RPM,
      })
      if (torque > best) {
        best = torque
        at = share
      }
    }
    // A torque curve is flat on top: 6 % of speed is well below 1 % of torque.
    expect(Math.abs(at - 1)).toBeLessThan(0.06)
  })

  it('makes its most power above the torque peak', () => {
    const power = (turns: number) => fullLoad({ ...v8, speed: turns * RPM }).power
    expect(power(5800)).toBeGreaterThan(power(4500))
    expect(power(9000)).toBeLessThan(power(5800))
  })

  it('retards less on fuel of more octane and makes more torque with it', () => {
    const hot = { ...turbo, boost: 1.5e5, intercoolerEffectiveness: 0 }
    const pump = fullLoad(hot)
    const race = fullLoad({ ...hot, fuel: 'race-gasoline' })
    expect(pump.knockLimited).toBe(true)
    expect(race.sparkRetard).toBeLessThan(pump.sparkRetard)
    expect(race.torque).toBeGreaterThan(pump.torque)
    expect(fullLoad({ ...v8, compressionRatio: 8 })).toMatchObject({
      knockLimited: false,
      sparkRetard: 0,
    })
  })

  it('breathes denser through an intercooler', () => {
    const hot = fullLoad({ ...turbo, intercoolerEffectiveness: 0 })
    const cool = fullLoad(turbo)
    expect(cool.chargeTemperature).toBeLessThan(hot.chargeTemperature)
    expect(cool.torque).toBeGreaterThan(hot.torque)
    expect(cool.manifoldPressure).toBe(101325 + 1e5)
  })

  it('pays for a supercharger at the crank and for a turbine in pumping', () => {
    const blown = fullLoad({ ...turbo, induction: 'supercharged', compressorEfficiency: 0.72 })
    const turbine = fullLoad({ ...turbo, compressorEfficiency: 0.72 })
    expect(blown.charge.compressorPower).toBeGreaterThan(10e3)
    expect(turbine.charge.compressorPower).toBe(0)
    expect(turbine.cycle.pumping).toBeGreaterThan(blown.cycle.pumping)
  })

  it.each([50e3, 112e3, 224e3])('gains %d W from nitrous oxide', (nitrousPower) => {
    const with_ = fullLoad({ ...v8, induction: 'nitrous', nitrousPower })
    const without = fullLoad({ ...v8, induction: 'nitrous' })
    // 5 %: the dose is corrected once.
    expect(Math.abs((with_.power - without.power) / nitrousPower - 1)).toBeLessThan(0.05)
    expect(with_.cycle.peakPressure).toBeGreaterThan(without.cycle.peakPressure)
    expect(without.power).toBe(fullLoad(v8).power)
  })

  it('loses power with height as density does', () => {
    // SAE J1349 and its like correct full-load power by density; friction takes a fixed part, so
    // the loss is a little more than that of density alone.
    const high = fullLoad({ ...v8, ambientPressure: 84307, ambientTemperature: 278.24 })
    const low = fullLoad({ ...v8, ambientPressure: 101325, ambientTemperature: 288.15 })
    expect(high.power / low.power).toBeLessThan(0.8617)
    expect(high.power / low.power).toBeGreaterThan(0.8617 - 0.06)
  })

  it('burns no more heat than its fuel holds', () => {
    const { charge } = fullLoad(v8)
    expect(charge.addedHeat).toBeLessThan(charge.fuelMass * 43.5e6)
    // Heywood 1988, section 6.4: residual share at full load is a few per cent, from memory.
    expect(charge.residualShare).toBeGreaterThan(0.01)
    expect(charge.residualShare).toBeLessThan(0.08)
  })
})

describe('closedThrottle', () => {
  it('compresses a thin charge and no more', () => {
    const cycle = closedThrottle(v8)
    // Between isothermal r and adiabatic r^1.4 times the manifold pressure.
    expect(cycle.peakPressure).toBeGreaterThan(10 * 3e4)
    expect(cycle.peakPressure).toBeLessThan(10 ** 1.4 * 3e4)
    expect(cycle.imepNet).toBeLessThan(-5e4)
    expect(cycle.pressure[450]!).toBeCloseTo(3e4, 6)
    expect(closedThrottle(v8, 6e4).peakPressure).toBeGreaterThan(cycle.peakPressure)
  })
})

describe('calibration', () => {
  it('sets the breathing of a naturally aspirated engine to its power', () => {
    const found = calibrateToPower(v8, 230e3)
    expect(found.reached).toBe(true)
    const { power } = fullLoad({ ...v8, breathingScale: found.breathingScale })
    expect(Math.abs(power / 230e3 - 1)).toBeLessThan(1e-6)
    expect(found.boost).toBe(0)
    expect(Math.abs(found.reachable / 230e3 - 1)).toBeLessThan(1e-6)
  })

  it('sets the boost of a boosted engine to its power', () => {
    const found = calibrateToPower({ ...turbo, boost: 0 }, 450e3)
    expect(found.reached).toBe(true)
    expect(found.breathingScale).toBe(1)
    const { power } = fullLoad({ ...turbo, boost: found.boost })
    expect(Math.abs(power / 450e3 - 1)).toBeLessThan(1e-6)
  })

  it('keeps a known boost and sets breathing when asked', () => {
    const found = calibrateToPower(turbo, 430e3, 'breathing')
    expect(found.boost).toBe(1e5)
    expect(found.reached).toBe(true)
  })

  it('says when the power cannot be had, and what can', () => {
    const high = calibrateToPower(v8, 900e3)
    expect(high).toMatchObject({ reached: false, breathingScale: BREATHING_RANGE.most })
    const most = fullLoad({ ...v8, breathingScale: BREATHING_RANGE.most }).power
    expect(high.reachable).toBe(most)
    const low = calibrateToPower(turbo, 1e3)
    expect(low).toMatchObject({ reached: false, boost: BOOST_RANGE.least })
    expect(low.reachable).toBeGreaterThan(1e3)
  })

  it('takes the boost of a blower for its unknown too, and the breathing of an engine on nitrous', () => {
    const blown = calibrateToPower({ ...turbo, induction: 'supercharged', boost: 0 }, 400e3)
    expect(blown).toMatchObject({ reached: true, breathingScale: 1 })
    expect(blown.boost).toBeGreaterThan(0)
    const shot = calibrateToPower({ ...v8, induction: 'nitrous', nitrousPower: 70e3 }, 300e3)
    expect(shot).toMatchObject({ reached: true, boost: 0 })
  })

  // Halving alone would take log₂(10¹⁰) = 33 steps to a ten-thousand-millionth of the range.
  it.each([215e3, 230e3, 260e3, 290e3])(
    'finds %d W in less than half the steps of halving',
    (power) => {
      let asked = 0
      const counted = Object.defineProperty({ ...v8 }, 'fuel', {
        enumerable: true,
        get: () => {
          asked++
          return 'pump-gasoline'
        },
      })
      // Each look at a setting spreads the input once.
      expect(calibrateToPower(counted, power).reached).toBe(true)
      expect(asked).toBeGreaterThan(2)
      expect(asked).toBeLessThan(16)
    },
  )

  it('reaches the ends of the range themselves, and nothing past them', () => {
    for (const breathingScale of [BREATHING_RANGE.least, BREATHING_RANGE.most]) {
      const { power } = fullLoad({ ...v8, breathingScale })
      expect(calibrateToPower(v8, power)).toMatchObject({ reached: true, breathingScale })
    }
    const { power } = fullLoad({ ...v8, breathingScale: BREATHING_RANGE.least })
    expect(calibrateToPower(v8, 0.999 * power).reached).toBe(false)
  })

  it('sets the heat to a measured peak pressure', () => {
    const found = calibrateToPeakPressure(v8, 7.2e6)
    expect(found.reached).toBe(true)
    const { cycle } = fullLoad({ ...v8, heatScale: found.heatScale })
    expect(Math.abs(cycle.peakPressure / 7.2e6 - 1)).toBeLessThan(1e-6)
    expect(calibrateToPeakPressure(v8, 5e7).reached).toBe(false)
  })
})

describe('refusals', () => {
  it.each([
    [{ boost: 1e4 }, /boost is 10000; it must be 0 for naturally-aspirated/],
    [{ compressionRatio: 25 }, /compressionRatio/],
    [{ speed: Number.NaN }, /speed is NaN/],
    [{ nitrousPower: 5e4 }, /nitrousPower is 50000; it must be 0 for naturally-aspirated/],
    [{ heatScale: 9 }, /heatScale/],
  ] as const)('refuses %o', (change, message) => {
    expect(() => fullLoad({ ...v8, ...change })).toThrow(DomainError)
    expect(() => fullLoad({ ...v8, ...change })).toThrow(message)
  })
})
