import { derivative } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { fillBurnHeat } from '../../src/mechanics/burn-heat.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { FUELS } from '../../src/mechanics/fuels.ts'
import {
  type Burn,
  burnDuration,
  burnRate,
  burntShare,
  halfBurntShare,
} from '../../src/mechanics/wiebe.ts'

const RPM = Math.PI / 30
const burn: Burn = { start: -0.4, duration: 0.9, completeness: 5, form: 3 }

describe('burntShare', () => {
  it('runs from nothing to 1 − e^−a', () => {
    expect(burntShare(-0.5, burn)).toBe(0)
    expect(burntShare(-0.4, burn)).toBe(0)
    expect(burntShare(0.5, burn)).toBeCloseTo(1 - Math.exp(-5), 12)
    expect(burntShare(2, burn)).toBeCloseTo(1 - Math.exp(-5), 12)
    // Half way: 1 − exp(−5/8).
    expect(burntShare(0.05, burn)).toBeCloseTo(1 - Math.exp(-5 / 8), 12)
  })

  it('is half of what will burn at halfBurntShare', () => {
    for (const [a, n] of [
      [5, 3],
      [6.908, 3],
      [5, 2.2],
    ] as const) {
      const at = burn.start + halfBurntShare(a, n) * burn.duration
      const half = burntShare(at, { ...burn, completeness: a, form: n })
      expect(half).toBeCloseTo((1 - Math.exp(-a)) / 2, 12)
    }
  })
})

describe('burnRate', () => {
  it('is the derivative of the burnt share by a symbolic library', () => {
    const slope = derivative('1 - exp(-a * ((x - s) / d)^n)', 'x')
    for (const angle of [-0.3, -0.1, 0.05, 0.3, 0.49]) {
      const scope = { x: angle, a: 5, s: burn.start, d: burn.duration, n: 3 }
      expect(burnRate(angle, burn)).toBeCloseTo(slope.evaluate(scope) as number, 10)
    }
    expect(burnRate(0.51, burn)).toBe(0)
    expect(burnRate(-0.41, burn)).toBe(0)
  })
})

describe('fillBurnHeat', () => {
  it.each([
    { duration: 0.9, steps: 360 },
    { duration: 0.9, steps: 1440 },
    { duration: 0.001, steps: 360 },
  ])('gives the whole heat by Simpson’s rule: $duration rad, $steps steps', (row) => {
    const table = new Float64Array(3 * row.steps).fill(7)
    fillBurnHeat({ ...burn, duration: row.duration }, 1000, table)
    let heat = 0
    for (let i = 0; i < row.steps; i++) {
      heat += (table[3 * i]! + 4 * table[3 * i + 1]! + table[3 * i + 2]!) / 6
    }
    expect((heat * 2 * Math.PI) / row.steps).toBeCloseTo(1000 * (1 - Math.exp(-5)), 8)
  })
})

/** Rates at the ends and the middle of each of some steps of a turn. */
function burnHeatTable(of: Burn, heat: number, steps: number): Float64Array {
  const rates = new Float64Array(3 * steps)
  fillBurnHeat(of, heat, rates)
  return rates
}

describe('fillBurnHeat, point by point', () => {
  it.each([360, 1440])('is the burn’s own rate and heat in %d steps', (steps) => {
    const table = burnHeatTable(burn, 1000, steps)
    const step = (2 * Math.PI) / steps
    for (let i = 0; i < steps; i++) {
      const from = i * step - Math.PI
      const [left, , right] = [table[3 * i]!, table[3 * i + 1]!, table[3 * i + 2]!]
      const heat = ((left + 4 * table[3 * i + 1]! + right) / 6) * step
      const share = burntShare(from + step, burn) - burntShare(from, burn)
      expect(heat).toBeCloseTo(1000 * share, 9)
      // At the very ends of the burn the rate jumps; a step that holds one is judged by its heat.
      const inside = from > burn.start && from + step < burn.start + burn.duration
      if (!inside) continue
      expect(left).toBeCloseTo(1000 * burnRate(from, burn), 8)
      expect(right).toBeCloseTo(1000 * burnRate(from + step, burn), 8)
    }
  })

  it('takes a form other than three, and no heat at all', () => {
    const other = { ...burn, form: 2.4 }
    const table = burnHeatTable(other, 500, 720)
    const at = 390
    const angle = (at * 2 * Math.PI) / 720 - Math.PI
    expect(table[3 * at]).toBeCloseTo(500 * burnRate(angle, other), 8)
    expect(Array.from(burnHeatTable(burn, 0, 12))).toEqual(Array(36).fill(0))
  })
})

describe('burnDuration', () => {
  const gasoline = FUELS['pump-gasoline']
  it('grows with the cube root of speed', () => {
    const slow = burnDuration(2000 * RPM, gasoline, 0.88)
    const fast = burnDuration(6000 * RPM, gasoline, 0.88)
    expect(fast / slow).toBeCloseTo(3 ** (1 / 3), 12)
  })

  it('is longest in the leanest mixture and shorter with a faster flame', () => {
    const at = (lambda: number) => burnDuration(3000 * RPM, gasoline, lambda)
    expect(at(0.88)).toBeLessThan(at(1))
    expect(at(1)).toBeLessThan(at(1.15))
    expect(burnDuration(3000 * RPM, FUELS.methanol, 0.9)).toBeLessThan(at(0.9))
  })

  it('lies where measured burns do', () => {
    // Heywood 1988, section 9.1–9.2, from memory: whole burn 30° to 90°.
    for (const speed of [1000, 3000, 6000, 9000]) {
      const degrees = (burnDuration(speed * RPM, gasoline, 0.88) * 180) / Math.PI
      expect(degrees).toBeGreaterThan(30)
      expect(degrees).toBeLessThan(90)
    }
    expect(() => burnDuration(1e4, gasoline, 1)).toThrow(DomainError)
  })
})
