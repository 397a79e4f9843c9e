import { describe, expect, it } from 'vitest'
import { fastenerStiffness } from '../../src/mechanics/bolted-joint.ts'
import { capJoint } from '../../src/mechanics/cap-joint.ts'
import { type CapFastener, capJointStiffness } from '../../src/mechanics/cap-joint-stiffness.ts'
import { tensileStressArea } from '../../src/mechanics/threads.ts'
import { bolt, twoBolt as joint } from './cap-joint-case.ts'

const outer: CapFastener = { ...bolt, nominalDiameter: 0.0111, lean: 0.3, headDiameter: 0.017 }

// Statics: a plate that takes a fifth of the load leaves four fifths to the cap's own joint, so
// the whole cap bears a quarter more than the joint does.
describe('a girdle that takes a fifth of the load', () => {
  const plain = capJoint(joint)
  const tied = capJoint({ ...joint, girdle: { stiffnessShare: 0.2 } })

  it('leaves the clamp as it is, and opens at a quarter more', () => {
    expect(tied.clamp).toBeCloseTo(plain.clamp, 6)
    expect(tied.openingLoad / plain.openingLoad).toBeCloseTo(1.25, 12)
  })

  it('lets the faces grip a quarter more than under the load that is left', () => {
    expect(tied.gripCapacity(20e3) / plain.gripCapacity(16e3)).toBeCloseTo(1.25, 12)
  })

  it('adds register and cross bolts to the friction, a quarter more in all', () => {
    const crossBolts = { count: 2, preload: 20e3 }
    const both = capJoint({ ...joint, crossBolts, girdle: { stiffnessShare: 0.2 } })
    const held = plain.gripCapacity(16e3) + plain.registerCapacity + 20e3
    expect(both.crossCapacity).toBe(20e3)
    expect(both.holdCapacity(20e3) / held).toBeCloseTo(1.25, 12)
  })

  it('spares each fastener a fifth', () => {
    expect(tied.fastenerLoad(0, 20e3) / plain.fastenerLoad(0, 20e3)).toBeCloseTo(0.8, 12)
    expect(tied.fastenerLoad(1, 20e3)).toBeNaN()
  })
})

describe('a register that is pressed in', () => {
  // Hooke: two blocks of one modulus, span s each, pressed by i: p = i / (2 s / E).
  it('has the pressure of its own fit to spare no more', () => {
    const register = { ...joint.register, interference: 0.1e-3, span: 0.12 }
    const own = 0.1e-3 / ((2 * 0.12) / 101e9)
    const room = 2 * (40e6 - own)
    const tight = capJoint({ ...joint, register: { ...register, allowablePressure: 40e6 } })
    expect(own).toBeGreaterThan(20e6)
    expect(tight.registerCapacity).toBeCloseTo(Math.max(0, room) * 0.005 * 0.025, 6)
    const free = capJoint({ ...joint, register: { ...joint.register, allowablePressure: 40e6 } })
    expect(free.registerCapacity).toBeCloseTo(40e6 * 0.005 * 0.025, 6)
  })
})

describe('stiffness of the joint, from its springs', () => {
  it('sets groups side by side, and bolt and members in a row', () => {
    const found = capJointStiffness({ ...joint, fasteners: [bolt, outer] })
    const cosine = Math.cos(0.3)
    const [first, second] = found.groups
    if (!first || !second) throw new RangeError('two groups give two rows')
    const [one, two] = [first.fastener + first.members, second.fastener + second.members]
    expect(found.upright / (2 * one + 2 * two * cosine ** 2)).toBeCloseTo(1, 12)
    // Faces that settle by s unload two springs in a row by s / (1/kb + 1/km), seen upright.
    const row = ({ fastener, members }: typeof first) => 1 / (1 / fastener + 1 / members)
    const lost = 2 * row(first) + 2 * cosine * row(second)
    expect(found.lossPerEmbedding / lost).toBeCloseTo(1, 12)
  })

  // Source: Shigley's Mechanical Engineering Design, 9th ed., Table 8–7: the grip of a cap screw
  // ends half a diameter into the tapped part, or half way where that is thinner than a diameter.
  it.each([
    [0.025, 0.0127 / 2],
    [0.05, 0.0127 / 2],
    [0.008, 0.004],
  ])('with %d m of thread in the block stretches %d m of it', (engagement, inBlock) => {
    const [group] = capJointStiffness({ ...joint, fasteners: [{ ...bolt, engagement }] }).groups
    const area = tensileStressArea(0.0127, 0.0254 / 13)
    const shank = 0.055 - 0.0127 / 2
    const expected = fastenerStiffness(
      207e9,
      (Math.PI / 4) * 0.0127 ** 2,
      area,
      shank,
      0.055 - shank + inBlock,
    )
    expect((group?.fastener ?? 0) / expected).toBeCloseTo(1, 9)
  })

  it.each([0.0127, 0.012, 0.0509, Number.NaN])('refuses a head of %d m', (headDiameter) => {
    expect(() => capJointStiffness({ ...joint, fasteners: [{ ...bolt, headDiameter }] })).toThrow(
      /headDiameter/,
    )
  })

  it('takes a head of four diameters', () => {
    const wide = { ...bolt, headDiameter: 4 * 0.0127 }
    expect(capJointStiffness({ ...joint, fasteners: [wide] }).loadFactor).toBeGreaterThan(0)
  })
})
