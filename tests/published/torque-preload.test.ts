import { describe, expect, it } from 'vitest'
import { LUBRICANTS } from '../../src/mechanics/lubricant-friction.ts'
import {
  nutFactor,
  nutFactorParts,
  preloadForAngle,
  preloadForStretch,
  preloadForTorque,
  proofLoad,
  shareOfProof,
  torqueForPreload,
} from '../../src/mechanics/preload.ts'
import { tighteningFactor } from '../../src/mechanics/tightening-scatter.ts'

const INCH = 0.0254
const LBF = 4.4482216152605
const LBF_IN = LBF * INCH

describe('nut factor', () => {
  // Source: Shigley, 9th ed., Example 8–3 (from memory), 3/4-16, K 0.2, 25 kip: 3750 lbf in;
  // by the full equation with 0.15 and 0.15: 3551 lbf in. Tolerance 0.1 %: printed digits.
  it('gives the torque of Example 8–3', () => {
    const d = 0.75 * INCH
    const preload = 25000 * LBF
    expect(torqueForPreload(preload, d, 0.2) / LBF_IN).toBeCloseTo(3750, 6)
    const k = nutFactor({
      nominalDiameter: d,
      pitch: INCH / 16,
      threadFriction: 0.15,
      collarFriction: 0.15,
    })
    expect(Math.abs(torqueForPreload(preload, d, k) / LBF_IN / 3551 - 1)).toBeLessThan(1e-3)
  })

  // Source: Jindal, Machine Design, Example 9–3, M18 × 2.5: K 0.18343, mean thread diameter
  // from a root of d − 1.2268 P. Tolerance 0.01 %: five printed digits.
  it('matches Example 9–3', () => {
    const k = nutFactor({
      nominalDiameter: 0.018,
      pitch: 0.0025,
      threadFriction: 0.15,
      collarFriction: 0.13,
      meanThreadDiameter: 0.018 - (1.2268 * 0.0025) / 2,
    })
    expect(Math.abs(k / 0.18343 - 1)).toBeLessThan(1e-4)
  })

  // Source: Jindal, Example 9–5: At 115 mm², Sp 650 MPa, 0.75 of proof, K 0.2, d 14 mm.
  it('gives the 156.97 N m of Example 9–5', () => {
    const preload = 0.75 * proofLoad(115e-6, 650e6)
    expect(Math.abs(torqueForPreload(preload, 0.014, 0.2) - 156.97)).toBeLessThan(0.01)
    expect(shareOfProof(preload, 115e-6, 650e6)).toBeCloseTo(0.75, 12)
  })

  // Source: Jindal, Example 9–6: K 0.18, d 20, 120 kN: 432 N m.
  it('gives the 432 N m of Example 9–6', () => {
    expect(torqueForPreload(120e3, 0.02, 0.18)).toBeCloseTo(432, 9)
  })

  // Energy: without friction one turn lifts the load by one pitch, T 2π = F P.
  it('leaves P/2πd without friction', () => {
    const thread = { nominalDiameter: 0.012, pitch: 0.00175 }
    const parts = nutFactorParts({ ...thread, threadFriction: 0, collarFriction: 0 })
    expect(parts.lead).toBeCloseTo(0.00175 / (2 * Math.PI * 0.012), 12)
    expect(parts.thread + parts.collar).toBe(0)
  })

  it('turns torque to preload and back', () => {
    expect(torqueForPreload(preloadForTorque(115, 0.0127, 0.17), 0.0127, 0.17)).toBeCloseTo(115, 9)
  })

  // Two half-inch coarse bolts at 85 lbf ft, plain: about 45 kN each (T = K F d by hand).
  it('puts a half-inch bolt at 85 lbf ft near 45 kN', () => {
    const preload = preloadForTorque(85 * 12 * LBF_IN, 0.5 * INCH, 0.2)
    expect(preload).toBeGreaterThan(44e3)
    expect(preload).toBeLessThan(46e3)
  })
})

describe('turning and stretching', () => {
  // Closed form: with rigid members a full turn stretches the fastener by one pitch.
  it('a full turn on rigid members stretches by one pitch', () => {
    const preload = preloadForAngle(2 * Math.PI, 0.0015, 1e8, 1e13)
    expect(Math.abs(preload / preloadForStretch(0.0015, 1e8) - 1)).toBeLessThan(2e-5)
  })
})

describe('lubricants', () => {
  // Source: Shigley, 9th ed., Table 8–15, read as quoted: 0.30, 0.20, 0.18, 0.16, 0.12.
  it('contain the published nut factors', () => {
    expect(LUBRICANTS.dry.nutFactor.high).toBe(0.3)
    expect(LUBRICANTS['zinc-plated'].nutFactor.likely).toBe(0.2)
    expect(LUBRICANTS.oil.nutFactor.likely).toBe(0.18)
    expect(LUBRICANTS['cadmium-plated'].nutFactor.likely).toBe(0.16)
    expect(LUBRICANTS['anti-seize'].nutFactor.likely).toBe(0.12)
  })

  // The friction beside each nut factor must give it back through the full equation.
  // Tolerance 3 %: one straight line stands for 3/8 to 1/2 in.
  it.each(Object.entries(LUBRICANTS))('%s: friction and nut factor agree', (_, row) => {
    for (const key of ['low', 'likely', 'high'] as const) {
      const k = nutFactor({
        nominalDiameter: 0.5 * INCH,
        pitch: INCH / 13,
        threadFriction: row.friction[key],
        collarFriction: row.friction[key],
      })
      expect(Math.abs(k / row.nutFactor[key] - 1)).toBeLessThan(0.03)
    }
    expect(row.nutFactor.low).toBeLessThan(row.nutFactor.likely)
    expect(row.nutFactor.likely).toBeLessThan(row.nutFactor.high)
  })
})

describe('tightening factor', () => {
  // Source: VDI 2230 (1986) guide values: 17–23 % is 1.4–1.6, 23–28 % is 1.6–1.8.
  // Tolerance: half of the last printed digit.
  it.each([
    [0.17, 1.4],
    [0.23, 1.6],
    [0.28, 1.8],
  ])('scatter %f is factor %f', (scatter, factor) => {
    expect(Math.abs(tighteningFactor(scatter) - factor)).toBeLessThan(0.05)
  })
})

describe('refusals', () => {
  it('name the argument', () => {
    expect(() => torqueForPreload(1e4, 0.012, 0)).toThrow(/nutFactor is 0/)
    expect(() => preloadForTorque(Number.NaN, 0.012, 0.2)).toThrow(/torque is NaN/)
    expect(() => tighteningFactor(1)).toThrow(/scatter is 1/)
  })
})
