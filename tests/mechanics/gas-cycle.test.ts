import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { type GasCycleInput, gasCycle } from '../../src/mechanics/gas-cycle.ts'
import { bestTorqueStart } from '../../src/mechanics/phasing.ts'
import { integrate } from '../support/ode-integrator.ts'

const DEGREE = Math.PI / 180

const engine: GasCycleInput = {
  bore: 0.1016,
  stroke: 0.0884,
  rodLength: 0.1448,
  compressionRatio: 10,
  speed: 471,
  startPressure: 1.05e5,
  startTemperature: 335,
  addedHeat: 2100,
  burnStart: -22 * DEGREE,
  burnDuration: 55 * DEGREE,
  wallHeat: { kind: 'woschni', wallTemperature: 450, scale: 1 },
}

/** Cycles over the whole allowed range, with burns a spark-ignition engine could have. */
const cycles = fc
  .record({
    bore: fc.double({ min: 0.05, max: 0.15, noNaN: true }),
    strokeRatio: fc.double({ min: 0.6, max: 1.4, noNaN: true }),
    rodRatio: fc.double({ min: 1.3, max: 2.5, noNaN: true }),
    compressionRatio: fc.double({ min: 6, max: 18, noNaN: true }),
    speed: fc.double({ min: 52, max: 1257, noNaN: true }),
    startPressure: fc.double({ min: 3e4, max: 5.5e5, noNaN: true }),
    startTemperature: fc.double({ min: 280, max: 600, noNaN: true }),
    // No heat at all, or what a charge can hold.
    heatDensity: fc.oneof(fc.constant(0), fc.double({ min: 0.05, max: 3, noNaN: true })),
    half: fc.double({ min: 5, max: 25, noNaN: true }),
    duration: fc.double({ min: 25, max: 80, noNaN: true }),
  })
  .map((x): GasCycleInput => {
    const stroke = x.bore * x.strokeRatio
    const swept = (Math.PI / 4) * x.bore * x.bore * stroke
    const mass = (x.startPressure * swept) / (287 * x.startTemperature)
    return {
      ...engine,
      bore: x.bore,
      stroke,
      rodLength: stroke * x.rodRatio,
      compressionRatio: x.compressionRatio,
      speed: x.speed,
      startPressure: x.startPressure,
      startTemperature: x.startTemperature,
      addedHeat: x.heatDensity * 1e6 * mass,
      burnStart: (x.half - 0.52 * x.duration) * DEGREE,
      burnDuration: x.duration * DEGREE,
    }
  })

