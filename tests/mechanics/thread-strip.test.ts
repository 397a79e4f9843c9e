import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { threadLimits } from '../../src/mechanics/thread-limits.ts'
import { neededEngagement, shearAreas, strippingLoad } from '../../src/mechanics/thread-strip.ts'
import {
  holeMinorDiameter,
  pitchDiameter,
  screwRootDiameter,
  tensileStressArea,
} from '../../src/mechanics/threads.ts'

const INCH = 0.0254

/** Sizes of main studs and bolts: nominal diameter and pitch, m. */
const sizes = fc.constantFrom(
  ...[
    [5 / 16, 18],
    [3 / 8, 16],
    [3 / 8, 24],
    [7 / 16, 14],
    [7 / 16, 20],
    [1 / 2, 13],
    [1 / 2, 20],
    [9 / 16, 12],
    [5 / 8, 11],
    [5 / 8, 18],
  ].map(([d, n]) => [(d as number) * INCH, INCH / (n as number)] as const),
  ...[
    [8, 1.25],
    [8, 1],
    [10, 1.5],
    [10, 1.25],
    [11, 1.5],
    [12, 1.75],
    [12, 1.25],
    [14, 2],
    [14, 1.5],
  ].map(([d, p]) => [(d as number) / 1000, (p as number) / 1000] as const),
)

describe('limits and areas of real sizes', () => {
  it('limits leave less metal than the basic profile, and the threads overlap', () => {
    fc.assert(
      fc.property(sizes, ([d, pitch]) => {
        const limits = threadLimits(d, pitch)
        expect(limits.screwMajorMin).toBeLessThan(d)
        expect(limits.screwPitchMin).toBeLessThan(pitchDiameter(d, pitch))
        expect(limits.holeMinorMax).toBeGreaterThan(holeMinorDiameter(d, pitch))
        expect(limits.holePitchMax).toBeGreaterThan(pitchDiameter(d, pitch))
        const { screw, hole } = shearAreas(pitch, limits)
        // The hole shears on the larger circle, and neither is more than its whole cylinder.
        expect(hole).toBeGreaterThan(screw)
        expect(hole).toBeLessThan(Math.PI * d)
        expect(screw).toBeGreaterThan(0.4 * Math.PI * screwRootDiameter(d, pitch))
      }),
    )
  })

  it('the stress area lies between those of root and pitch diameter', () => {
    fc.assert(
      fc.property(sizes, ([d, pitch]) => {
        const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2
        const area = tensileStressArea(d, pitch)
        expect(area).toBeGreaterThan(circle(screwRootDiameter(d, pitch)))
        expect(area).toBeLessThan(circle(pitchDiameter(d, pitch)))
      }),
    )
  })
})

describe('stripping', () => {
  const shear = fc.double({ min: 5e7, max: 1e9, noNaN: true })
  const length = fc.double({ min: 0.005, max: 0.05, noNaN: true })

  it('deeper or stronger threads never carry less', () => {
    fc.assert(
      fc.property(sizes, shear, shear, length, length, ([d, pitch], a, b, near, far) => {
        const areas = shearAreas(pitch, threadLimits(d, pitch))
        const load = (holeShear: number, engagement: number) =>
          strippingLoad({ areas, engagement, screwShear: 6e8, holeShear }).load
        expect(load(a, Math.max(near, far))).toBeGreaterThanOrEqual(load(a, Math.min(near, far)))
        expect(load(Math.max(a, b), near)).toBeGreaterThanOrEqual(load(Math.min(a, b), near))
      }),
    )
  })

  it('the needed engagement carries the load, to rounding', () => {
    fc.assert(
      fc.property(sizes, shear, ([d, pitch], holeShear) => {
        const areas = shearAreas(pitch, threadLimits(d, pitch))
        const material = { areas, screwShear: 6e8, holeShear }
        const engagement = neededEngagement(60e3, material)
        expect(engagement * Math.min(areas.screw * 6e8, areas.hole * holeShear)).toBeCloseTo(
          60e3,
          6,
        )
      }),
    )
  })
})
