import { describe, expect, it } from 'vitest'
import { fastenerStrength } from '../../src/mechanics/fastener-grades.ts'
import { materialOf } from '../../src/mechanics/materials.ts'
import { threadLimits } from '../../src/mechanics/thread-limits.ts'
import {
  equalStrengthEngagement,
  neededEngagement,
  relativeStrength,
  shearAreas,
  strippingLoad,
} from '../../src/mechanics/thread-strip.ts'
import { tensileStressArea } from '../../src/mechanics/threads.ts'

const INCH = 0.0254
const TENTH = INCH / 10_000

// Limits of classes 2A and 2B, in ten-thousandths of an inch: ASME B1.1 (from memory).
const PRINTED = [
  {
    thread: '1/2-13',
    d: 0.5,
    n: 13,
    limits: { Kn: 4340, Es: 4435, Ds: 4876, En: 4565 },
    areas: { As: 0.77894, An: 1.12349 },
    engagement: 0.3643,
  },
  {
    thread: '7/16-14',
    d: 0.4375,
    n: 14,
    limits: { Kn: 3760, Es: 3850, Ds: 4258, En: 3972 },
    areas: { As: 0.67655, An: 0.97808 },
    engagement: 0.3143,
  },
]

describe.each(PRINTED)('$thread', ({ d, n, limits, areas, engagement }) => {
  const pitch = INCH / n
  const printed = {
    screwMajorMin: limits.Ds * TENTH,
    screwPitchMin: limits.Es * TENTH,
    holeMinorMax: limits.Kn * TENTH,
    holePitchMax: limits.En * TENTH,
  }

  // Areas worked by hand from FED-STD-H28/2 at the printed limits, in² an inch.
  it('areas and engagement at the printed limits', () => {
    const computed = shearAreas(pitch, printed)
    expect(Math.abs(computed.screw / INCH / areas.As - 1)).toBeLessThan(1e-3)
    expect(Math.abs(computed.hole / INCH / areas.An - 1)).toBeLessThan(1e-3)
    const stressArea = tensileStressArea(d * INCH, pitch)
    const length = equalStrengthEngagement(stressArea, computed)
    expect(Math.abs(length / INCH / engagement - 1)).toBeLessThan(1e-3)
    // Identity: at that length the shear area is twice the stress area.
    expect(computed.screw * length).toBeCloseTo(2 * stressArea, 12)
  })

  // Tolerance: the tables are cut to 0.0001 in, the hole's minor diameter to 0.001 in.
  it('limits by formula are the printed ones', () => {
    const computed = threadLimits(d * INCH, pitch)
    expect(Math.abs(computed.screwMajorMin / TENTH - limits.Ds)).toBeLessThan(1.1)
    expect(Math.abs(computed.screwPitchMin / TENTH - limits.Es)).toBeLessThan(1.1)
    expect(Math.abs(computed.holePitchMax / TENTH - limits.En)).toBeLessThan(1.1)
    expect(Math.abs(computed.holeMinorMax / TENTH - limits.Kn)).toBeLessThan(5.1)
  })
})

describe('classes 6g and 6H', () => {
  // Source: M10: ISO 965-2, limits in mm (from memory), rounded to preferred numbers, hence 6 µm.
  // M8 × 0.75: ISO 965-1 (from memory); pitch below 1 mm has a line of its own for the minor
  // diameter. Screw major 7.838 (−22 −140), pitch 7.391 (−22 −100), hole minor 7.378 (+190), pitch
  // 7.645 (+132); each part is rounded, hence 8 µm.
  it.each([
    ['M10 × 1.5', 10, 1.5, [9.732, 8.862, 8.676, 9.206], 0.006],
    ['M8 × 0.75', 8, 0.75, [7.838, 7.391, 7.378, 7.645], 0.008],
  ] as const)('%s: limits by formula are the printed ones', (_, size, pitch, printed, near) => {
    const limits = threadLimits(size / 1000, pitch / 1000)
    const [screwMajor, screwPitch, holeMinor, holePitch] = printed
    expect(Math.abs(limits.screwMajorMin * 1000 - screwMajor)).toBeLessThan(near)
    expect(Math.abs(limits.screwPitchMin * 1000 - screwPitch)).toBeLessThan(near)
    expect(Math.abs(limits.holeMinorMax * 1000 - holeMinor)).toBeLessThan(near)
    expect(Math.abs(limits.holePitchMax * 1000 - holePitch)).toBeLessThan(near)
  })
})

describe('engagement in the block', () => {
  const d = 0.5 * INCH
  const pitch = INCH / 13
  const areas = shearAreas(pitch, threadLimits(d, pitch))
  const stud = fastenerStrength('high-strength-stud', d)
  const breaking = tensileStressArea(d, pitch) * stud.ultimate
  const inBlock = (shear: number) =>
    neededEngagement(breaking, { areas, screwShear: 0.58 * stud.ultimate, holeShear: shear })

  it('needs more in aluminium than in iron', () => {
    const iron = inBlock(materialOf('gray-iron-30').shear)
    const light = inBlock(materialOf('aluminium-356-t6').shear)
    expect(light).toBeGreaterThan(iron)
    // Shop rule, no published source: 1½ d in iron and 2 d or more in aluminium for strong studs.
    expect(iron / d).toBeGreaterThan(0.8)
    expect(iron / d).toBeLessThan(1.6)
    expect(light / d).toBeGreaterThan(1.4)
    expect(light / d).toBeLessThan(2.6)
  })

  it('carries exactly the load it was asked for', () => {
    const holeShear = materialOf('aluminium-319-t6').shear
    const engagement = inBlock(holeShear)
    const strip = strippingLoad({ areas, engagement, screwShear: 0.58 * stud.ultimate, holeShear })
    expect(strip.load / breaking).toBeCloseTo(1, 12)
    expect(strip.weaker).toBe('hole')
  })

  it('is limited by the weaker of two threads', () => {
    // By hand: areas of 30 and 40 mm² for each mm, 10 mm engaged, 300 and 100 MPa in shear.
    const own = { areas: { screw: 0.03, hole: 0.04 }, engagement: 0.01 }
    const soft = strippingLoad({ ...own, screwShear: 300e6, holeShear: 100e6 })
    expect(soft.screw).toBeCloseTo(90e3, 6)
    expect(soft).toMatchObject({ weaker: 'hole', load: soft.hole })
    expect(soft.hole).toBeCloseTo(40e3, 6)
    const hard = strippingLoad({ ...own, screwShear: 100e6, holeShear: 300e6 })
    expect(hard).toMatchObject({ weaker: 'screw', load: hard.screw })
  })

  it.each([
    { engagement: 0 },
    { screwShear: -1 },
    { holeShear: Number.NaN },
    { areas: { screw: 0, hole: 0.04 } },
    { areas: { screw: 0.03, hole: -1 } },
  ])('refuses %o', (wrong) => {
    const sound = { areas, engagement: 0.02, screwShear: 3e8, holeShear: 2e8 }
    expect(() => strippingLoad({ ...sound, ...wrong })).toThrow(/is (0|-1|NaN)/)
  })

  it('J above 1 says the hole goes first', () => {
    expect(
      relativeStrength(areas, stud.ultimate, materialOf('gray-iron-30').ultimate),
    ).toBeGreaterThan(1)
    expect(relativeStrength(areas, 1e8, 1e9)).toBeLessThan(1)
  })

  it('refuses threads that do not touch', () => {
    const limits = { ...threadLimits(d, pitch), holePitchMax: 2 * d }
    expect(() => shearAreas(pitch, limits)).toThrow(/overlap/)
  })
})
