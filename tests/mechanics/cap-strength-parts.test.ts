import { describe, expect, it } from 'vitest'
import { archForces, crownForces } from '../../src/mechanics/cap-arch.ts'
import { type CapStrengthInput, capStrength } from '../../src/mechanics/cap-strength.ts'
import { type MaterialId, materialOf } from '../../src/mechanics/materials.ts'

const cap = { span: 0.102, height: 0.027, width: 0.026, boreRadius: 0.034 }
const under = (pull: number, id: MaterialId, more: Partial<CapStrengthInput> = {}) =>
  capStrength({ ...cap, pull, material: materialOf(id), ...more })

/**
 * Winkler–Bach by hand: σ = N/A ± M (rn − r)/(A e r), with M opening the bar positive.
 * Source: Shigley's Mechanical Engineering Design, 9th ed., eqs 3–64 and 3–65.
 */
function curvedBar(height: number, moment: number, normal: number) {
  const [ri, ro] = [cap.boreRadius, cap.boreRadius + height]
  const area = height * cap.width
  const rn = height / Math.log(ro / ri)
  const eccentricity = (ri + ro) / 2 - rn
  const at = (r: number) => normal / area - (moment * (rn - r)) / (area * eccentricity * r)
  return { inner: at(ri), outer: at(ro) }
}

describe('the crown, from its parts', () => {
  it.each(['gray-iron-30', 'ductile-65-45-12'] as const)('%s: one pull to failure', (id) => {
    // Definition: tension to yield (to breaking where there is none), pressure to crushing.
    const material = materialOf(id)
    const { moment, normal } = crownForces(cap)
    const { inner, outer } = curvedBar(cap.height, moment * 35e3, normal * 35e3)
    expect(outer).toBeGreaterThan(0)
    expect(inner).toBeLessThan(0)
    const inTension = (material.yield ?? material.ultimate) / outer
    const expected = Math.min(inTension, material.compressive / -inner)
    expect(under(35e3, id).staticMargin / expected).toBeCloseTo(1, 9)
  })

  it('carries the moment and tension of statics times the pull', () => {
    const { crownMoment, crownTension } = under(20e3, 'gray-iron-30', { endFixity: 0 })
    const radius = cap.boreRadius + cap.height / 2
    expect(crownMoment).toBeCloseTo(20e3 * (cap.span / 4 - radius / Math.PI), 9)
    expect(crownTension).toBeCloseTo(20e3 / Math.PI, 9)
  })

  it('has a notch on the alternating stress alone', () => {
    const [plain, notched] = [1, 2].map((notchFactor) =>
      under(35e3, 'gray-iron-30', { notchFactor }),
    )
    expect(notched?.crownMean).toBeCloseTo(plain?.crownMean ?? 0, 6)
    expect(notched?.crownAlternating).toBeCloseTo(2 * (plain?.crownAlternating ?? 0), 6)
  })

  it('lies on the ellipse where the metal yields, and has none where it does not', () => {
    // Shigley, 9th ed., eq 6–48: (n σa/Se)² + (n σm/Sy)² = 1.
    const steel = under(35e3, 'steel-4140-annealed')
    const n = steel.ellipticMargin ?? Number.NaN
    const alternating = (n * steel.crownAlternating) / steel.endurance
    const mean = (n * steel.crownMean) / (materialOf('steel-4140-annealed').yield ?? Number.NaN)
    expect(alternating ** 2 + mean ** 2).toBeCloseTo(1, 9)
    expect(under(35e3, 'gray-iron-30')).not.toHaveProperty('ellipticMargin')
  })

  it('is governed by the face whose Goodman margin is less', () => {
    const usual = under(35e3, 'gray-iron-30')
    expect(usual.governing).toBe('outer')
    expect(usual.goodmanMargin).toBe(Math.min(usual.inner.goodman, usual.outer.goodman))
    // With bolts nearer than 4 rc/π statics turn the crown's moment round: the bore is stretched.
    const stiff = under(35e3, 'gray-iron-30', { endFixity: 0, span: 0.07, height: 0.1 })
    expect(stiff.inner.mean).toBeGreaterThan(stiff.outer.mean)
    expect(stiff.governing).toBe('inner')
    expect(stiff.crownMean).toBe(stiff.inner.mean)
    expect(stiff.goodmanMargin).toBe(Math.min(stiff.inner.goodman, stiff.outer.goodman))
  })
})

