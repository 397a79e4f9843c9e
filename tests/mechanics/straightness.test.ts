import fc from 'fast-check'
import { linearRegression } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { feelerGap, straightness } from '../../src/mechanics/straightness.ts'

const positions = [0, 0.1, 0.21, 0.3, 0.42]
const height = fc.double({ min: -0.0005, max: 0.0005, noNaN: true })
const heights = fc.array(height, { minLength: 5, maxLength: 5 })

describe('straightness', () => {
  it('fits the same line as a general statistics library', () => {
    fc.assert(
      fc.property(heights, (row) => {
        const { m, b } = linearRegression(positions.map((z, place) => [z, row[place]!]))
        const { slope, intercept } = straightness(positions, row)
        expect(slope).toBeCloseTo(m, 10)
        expect(intercept).toBeCloseTo(b, 12)
      }),
    )
  })

  it('does not see how the row lies or leans', () => {
    fc.assert(
      fc.property(heights, height, height, (row, up, lean) => {
        const one = straightness(positions, row)
        const leaning = row.map((h, place) => h + up + lean * positions[place]!)
        const other = straightness(positions, leaning)
        for (const figure of ['greatest', 'range', 'leastZone'] as const) {
          expect(other[figure]).toBeCloseTo(one[figure], 12)
        }
      }),
    )
  })

  it('never finds the least zone wider than that of the least-squares line, nor under half', () => {
    fc.assert(
      fc.property(heights, (row) => {
        const { leastZone, range } = straightness(positions, row)
        expect(leastZone).toBeLessThanOrEqual(range + 1e-15)
        expect(leastZone).toBeGreaterThanOrEqual(range / 2 - 1e-15)
      }),
    )
  })

  it('finds the zone of one bore out of five that is high', () => {
    const { leastZone, greatest } = straightness([0, 1, 2, 3, 4], [0, 0, 0.0001, 0, 0])
    expect(leastZone).toBeCloseTo(0.0001, 12)
    // The least-squares line follows a fifth of it.
    expect(greatest).toBeCloseTo(0.00008, 12)
  })

  it('refuses rows that do not match and positions that repeat', () => {
    expect(() => straightness([0, 1], [0])).toThrow(/heights/)
    expect(() => straightness([0, 0, 1], [0, 0, 0])).toThrow(DomainError)
    expect(() => straightness([0], [0])).toThrow(/positions/)
    expect(() => straightness([0, 1], [0, Number.NaN])).toThrow(/heights\[1\]/)
  })
})

describe('feelerGap', () => {
  it('lies between the leaf that passes and the leaf that does not', () => {
    expect(feelerGap(0.00003, 0.00005)).toEqual({
      low: 0.00003,
      high: 0.00005,
      middle: 0.00004,
    })
    expect(() => feelerGap(0.00005, 0.00003)).toThrow(/refused|passes/)
  })
})
