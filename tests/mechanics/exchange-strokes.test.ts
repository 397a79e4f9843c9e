import { describe, expect, it } from 'vitest'
import { exchangeStrokes } from '../../src/mechanics/exchange-strokes.ts'

/** A closed cycle that falls evenly from 9 bar at top dead centre to 3 bar at either end. */
const closed = Float64Array.from({ length: 361 }, (_, i) => 9e5 - (6e5 * Math.abs(i - 180)) / 180)
const input = {
  closed,
  rodRatio: 0.3,
  intakePressure: 1e5,
  exhaustPressure: 1.2e5,
  exhaustOpens: Math.PI,
}

describe('exchangeStrokes', () => {
  it('puts the closed cycle where its angles are', () => {
    const { pressure } = exchangeStrokes(input)
    expect(pressure[0]).toBe(closed[180])
    expect(pressure[90]).toBe(closed[270])
    expect(pressure[540]).toBe(closed[0])
    expect(pressure[719]).toBe(closed[179])
  })

  it('falls at once to the back pressure when the valve opens at bottom dead centre', () => {
    const { pressure, blowdownLoss } = exchangeStrokes(input)
    expect(pressure[180]).toBe(closed[360])
    expect(pressure[181]).toBe(1.2e5)
    expect(pressure[340]).toBe(1.2e5)
    expect(pressure[400]).toBe(1e5)
    expect(blowdownLoss).toBe(0)
  })

  it('falls without a jump when the valve opens before', () => {
    const { pressure, blowdownLoss } = exchangeStrokes({
      ...input,
      exhaustOpens: (130 * Math.PI) / 180,
    })
    expect(pressure[129]).toBe(closed[309])
    for (let d = 130; d < 719; d++) {
      expect(Math.abs(pressure[d]! - pressure[d + 1]!)).toBeLessThan(2e4)
    }
    expect(pressure[200]).toBeCloseTo(1.2e5, 6)
    expect(blowdownLoss).toBeGreaterThan(0)
  })

  it('loses as much expansion work as lies between the two curves', () => {
    // Piston travel over stroke of the exact slider-crank, R/l = 0.3; trapezia of one degree.
    const travel = (d: number) => {
      const [sine, cosine] = [Math.sin((d * Math.PI) / 180), Math.cos((d * Math.PI) / 180)]
      return (1 - cosine) / 2 + (1 - Math.sqrt(1 - (0.3 * sine) ** 2)) / 0.6
    }
    const { pressure, blowdownLoss } = exchangeStrokes({
      ...input,
      exhaustOpens: (110 * Math.PI) / 180,
    })
    let area = 0
    for (let d = 110; d < 180; d++) {
      const gap = (at: number) => closed[180 + at]! - pressure[at]!
      area += ((gap(d) + gap(d + 1)) / 2) * (travel(d + 1) - travel(d))
    }
    // At bottom dead centre itself the pressure has fallen all the way by then.
    expect(pressure[180]).toBeCloseTo(1.2e5, 6)
    expect(blowdownLoss / area).toBeCloseTo(1, 6)
  })

  it('falls along half a cosine over 70°, from what the closed cycle would have', () => {
    const { pressure } = exchangeStrokes({ ...input, exhaustOpens: (130 * Math.PI) / 180 })
    for (const d of [140, 165, 175, 190]) {
      const left = 0.5 + 0.5 * Math.cos((Math.PI * (d - 130)) / 70)
      const without = d < 180 ? closed[180 + d]! : closed[360]!
      expect(pressure[d]).toBeCloseTo(1.2e5 + (without - 1.2e5) * left, 3)
    }
  })

  it('takes pumping as the area between the strokes', () => {
    // Meeting the start of compression at the end of the intake stroke gives back a little.
    const level = exchangeStrokes({ ...input, closed: closed.map(() => 1e5) })
    expect(Math.abs(level.pumping / 0.2e5 - 1)).toBeLessThan(0.02)
    const boosted = exchangeStrokes({
      ...input,
      closed: closed.map(() => 2e5),
      intakePressure: 2e5,
    })
    expect(boosted.pumping).toBeLessThan(0)
  })
})
