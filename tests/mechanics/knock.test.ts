import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { type KnockInput, knockLimit } from '../../src/mechanics/knock.ts'

const border: KnockInput = {
  knockNumber: 92,
  compressionRatio: 10.5,
  startPressure: 1e5,
  startTemperature: 350,
  speed: 100 * Math.PI,
}

const inputs = fc.record({
  knockNumber: fc.double({ min: 80, max: 120, noNaN: true }),
  compressionRatio: fc.double({ min: 6, max: 17.8, noNaN: true }),
  startPressure: fc.double({ min: 5e4, max: 5e5, noNaN: true }),
  startTemperature: fc.double({ min: 270, max: 620, noNaN: true }),
  speed: fc.double({ min: 52, max: 1257, noNaN: true }),
})
const runs = { numRuns: 1000, seed: 7 }

describe('knockLimit, as its rule is stated', () => {
  // No published source: 3° for each unit of severity at 10:1, less in a smaller chamber by
  // √(9/(r − 1)), and 11° at most.
  it.each([
    [10, 3],
    [13, 3 * Math.sqrt(9 / 12)],
    [8, 3 * Math.sqrt(9 / 7)],
  ])('at %d:1 asks for %d° a unit', (compressionRatio, degrees) => {
    const { severity, retard } = knockLimit({ ...border, compressionRatio, startPressure: 1.9e5 })
    expect(severity).toBeGreaterThan(0)
    expect((retard * 180) / Math.PI / severity).toBeCloseTo(degrees, 9)
  })

  it('asks for 11° at most', () => {
    const hard = knockLimit({ ...border, startPressure: 2e6, startTemperature: 500 })
    expect((hard.retard * 180) / Math.PI).toBeCloseTo(11, 9)
  })

  // Douaud & Eyzat, SAE 780080: the charge reacts in proportion to the time that it is given, here
  // as speed^(−2/3).
  it('gives twice the speed two thirds of ln 2 less severity', () => {
    const [slow, fast] = [border, { ...border, speed: 2 * border.speed }].map(knockLimit)
    expect((slow?.severity ?? 0) - (fast?.severity ?? 0)).toBeCloseTo((2 / 3) * Math.LN2, 12)
  })
})

describe('knockLimit', () => {
  it('is at its border where it says it is', () => {
    const { severity, retard } = knockLimit(border)
    expect(Math.abs(severity)).toBeLessThan(1e-12)
    expect(retard).toBeLessThan(1e-12)
    expect(knockLimit({ ...border, knockNumber: 91 }).limited).toBe(true)
    expect(knockLimit({ ...border, knockNumber: 93 })).toMatchObject({ limited: false, retard: 0 })
  })

  it('compares reaction times of the published correlation', () => {
    // Douaud & Eyzat, SAE 780080, from memory: τ = 17.68 (ON/100)^3.402 p^−1.7 exp(3800/T) ms. At
    // one speed the severity is the logarithm of the border's time over the engine's.
    const time = (octane: number, p: number, t: number) =>
      17.68 * (octane / 100) ** 3.402 * p ** -1.7 * Math.exp(3800 / t)
    const endGas = (t: number, r: number) => 1.3 * t * r ** 0.32
    const engine = { ...border, knockNumber: 98, compressionRatio: 9, startPressure: 2e5 }
    const expected = Math.log(
      time(92, 10.5 ** 1.32, endGas(350, 10.5)) / time(98, 2 * 9 ** 1.32, endGas(350, 9)),
    )
    expect(knockLimit(engine).severity).toBeCloseTo(expected, 10)
  })

  it.each([
    ['compression', { compressionRatio: 1.01 }],
    ['start pressure', { startPressure: 1.01 }],
    ['start temperature', { startTemperature: 1.01 }],
  ] as const)('never advances for more %s', (_name, factors) => {
    fc.assert(
      fc.property(inputs, (input) => {
        const more = { ...input }
        for (const [key, factor] of Object.entries(factors)) {
          more[key as keyof KnockInput] *= factor
        }
        expect(knockLimit(more).severity).toBeGreaterThan(knockLimit(input).severity)
        expect(knockLimit(more).retard).toBeGreaterThanOrEqual(knockLimit(input).retard)
      }),
      runs,
    )
  })

  it('never retards for more octane or speed, and never beyond its stated most', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { retard } = knockLimit(input)
        expect(retard).toBeLessThanOrEqual((11 * Math.PI) / 180)
        const octane = { ...input, knockNumber: input.knockNumber + 1 }
        expect(knockLimit(octane).retard).toBeLessThanOrEqual(retard)
        const faster = { ...input, speed: input.speed * 1.01 }
        expect(knockLimit(faster).retard).toBeLessThanOrEqual(retard)
      }),
      runs,
    )
  })

  it('refuses what it cannot judge', () => {
    expect(() => knockLimit({ ...border, knockNumber: 10 })).toThrow(DomainError)
    expect(() => knockLimit({ ...border, startPressure: Number.NaN })).toThrow(/startPressure/)
  })
})