describe('gasCycle', () => {
  it('gives 720 positive, finite pressures and a peak no lower than any of them', () => {
    fc.assert(
      fc.property(cycles, (input) => {
        const cycle = gasCycle(input)
        expect(cycle.pressure).toHaveLength(720)
        expect(cycle.pressure.every((p) => p > 0 && p < 1e8)).toBe(true)
        expect(cycle.peakPressure).toBeGreaterThanOrEqual(Math.max(...cycle.pressure))
        expect(Number.isFinite(cycle.imepNet + cycle.wallLoss + cycle.peakTemperature)).toBe(true)
      }),
      { numRuns: 300, seed: 1 },
    )
  })

  it('changes its peak by less than 0.1 % when the step is halved', () => {
    fc.assert(
      fc.property(cycles, (input) => {
        const coarse = gasCycle(input).peakPressure
        const fine = gasCycle({ ...input, stepsPerDegree: 2 }).peakPressure
        expect(Math.abs(coarse / fine - 1)).toBeLessThan(1e-3)
      }),
      { numRuns: 300, seed: 1 },
    )
  })

  it('keeps pressures and mean pressures when the cylinder is scaled with its heat', () => {
    // Without wall heat nothing in the cycle has a length of its own.
    fc.assert(
      fc.property(cycles, fc.double({ min: 0.7, max: 1.5, noNaN: true }), (input, k) => {
        const plain: GasCycleInput = { ...input, wallHeat: { kind: 'none' } }
        const scaled = gasCycle({
          ...plain,
          bore: k * input.bore,
          stroke: k * input.stroke,
          rodLength: k * (input.rodLength as number),
          addedHeat: k ** 3 * input.addedHeat,
        })
        const cycle = gasCycle(plain)
        expect(Math.abs(scaled.peakPressure / cycle.peakPressure - 1)).toBeLessThan(1e-9)
        expect(Math.abs(scaled.imepGross - cycle.imepGross)).toBeLessThan(1e-6 * cycle.peakPressure)
      }),
      { numRuns: 100, seed: 1 },
    )
  })

  it('never lowers its peak for more heat, compression or start pressure', () => {
    fc.assert(
      fc.property(cycles, (input) => {
        const { peakPressure } = gasCycle(input)
        const ratio = input.compressionRatio * 1.02
        expect(gasCycle({ ...input, compressionRatio: ratio }).peakPressure).toBeGreaterThan(
          peakPressure,
        )
        const start = input.startPressure * 1.02
        expect(gasCycle({ ...input, startPressure: start }).peakPressure).toBeGreaterThan(
          peakPressure,
        )
        // 1e-6: a faint burn that begins at the motored peak adds wall heat before pressure.
        const hotter = gasCycle({ ...input, addedHeat: input.addedHeat * 1.02 })
        expect(hotter.peakPressure).toBeGreaterThanOrEqual(peakPressure * (1 - 1e-6))
      }),
      { numRuns: 300, seed: 1 },
    )
  })

  it('loses heat to the walls, less of it with a stated smaller share', () => {
    const without = gasCycle({ ...engine, wallHeat: { kind: 'none' } })
    const tenth = gasCycle({ ...engine, wallHeat: { kind: 'share', share: 0.1 } })
    const fifth = gasCycle({ ...engine, wallHeat: { kind: 'share', share: 0.2 } })
    const woschni = gasCycle(engine)
    expect(without.wallLoss).toBe(0)
    expect(tenth.wallLoss).toBeCloseTo(210, 9)
    expect(without.imepGross).toBeGreaterThan(tenth.imepGross)
    expect(tenth.imepGross).toBeGreaterThan(fifth.imepGross)
    expect(without.imepGross).toBeGreaterThan(woschni.imepGross)
    // Heywood 1988, Table 12.1 region: heat to the walls by the end of expansion is roughly a
    // tenth to a fifth of the fuel's energy at full load, from memory.
    expect(woschni.wallLoss / 2100).toBeGreaterThan(0.07)
    expect(woschni.wallLoss / 2100).toBeLessThan(0.2)
  })

  it('has no pumping between equal manifold pressures, and the product of area else', () => {
    // Between exchange strokes at two constant pressures the loop is their difference; what the
    // crossing at overlap and the rise to the start of compression take away stays within 3 %.
    const equal = gasCycle({ ...engine, intakePressure: 1.05e5, exhaustPressure: 1.05e5 })
    expect(Math.abs(equal.pumping)).toBeLessThan(1e-6)
    const back = gasCycle({ ...engine, intakePressure: 1.05e5, exhaustPressure: 2.05e5 })
    expect(Math.abs(back.pumping / 1e5 - 1)).toBeLessThan(0.03)
    expect(back.imepNet).toBeCloseTo(back.imepGross - back.pumping, 6)
  })

  it('loses expansion work as the exhaust valve opens before bottom dead centre', () => {
    const late = gasCycle(engine)
    const early = gasCycle({ ...engine, exhaustOpens: 120 * DEGREE })
    expect(early.imepGross).toBeLessThan(late.imepGross)
    expect(early.imepGross).toBeGreaterThan(0.9 * late.imepGross)
    expect(early.peakPressure).toBe(late.peakPressure)
  })

  it('has a mirror-image motored cycle without wall heat', () => {
    const { pressure } = gasCycle({ ...engine, addedHeat: 0, wallHeat: { kind: 'none' } })
    for (let d = 1; d < 180; d += 7) {
      expect(Math.abs(pressure[d]! / pressure[720 - d]! - 1)).toBeLessThan(1e-6)
    }
  })

  it('agrees with an extrapolation integrator on exact motion with γ of temperature', () => {
    const input: GasCycleInput = { ...engine, wallHeat: { kind: 'none' }, gamma: 'quadratic' }
    const radius = engine.stroke / 2
    const rod = engine.rodLength as number
    const area = (Math.PI / 4) * engine.bore ** 2
    const clearance = (area * engine.stroke) / 9
    const volume = (a: number) =>
      clearance +
      area *
        (radius + rod - radius * Math.cos(a) - Math.sqrt(rod ** 2 - (radius * Math.sin(a)) ** 2))
    const massR = (engine.startPressure * volume(Math.PI)) / engine.startTemperature
    const slope = (a: number, [p]: number[]) => {
      const v = volume(a)
      const t = (p! * v) / massR
      const gamma = 1.338 - 6e-5 * t + 1e-8 * t * t
      const y = (a - engine.burnStart) / engine.burnDuration
      const inside = y > 0 && y < 1
      const burning = inside ? (15 * y * y * Math.exp(-5 * y ** 3)) / engine.burnDuration : 0
      const swing = rod ** 2 - (radius * Math.sin(a)) ** 2
      const dv = area * radius * Math.sin(a) * (1 + (radius * Math.cos(a)) / Math.sqrt(swing))
      return [(-gamma * p! * dv + (gamma - 1) * engine.addedHeat * burning) / v]
    }
    const burnEnd = engine.burnStart + engine.burnDuration
    let state = [engine.startPressure]
    state = integrate(slope, -Math.PI, state, engine.burnStart)
    state = integrate(slope, engine.burnStart, state, burnEnd)
    const atEnd = integrate(slope, burnEnd, state, 40 * DEGREE)[0]!
    const atBottom = integrate(slope, burnEnd, state, Math.PI)[0]!
    const cycle = gasCycle(input)
    // 0.01 %: one step a degree.
    expect(Math.abs(cycle.pressure[40]! / atEnd - 1)).toBeLessThan(1e-4)
    expect(Math.abs(cycle.pressure[180]! / atBottom - 1)).toBeLessThan(1e-4)
  })

  it('gives the same peak from the same input, byte for byte', () => {
    expect(gasCycle(engine).pressure).toEqual(gasCycle({ ...engine }).pressure)
  })

  it.each([
    [{ bore: 10 }, /bore is 10;/],
    [{ compressionRatio: 1 }, /compressionRatio/],
    [{ rodLength: 0.04 }, /rodLength/],
    [{ startPressure: Number.NaN }, /startPressure is NaN/],
    [{ addedHeat: -1 }, /addedHeat/],
    [{ burnForm: 0.5 }, /burnForm/],
    [{ gamma: 2 }, /gamma/],
    [{ stepsPerDegree: 1.5 }, /stepsPerDegree is 1.5; it must be a whole number/],
    [{ wallHeat: { kind: 'share', share: 0.9 } }, /wallHeat.share/],
  ] as const)('refuses %o', (change, message) => {
    expect(() => gasCycle({ ...engine, ...change })).toThrow(DomainError)
    expect(() => gasCycle({ ...engine, ...change })).toThrow(message)
  })
})

describe('bestTorqueStart', () => {
  it('finds a start that no neighbour beats', () => {
    const best = bestTorqueStart(engine)
    for (const shift of [-3, -1, 1, 3]) {
      const other = gasCycle({ ...engine, burnStart: best.burnStart + shift * DEGREE })
      expect(other.imepGross).toBeLessThanOrEqual(best.imepGross)
    }
  })
})
