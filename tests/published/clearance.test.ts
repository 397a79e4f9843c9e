import { describe, expect, it } from 'vitest'
import { targetClearance, warmClearance } from '../../src/mechanics/clearance.ts'
import { EXPANSION, thermalGrowth } from '../../src/mechanics/thermal-growth.ts'
import { unitLoad } from '../../src/mechanics/unit-load.ts'

const INCH = 0.0254

describe('clearance for each inch of journal', () => {
  // Source: bearing makers' bulletins and the trade press, "0.00075 to 0.0010 in per inch of
  // shaft diameter", a rule of the trade: 2.000 in → 0.0015 to 0.0020 in; 0.001 in/in at
  // 2.375 in → 0.0024 in (half of its last digit).
  it('gives the quoted ranges', () => {
    const { low, high } = targetClearance(2 * INCH, { low: 0.00075, high: 0.001 })
    expect(low / INCH).toBeCloseTo(0.0015, 10)
    expect(high / INCH).toBeCloseTo(0.002, 10)
    const one = targetClearance(2.375 * INCH, { low: 0.001, high: 0.001 })
    expect(Math.abs(one.high / INCH - 0.0024)).toBeLessThanOrEqual(0.00005)
  })
})

describe('thermal growth', () => {
  // Source: Callister, Materials Science and Engineering, Table B.6 (1e-6 per °C): 4140 12.3,
  // gray iron G3000 11.4, ductile iron 60-40-18 11.2, aluminium 356.0 21.5. Exact.
  it.each([
    ['steel', 12.3],
    ['gray-iron', 11.4],
    ['ductile-iron', 11.2],
    ['aluminium', 21.5],
  ] as const)('tables %s as printed', (material, perMillion) => {
    expect(EXPANSION[material].perKelvin * 1e6).toBeCloseTo(perMillion, 12)
  })

  // A 65 mm bore 80 °C warmer, from the same table: an aluminium block on a 4140 shaft opens by
  // (21.5 − 12.3) · 65 · 80e-6 = 0.0478 mm; a gray iron block closes by 0.0047 mm. Half a digit.
  it.each([
    ['aluminium', 0.0478],
    ['gray-iron', -0.0047],
  ] as const)('changes the clearance in %s', (material, change) => {
    const plain = { housing: { vertical: 0.065, horizontal: 0.065 }, journal: 0.065 }
    const warm = warmClearance(
      { ...plain, shell: { crown: 0, parting: 0 } },
      { block: material, cap: material, blockRise: 80, journalRise: 80 },
    )
    expect(Math.abs(warm.vertical * 1000 - change)).toBeLessThanOrEqual(5e-5)
  })

  it('grows a length by α L ΔT', () => {
    expect(thermalGrowth(1, 12.3e-6, 100)).toBeCloseTo(1.23e-3, 15)
  })
})

describe('unit load', () => {
  // Source: Shigley's Mechanical Engineering Design, 9th ed., example 12–1: 500 lbf on a journal
  // 1.5 in across and 1.5 in wide is 222 psi (inputs as quoted elsewhere).
  it('is the force over the projected area', () => {
    const psi = unitLoad(500 * 4.4482216152605, 1.5 * INCH, 1.5 * INCH) / 6894.757293168361
    expect(Math.abs(psi - 222)).toBeLessThanOrEqual(0.5)
  })
})
