import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CapJointInput, capJoint } from '../../src/mechanics/cap-joint.ts'
import { type CapFastener, capJointStiffness } from '../../src/mechanics/cap-joint-stiffness.ts'
import { preloadForTorque } from '../../src/mechanics/preload.ts'
import { thermalStretch } from '../../src/mechanics/thermal-preload.ts'
import { bolt, twoBolt } from './cap-joint-case.ts'

const with_ = (changed: Partial<CapFastener>): CapJointInput => ({
  ...twoBolt,
  fasteners: [{ ...bolt, ...changed }],
})

describe('a two-bolt cap', () => {
  it('adds up: clamp, separation, grip, hold', () => {
    const joint = capJoint(twoBolt)
    const { lossPerEmbedding } = capJointStiffness(twoBolt)
    expect(joint.clamp).toBeCloseTo(90e3 - 8e-6 * lossPerEmbedding, 6)
    // A few µm of embedding cost a few per cent of preload, not most of it.
    expect(joint.clamp).toBeGreaterThan(80e3)
    expect(joint.residualClamp(joint.openingLoad)).toBeCloseTo(0, 6)
    expect(joint.residualClamp(joint.openingLoad * 0.999)).toBeGreaterThan(0)
    expect(joint.gripCapacity(20e3)).toBeCloseTo(0.15 * joint.residualClamp(20e3), 6)
    expect(joint.registerCapacity).toBeCloseTo(150e6 * 0.005 * 0.025, 6)
    expect(joint.holdCapacity(20e3)).toBeCloseTo(
      joint.gripCapacity(20e3) + joint.registerCapacity,
      6,
    )
  })

  it('keeps equilibrium: what the faces lose and the bolts gain is the pull', () => {
    const joint = capJoint(twoBolt)
    const pull = 30e3
    const lost = joint.clamp - joint.residualClamp(pull)
    expect(lost + 2 * joint.fastenerLoad(0, pull)).toBeCloseTo(pull, 6)
  })

  it('is the same with its stiffness worked beforehand', () => {
    const before = capJoint(twoBolt, capJointStiffness(twoBolt))
    expect(before.holdCapacity(12e3)).toBe(capJoint(twoBolt).holdCapacity(12e3))
  })
})

describe('leaning fasteners', () => {
  it('clamp by the cosine of their lean', () => {
    const lean = Math.PI / 9
    const upright = capJoint({ ...twoBolt, embeddingLoss: 0 }).clamp
    const leaning = capJoint({ ...with_({ lean }), embeddingLoss: 0 }).clamp
    expect(leaning / upright).toBeCloseTo(Math.cos(lean), 12)
  })

  it('keep equilibrium in mixed groups', () => {
    const outer = {
      ...bolt,
      nominalDiameter: 0.0111,
      lean: 0.3,
      preload: 30e3,
      headDiameter: 0.017,
    }
    const joint = capJoint({ ...twoBolt, fasteners: [bolt, outer] })
    const lost = joint.clamp - joint.residualClamp(10e3)
    const gained = 2 * joint.fastenerLoad(0, 10e3) + 2 * joint.fastenerLoad(1, 10e3) * Math.cos(0.3)
    expect(lost + gained).toBeCloseTo(10e3, 6)
  })
})

describe('stud and bolt', () => {
  it('a stud of the same size is softer and feels less of the pull', () => {
    const stud = capJointStiffness(with_({ kind: 'stud' }))
    const plain = capJointStiffness(twoBolt)
    expect(stud.groups[0]?.fastener).toBeLessThan(plain.groups[0]?.fastener ?? 0)
    expect(stud.loadFactor).toBeLessThan(plain.loadFactor)
  })

  it('a cap that leaves the cone little room is softer and hands more to the bolts', () => {
    const narrow = capJointStiffness(with_({ spreadDiameter: 0.026 }))
    expect(narrow.loadFactor).toBeGreaterThan(capJointStiffness(twoBolt).loadFactor)
  })
})

describe('register, cross bolts and girdle', () => {
  it('cross bolts add one side of their preload, or what they bear', () => {
    const crossBolts = { count: 2, preload: 15e3 }
    expect(capJoint({ ...twoBolt, crossBolts }).crossCapacity).toBe(15e3)
    const weak = { ...crossBolts, shearCapacity: 9e3 }
    expect(capJoint({ ...twoBolt, crossBolts: weak }).crossCapacity).toBe(9e3)
  })

  it('a loose register does not help friction', () => {
    const loose = { ...twoBolt.register, interference: -50e-6 }
    const joint = capJoint({ ...twoBolt, register: loose })
    expect(joint.registerCapacity).toBe(0)
    expect(joint.holdCapacity(0)).toBe(joint.gripCapacity(0))
  })

  it('a girdle adds clamp and takes its share of the load', () => {
    const plain = capJoint(twoBolt)
    const tied = capJoint({ ...twoBolt, girdle: { clampAdded: 10e3, stiffnessShare: 0.2 } })
    expect(tied.clamp).toBeCloseTo(plain.clamp + 10e3, 6)
    expect(tied.openingLoad).toBeCloseTo(tied.clamp / ((1 - plain.loadFactor) * 0.8), 6)
    expect(tied.holdCapacity(20e3)).toBeGreaterThan(plain.holdCapacity(20e3))
  })
})