describe('endurance of the crown', () => {
  // Shigley, 9th ed., eqs 6–18, 6–20 and 6–25: de = 0.808 √(27 · 26) = 21.41 mm,
  // kb = 1.24 · 21.41^−0.107 = 0.8934; Table 6–2, machined: ka = 4.51 Sut^−0.265, MPa.
  const size = 1.24 * (0.808 * Math.sqrt(27 * 26)) ** -0.107

  it('takes size alone off a figure that was measured on the finish', () => {
    const { endurance } = under(35e3, 'sintered-diffusion-steel')
    expect(endurance / 1e6).toBeCloseTo(230 * size, 6)
  })

  it('takes finish and size off a polished specimen’s', () => {
    const { endurance } = under(35e3, 'steel-1045-hot-rolled')
    expect(endurance / 1e6).toBeCloseTo(285 * size * 4.51 * 570 ** -0.265, 6)
    const forged = under(35e3, 'steel-1045-hot-rolled', { finish: 'as-forged' })
    expect(forged.endurance / 1e6).toBeCloseTo(285 * size * 272 * 570 ** -0.995, 6)
  })
})

describe('the shoulder beside the seat', () => {
  const seat = { preload: 45e3, addedLoad: 6e3, headDiameter: 0.019, holeDiameter: 0.0135 }

  it.each([0.027, 0.012])('is the worse face of the section there, %d m thick', (height) => {
    // The seat's inner edge on the centre line of the arch: sin φ = (L − dh)/2 / rc.
    const angle = Math.asin(((cap.span - 0.019) / 2 / (cap.boreRadius + cap.height / 2)) % 1)
    const { moment, normal } = archForces(cap, Math.min(angle, Math.PI / 2))
    const faces = curvedBar(height, moment * 35e3, normal * 35e3)
    const { ultimate, endurance } = materialOf('gray-iron-30')
    // Modified Goodman from nought: n = 1/(σ/2Se + σ/2Sut), pressed without a mean.
    const goodman = (stress: number) =>
      2 / (Math.abs(stress) / endurance + Math.max(0, stress) / ultimate)
    const found = under(35e3, 'gray-iron-30', { seat: { ...seat, shoulderHeight: height } })
    const expected = Math.min(goodman(faces.inner), goodman(faces.outer))
    expect((found.seat?.shoulder.goodman ?? 0) / expected).toBeCloseTo(1, 9)
  })

  it('stands at the foot where the head reaches no further than the leg', () => {
    const wide = under(35e3, 'gray-iron-30', { seat, span: 0.14 })
    const foot = archForces({ ...cap, span: 0.14 }, Math.PI / 2)
    const faces = curvedBar(cap.height, foot.moment * 35e3, foot.normal * 35e3)
    const { mean } = wide.seat?.shoulder ?? { mean: Number.NaN }
    expect([faces.inner / 2, faces.outer / 2].some((one) => Math.abs(one - mean) < 1)).toBe(true)
  })

  it.each([
    { headDiameter: 0.0135 },
    { headDiameter: 0.012 },
    { headDiameter: 0.2 },
    { headDiameter: Number.NaN },
  ])('refuses a head that is no wider than its hole, or no head: %o', (wrong) => {
    expect(() => under(35e3, 'gray-iron-30', { seat: { ...seat, ...wrong } })).toThrow(
      /seat.headDiameter/,
    )
  })

  it.each(['preload', 'addedLoad', 'holeDiameter'] as const)('refuses a negative %s', (key) => {
    expect(() => under(35e3, 'gray-iron-30', { seat: { ...seat, [key]: -1 } })).toThrow(key)
  })
})
