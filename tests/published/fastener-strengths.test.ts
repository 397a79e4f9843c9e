import { describe, expect, it } from 'vitest'
import {
  FASTENER_GRADES,
  type FastenerGrade,
  fastenerStrength,
} from '../../src/mechanics/fastener-grades.ts'

const KSI = 6.894757293168361e6
const INCH = 0.0254

describe('SAE grades', () => {
  // Source: SAE J429 proof, yield, tensile, ksi, as in Shigley & Mischke, 5th ed., p. 341;
  // endurance of rolled threads, kpsi: Shigley, 9th ed., Table 8–17. Exact: table values.
  it.each<[FastenerGrade, number, number, number, number, number]>([
    ['sae-5', 0.5, 85, 92, 120, 18.6],
    ['sae-5', 1, 85, 92, 120, 18.6],
    ['sae-7', 0.5, 105, 115, 133, 20.6],
    ['sae-8', 0.4375, 120, 130, 150, 23.2],
  ])('%s at %f in', (grade, size, proof, yielding, ultimate, endurance) => {
    const row = fastenerStrength(grade, size * INCH)
    expect(row.proof / KSI).toBeCloseTo(proof, 9)
    expect(row.yield / KSI).toBeCloseTo(yielding, 9)
    expect(row.ultimate / KSI).toBeCloseTo(ultimate, 9)
    expect(row.endurance / KSI).toBeCloseTo(endurance, 9)
    expect(row.fromMemory).toBe(false)
  })
})

describe('ISO property classes', () => {
  // Source: ISO 898-1, MPa; the 8.8 row up to 16 mm from memory. Endurance: Shigley, 8–17.
  it.each<[FastenerGrade, number, number, number, number, number]>([
    ['iso-8.8', 12, 580, 640, 800, 129],
    ['iso-8.8', 16, 580, 640, 800, 129],
    ['iso-8.8', 18, 600, 660, 830, 129],
    ['iso-10.9', 12, 830, 940, 1040, 162],
    ['iso-12.9', 12, 970, 1100, 1220, 190],
  ])('%s at %f mm', (grade, size, proof, yielding, ultimate, endurance) => {
    const row = fastenerStrength(grade, size / 1000)
    expect(row.proof).toBeCloseTo(proof * 1e6, 3)
    expect(row.yield).toBeCloseTo(yielding * 1e6, 3)
    expect(row.ultimate).toBeCloseTo(ultimate * 1e6, 3)
    expect(row.endurance).toBeCloseTo(endurance * 1e6, 3)
  })
})

describe('every grade', () => {
  // Definition: endurance < proof < yield < tensile strength.
  it.each(FASTENER_GRADES)('%s has its strengths in order and a source', (grade) => {
    const { endurance, proof, yield: yielding, ultimate, source } = fastenerStrength(grade, 0.0127)
    expect(endurance).toBeLessThan(proof)
    expect(proof).toBeLessThan(yielding)
    expect(yielding).toBeLessThan(ultimate)
    expect(source.length).toBeGreaterThan(20)
  })

  it.each(FASTENER_GRADES)('%s is never stronger in a larger size of the SAE grades', (grade) => {
    if (!grade.startsWith('sae')) return expect(grade).toMatch(/^iso|^high/)
    expect(fastenerStrength(grade, 0.035).proof).toBeLessThanOrEqual(
      fastenerStrength(grade, 0.0127).proof,
    )
  })

  it('marks the stud without a published source as such', () => {
    const stud = fastenerStrength('high-strength-stud', 0.0127)
    expect(stud.fromMemory).toBe(true)
    expect(stud.source).toContain('no published source')
    expect(stud.proof).toBeGreaterThan(fastenerStrength('iso-12.9', 0.0127).proof)
  })

  it('refuses sizes outside its rows', () => {
    expect(() => fastenerStrength('iso-8.8', 0.05)).toThrow(/nominalDiameter is 0.05/)
    expect(() => fastenerStrength('sae-5', Number.NaN)).toThrow(/NaN/)
  })
})
