import { describe, expect, it } from 'vitest'
import { gearDrive } from '../../src/mechanics/gear-backlash.ts'
import { chainDrive, chainPitches, midStrandSag } from '../../src/mechanics/timing-drive.ts'

const INCH = 0.0254
const chain = { pitch: 0.375 * INCH, crankTeeth: 21, camTeeth: 42 }

describe('timing chain on shortened centres', () => {
  // Source: chain makers' length formula L = 2C + (z₁ + z₂)/2 + T/C in pitches, and slack
  // 2 ΔC cos α with sin α = (R₂ − R₁)/C; 21 and 42 teeth, 0.375 in pitch, 5.000 in centres, worked
  // from them. 0.2 %: the two forms differ by 0.1 % and the pitch circles from arcs by as much.
  it.each([
    { shift: 0.005, slack: 0.00968 },
    { shift: 0.01, slack: 0.01936 },
  ])('frees $slack in for $shift in', ({ shift, slack }) => {
    const drive = chainDrive({ ...chain, centreDistance: 5 * INCH, axisShift: shift * INCH })
    expect(Math.abs(drive.slackFreed / INCH / slack - 1)).toBeLessThan(0.002)
    expect(Math.abs(drive.slackFreedApproximate / INCH / slack - 1)).toBeLessThan(0.002)
  })

  it('agrees with the difference of two lengths by the formula', () => {
    const length = (centres: number) => chainPitches(centres * INCH, chain.pitch, 21, 42) * 0.375
    expect(Math.abs((length(5) - length(4.995)) / 0.00969 - 1)).toBeLessThan(0.002)
  })

  // Source: arc length of a shallow parabola; strand 4.840 in, excess 0.02 in. Half a digit.
  it('sags by √(3 s e / 8)', () => {
    expect(Math.abs(midStrandSag(4.84 * INCH, 0.02 * INCH) / INCH - 0.1905)).toBeLessThan(5e-5)
  })
})

describe('timing gears on changed centres', () => {
  // Source: working pressure angle cos φw = a₀ cos φ / a and backlash 2 a (inv φw − inv φ), as in
  // open gear notebooks; 2 ΔC tan φ, as in open calculators. 20 and 40 teeth, module 2.5 mm, 20°,
  // worked from them, to half of the last digit.
  it.each([
    { apart: 0.05, exact: 0.03651, approximate: 0.0364 },
    { apart: -0.05, exact: -0.03628, approximate: -0.0364 },
  ])('change backlash by $exact mm for $apart mm', ({ apart, exact, approximate }) => {
    const gears = gearDrive({
      centreDistance: 0.075,
      pressureAngle: (20 * Math.PI) / 180,
      axisShift: -apart / 1000,
      backlashBefore: 0.0001,
    })
    expect(Math.abs(gears.change * 1000 - exact)).toBeLessThanOrEqual(5e-6)
    expect(Math.abs(gears.changeApproximate * 1000 - approximate)).toBeLessThanOrEqual(5e-6)
  })
})
