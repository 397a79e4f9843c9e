import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type FastenerLoad, fastenerMargins } from '../../src/mechanics/fastener-fatigue.ts'
import { FASTENER_GRADES, fastenerStrength } from '../../src/mechanics/fastener-grades.ts'
import {
  nutFactor,
  nutFactorParts,
  preloadForTorque,
  torqueForPreload,
} from '../../src/mechanics/preload.ts'
import { TIGHTENING_SCATTER, tighteningFactor } from '../../src/mechanics/tightening-scatter.ts'
import { assemblyPreload } from '../../src/mechanics/vdi-preload.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })
const friction = fc.double({ min: 0.04, max: 0.4, noNaN: true })
const size = fc.record({
  nominalDiameter: fc.double({ min: 0.006, max: 0.02, noNaN: true }),
  turns: fc.double({ min: 5, max: 12, noNaN: true }),
})

describe('torque and preload', () => {
  it('more torque never lowers preload, more friction never raises it', () => {
    fc.assert(
      fc.property(share, share, friction, friction, (a, b, c, d) => {
        const torque = (x: number) => 200 * x
        const k = (x: number) => 0.03 + x
        const [slick, rough] = [k(Math.min(c, d)), k(Math.max(c, d))]
        expect(preloadForTorque(torque(Math.max(a, b)), 0.0127, slick)).toBeGreaterThanOrEqual(
          preloadForTorque(torque(Math.min(a, b)), 0.0127, slick),
        )
        expect(preloadForTorque(torque(a), 0.0127, rough)).toBeLessThanOrEqual(
          preloadForTorque(torque(a), 0.0127, slick),
        )
      }),
    )
  })

  it('the parts of the nut factor are positive, add up, and grow with friction', () => {
    fc.assert(
      fc.property(size, friction, friction, ({ nominalDiameter, turns }, a, b) => {
        const thread = { nominalDiameter, pitch: nominalDiameter / turns }
        const at = (mu: number) => ({ ...thread, threadFriction: mu, collarFriction: mu })
        const parts = nutFactorParts(at(a))
        expect(Math.min(parts.lead, parts.thread, parts.collar)).toBeGreaterThan(0)
        expect(parts.lead + parts.thread + parts.collar).toBe(nutFactor(at(a)))
        expect(nutFactor(at(Math.max(a, b)))).toBeGreaterThanOrEqual(nutFactor(at(Math.min(a, b))))
      }),
    )
  })

  it('little of the torque stretches the bolt', () => {
    // Textbook remark (Shigley, section 8–8): about 50 % collar, 40 % thread, 10 % preload.
    const { lead, thread, collar } = nutFactorParts({
      nominalDiameter: 0.0127,
      pitch: 0.0254 / 13,
      threadFriction: 0.15,
      collarFriction: 0.15,
    })
    const whole = lead + thread + collar
    expect(Math.abs(collar / whole - 0.5)).toBeLessThan(0.05)
    expect(Math.abs(thread / whole - 0.4)).toBeLessThan(0.05)
    expect(Math.abs(lead / whole - 0.1)).toBeLessThan(0.05)
  })

  it('twice the size at four times the preload takes eight times the torque', () => {
    const small = torqueForPreload(20e3, 0.01, 0.18)
    expect(torqueForPreload(80e3, 0.02, 0.18) / small).toBeCloseTo(8, 12)
  })

  it('preload at yield falls with thread friction and rises with strength', () => {
    fc.assert(
      fc.property(friction, friction, share, (a, b, c) => {
        const at = (mu: number, strength: number) => assemblyPreload(0.0127, 0.00195, strength, mu)
        const strength = 400e6 + 800e6 * c
        expect(at(Math.max(a, b), strength)).toBeLessThanOrEqual(at(Math.min(a, b), strength))
        expect(at(a, strength * 1.1)).toBeGreaterThan(at(a, strength))
      }),
    )
  })
})

describe('margins of a fastener', () => {
  const load: FastenerLoad = { preload: 45e3, added: 6e3, stressArea: 9.2e-5 }
  const forces = fc.double({ min: 0, max: 60e3, noNaN: true })

  it('more outside load never raises them', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FASTENER_GRADES), forces, forces, (grade, a, b) => {
        const strength = fastenerStrength(grade, 0.0127)
        const less = fastenerMargins({ ...load, added: Math.min(a, b) }, strength)
        const more = fastenerMargins({ ...load, added: Math.max(a, b) }, strength)
        expect(more.goodman).toBeLessThanOrEqual(less.goodman)
        expect(more.proof).toBeLessThanOrEqual(less.proof)
      }),
    )
  })

  it('a stronger grade never lowers them', () => {
    const ranked = ['sae-2', 'sae-5', 'sae-8', 'iso-10.9', 'iso-12.9'] as const
    const margins = ranked.map((grade) => fastenerMargins(load, fastenerStrength(grade, 0.0127)))
    for (let i = 1; i < margins.length; i++) {
      const [weak, strong] = [margins[i - 1], margins[i]]
      expect(strong?.goodman).toBeGreaterThan(weak?.goodman ?? 0)
      // SAE 8 and ISO 10.9 have all but the same proof strength, 827 and 830 MPa.
      expect(strong?.proof).toBeGreaterThan(weak?.proof ?? 0)
      expect(strong?.shareOfProof).toBeLessThan(weak?.shareOfProof ?? 0)
    }
  })

  it('a preload past tensile strength leaves nothing, load or no load', () => {
    const strength = fastenerStrength('sae-2', 0.0127)
    expect(fastenerMargins({ ...load, preload: 60e3 }, strength).goodman).toBe(0)
    expect(fastenerMargins({ ...load, preload: 60e3, added: 0 }, strength).goodman).toBe(0)
  })

  it('a load that does not come back to nought swings less', () => {
    const strength = fastenerStrength('sae-8', 0.0127)
    const held = fastenerMargins({ ...load, addedMin: 3e3 }, strength)
    expect(held.alternating).toBeCloseTo(fastenerMargins(load, strength).alternating / 2, 3)
    expect(held.goodman).toBeGreaterThan(fastenerMargins(load, strength).goodman)
  })
})

describe('scatter by method', () => {
  it.each(Object.entries(TIGHTENING_SCATTER))('%s runs from narrow to wide', (_, scatter) => {
    expect(scatter.low).toBeLessThan(scatter.high)
    expect(tighteningFactor(scatter.high)).toBeLessThan(3)
    expect(scatter.fromMemory).toBe(scatter.source.includes('memory'))
  })
})