describe('warm-up', () => {
  const layers = (cap: number, block: number) => [
    { thickness: 0.055, expansion: cap },
    { thickness: 0.006, expansion: block },
  ]

  it('parts that grow like the fastener change nothing', () => {
    expect(thermalStretch(layers(12e-6, 12e-6), 12e-6, 90)).toBe(0)
  })

  it('a light cap under steel bolts clamps harder when warm', () => {
    const stretch = thermalStretch(layers(21.5e-6, 21.5e-6), 12e-6, 90)
    expect(stretch).toBeCloseTo(9.5e-6 * 0.061 * 90, 12)
    const warm = capJoint({ ...twoBolt, thermalStretch: stretch })
    const cold = capJoint(twoBolt)
    const { lossPerEmbedding } = capJointStiffness(twoBolt)
    expect(warm.clamp - cold.clamp).toBeCloseTo(stretch * lossPerEmbedding, 6)
  })

  it('an iron cap loses a little', () => {
    expect(thermalStretch(layers(11.4e-6, 11.4e-6), 12.3e-6, 90)).toBeLessThan(0)
  })
})

describe('properties', () => {
  const torque = fc.double({ min: 10, max: 200, noNaN: true })
  const pull = fc.double({ min: 0, max: 2e5, noNaN: true })
  const at = (newtonMetres: number) =>
    capJoint(with_({ preload: preloadForTorque(newtonMetres, 0.0127, 0.18) }))

  it('more torque never lowers clamp, grip or hold', () => {
    fc.assert(
      fc.property(torque, torque, pull, (a, b, load) => {
        const [less, more] = [at(Math.min(a, b)), at(Math.max(a, b))]
        expect(more.clamp).toBeGreaterThanOrEqual(less.clamp)
        expect(more.gripCapacity(load)).toBeGreaterThanOrEqual(less.gripCapacity(load))
        expect(more.holdCapacity(load)).toBeGreaterThanOrEqual(less.holdCapacity(load))
        expect(more.openingLoad).toBeGreaterThanOrEqual(less.openingLoad)
      }),
    )
  })

  it('more pull never raises residual clamp, grip or hold', () => {
    const joint = capJoint({ ...twoBolt, girdle: { stiffnessShare: 0.1 } })
    fc.assert(
      fc.property(pull, pull, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)]
        expect(joint.residualClamp(more)).toBeLessThanOrEqual(joint.residualClamp(less))
        expect(joint.gripCapacity(more)).toBeLessThanOrEqual(joint.gripCapacity(less))
        expect(joint.holdCapacity(more)).toBeLessThanOrEqual(joint.holdCapacity(less))
      }),
    )
  })

  it('stays finite all over its range, and the load factor within 0 and 1', () => {
    fc.assert(
      fc.property(
        fc.record({
          nominalDiameter: fc.double({ min: 0.008, max: 0.016, noNaN: true }),
          grip: fc.double({ min: 0.01, max: 0.12, noNaN: true }),
          engagement: fc.double({ min: 0.005, max: 0.05, noNaN: true }),
          lean: fc.double({ min: 0, max: 0.6, noNaN: true }),
          kind: fc.constantFrom('bolt' as const, 'stud' as const),
        }),
        fc.double({ min: 65e9, max: 210e9, noNaN: true }),
        pull,
        (changed, capModulus, load) => {
          const headDiameter = 1.5 * changed.nominalDiameter
          const pitch = changed.nominalDiameter / 8
          const input = with_({ ...changed, headDiameter, pitch })
          const joint = capJoint({ ...input, capModulus })
          expect(joint.loadFactor).toBeGreaterThan(0)
          expect(joint.loadFactor).toBeLessThan(1)
          expect(Number.isFinite(joint.clamp + joint.openingLoad)).toBe(true)
          expect(Number.isFinite(joint.holdCapacity(load))).toBe(true)
          expect(Number.isFinite(joint.fastenerLoad(0, load))).toBe(true)
        },
      ),
    )
  })

  it('scales with size: all lengths doubled, forces × 4, same margins', () => {
    const double = (fastener: CapFastener): CapFastener => ({
      ...fastener,
      nominalDiameter: 2 * fastener.nominalDiameter,
      pitch: 2 * fastener.pitch,
      grip: 2 * fastener.grip,
      engagement: 2 * fastener.engagement,
      headDiameter: 2 * fastener.headDiameter,
      preload: 4 * fastener.preload,
    })
    const { height, length } = twoBolt.register
    const large = capJoint({
      ...twoBolt,
      fasteners: [double({ ...bolt, form: 'un' })],
      embeddingLoss: 16e-6,
      register: { ...twoBolt.register, height: 2 * height, length: 2 * length },
    })
    const small = capJoint(twoBolt)
    expect(large.clamp / small.clamp).toBeCloseTo(4, 9)
    expect(large.openingLoad / small.openingLoad).toBeCloseTo(4, 9)
    expect(large.holdCapacity(80e3) / small.holdCapacity(20e3)).toBeCloseTo(4, 9)
  })
})

describe('refusals', () => {
  it('name what does not fit', () => {
    expect(() => capJoint({ ...twoBolt, friction: Number.NaN })).toThrow(/friction is NaN/)
    expect(() => capJoint({ ...twoBolt, fasteners: [] })).toThrow(/fasteners/)
    expect(() => capJoint(with_({ preload: -1 }))).toThrow(/fastener.preload is -1/)
    expect(() => capJoint(with_({ headDiameter: 0.01 }))).toThrow(/headDiameter/)
    expect(() => capJoint(twoBolt).residualClamp(-5)).toThrow(/pull is -5/)
  })
})
