import { describe, expect, it } from 'vitest'
import { curvedBeamStress, curvedSection } from '../../src/mechanics/curved-beam.ts'

const INCH = 0.0254
const LBF = 4.4482216152605
const PSI = LBF / INCH ** 2

describe('Shigley, 9th ed., Example 3–15', () => {
  // Crane hook, rectangle 0.75 × 4 in, inner radius 2 in, 5000 lbf. Dimensions and stresses
  // read: 16.9 and −5.63 kpsi. Tolerance 0.1 % on rn and e, half a printed digit on stress.
  const section = { innerRadius: 2 * INCH, outerRadius: 6 * INCH, width: 0.75 * INCH }

  it('radii', () => {
    const { neutralRadius, eccentricity, centroidRadius, area } = curvedSection(section)
    expect(Math.abs(neutralRadius / INCH / 3.641 - 1)).toBeLessThan(1e-3)
    expect(Math.abs(eccentricity / INCH / 0.359 - 1)).toBeLessThan(1e-3)
    expect(centroidRadius / INCH).toBeCloseTo(4, 12)
    expect(area / INCH ** 2).toBeCloseTo(3, 12)
  })

  it('stresses', () => {
    const force = 5000 * LBF
    const { inner, outer } = curvedBeamStress(section, force * 4 * INCH, force)
    expect(Math.abs(inner / PSI / 1000 - 16.9)).toBeLessThan(0.05)
    expect(Math.abs(outer / PSI / 1000 + 5.63)).toBeLessThan(0.005)
    // The book's closing remark: the inner stress is three times the outer.
    expect(Math.abs(inner / -outer - 3)).toBeLessThan(0.01)
  })

  it('a straight beam would be 31 % low at the inside', () => {
    const force = 5000 * LBF
    const area = 3 * INCH ** 2
    const straight = force / area + (6 * force * 4 * INCH) / (0.75 * 16 * INCH ** 3)
    const { inner } = curvedBeamStress(section, force * 4 * INCH, force)
    expect(1 - straight / inner).toBeGreaterThan(0.3)
    expect(1 - straight / inner).toBeLessThan(0.32)
  })
})

describe('limits', () => {
  // Shigley eq 3–66: e → I/(rc A) as the bar gets straight; stress → M c / I.
  it.each([
    { ratio: 50, tolerance: 0.01 },
    { ratio: 1000, tolerance: 5e-4 },
  ])('radius $ratio heights is nearly straight', ({ ratio, tolerance }) => {
    const height = 0.005
    const centre = ratio * height
    const section = {
      innerRadius: centre - height / 2,
      outerRadius: centre + height / 2,
      width: 0.02,
    }
    const straight = (6 * 100) / (0.02 * height ** 2)
    const { inner, outer } = curvedBeamStress(section, 100, 0)
    expect(Math.abs(inner / straight - 1)).toBeLessThan(tolerance)
    expect(Math.abs(-outer / straight - 1)).toBeLessThan(tolerance)
    const { eccentricity } = curvedSection(section)
    expect(Math.abs(eccentricity / (height ** 2 / (12 * centre)) - 1)).toBeLessThan(tolerance)
  })

  it('the two ways to reckon the eccentricity meet', () => {
    // Either side of u = h/2rc = 0.05, where the series takes over from the logarithm.
    const at = (u: number) => {
      const section = { innerRadius: 0.1 * (1 - u), outerRadius: 0.1 * (1 + u), width: 0.01 }
      return curvedSection(section).eccentricity / u ** 2
    }
    expect(Math.abs(at(0.0499999) / at(0.0500001) - 1)).toBeLessThan(1e-7)
  })

  it('stress of bending alone adds up to no force', () => {
    const section = { innerRadius: 0.034, outerRadius: 0.061, width: 0.026 }
    const { neutralRadius, area, eccentricity } = curvedSection(section)
    const steps = 20_000
    let force = 0
    let moment = 0
    for (let i = 0; i < steps; i++) {
      const radius = 0.034 + ((i + 0.5) / steps) * 0.027
      const stress = (500 * (neutralRadius - radius)) / (area * eccentricity * radius)
      force += stress * 0.026 * (0.027 / steps)
      moment += stress * 0.026 * (0.027 / steps) * (neutralRadius - radius)
    }
    expect(Math.abs(force)).toBeLessThan(1e-3)
    expect(Math.abs(moment / 500 - 1)).toBeLessThan(1e-6)
  })

  it('is refused when inside out', () => {
    const section = { innerRadius: 0.06, outerRadius: 0.05, width: 0.02 }
    expect(() => curvedSection(section)).toThrow(/outerRadius is 0.05/)
  })
})
