import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readingSlips } from '../../src/mechanics/reading-slip.ts'

const expected = 0.06835
const within = 0.0002

describe('readingSlips', () => {
  it.each([
    ['inch-for-mm', expected / 25.4],
    ['mm-for-inch', expected * 25.4],
    ['decimal-point', expected / 10],
    ['decimal-point', expected * 100],
    ['thimble-turn', expected + 0.0005],
    ['thimble-turn', expected - 0.025 * 0.0254],
  ])('suspects %s', (kind, found) => {
    const [slip] = readingSlips(found, expected, within)
    expect(slip?.kind).toBe(kind)
    expect(slip?.meant).toBeCloseTo(expected, 12)
  })

  it('says nothing about a reading that is near', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (share) => {
        expect(readingSlips(expected + 0.99 * share * within, expected, within)).toEqual([])
      }),
    )
  })

  it('offers only what would bring the reading near, nearest first', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 10, noNaN: true }), (found) => {
        const distances = readingSlips(found, expected, within).map(({ meant }) =>
          Math.abs(meant - expected),
        )
        expect(distances.every((distance) => distance <= within)).toBe(true)
        expect(distances.toSorted((one, other) => one - other)).toEqual(distances)
      }),
    )
  })

  it('has no guess for a reading that no slip explains', () => {
    expect(readingSlips(0.05, expected, within)).toEqual([])
    expect(() => readingSlips(-1, expected, within)).toThrow(/found/)
    expect(() => readingSlips(0.05, expected, 1)).toThrow(/within/)
  })
})
