import { describe, expect, it } from 'vitest'
import { plainSobol } from '../../src/mechanics/low-discrepancy.ts'

describe('plainSobol against points published or computed elsewhere', () => {
  // Source: Joe & Kuo, notes to the program sobol.cc, first ten points in three columns
  // (from memory, and the same from SciPy 1.17.1). Exact in binary, so no tolerance.
  it('gives the first ten points of three columns', () => {
    expect(Array.from(plainSobol(10, 3))).toEqual(
      [
        [0, 0, 0],
        [0.5, 0.5, 0.5],
        [0.75, 0.25, 0.25],
        [0.25, 0.75, 0.75],
        [0.375, 0.375, 0.625],
        [0.875, 0.875, 0.125],
        [0.625, 0.125, 0.875],
        [0.125, 0.625, 0.375],
        [0.1875, 0.3125, 0.9375],
        [0.6875, 0.8125, 0.4375],
      ].flat(),
    )
  })

  // Source: SciPy 1.17.1, scipy.stats.qmc.Sobol(25, scramble=False).random(256), rows × 256:
  // an independent program with the same table of direction numbers. Exact.
  it.each([
    {
      row: 5,
      points: [
        224, 224, 32, 96, 224, 160, 224, 96, 96, 32, 96, 224, 224, 32, 224, 96, 224, 96, 96, 160,
        160, 160, 224, 96, 96,
      ],
    },
    {
      row: 100,
      points: [
        106, 66, 198, 186, 226, 190, 6, 122, 162, 178, 118, 174, 122, 218, 82, 126, 174, 190, 214,
        86, 194, 102, 2, 126, 6,
      ],
    },
    {
      row: 255,
      points: [
        1, 255, 197, 147, 157, 251, 227, 45, 113, 91, 35, 43, 51, 163, 157, 133, 103, 109, 187, 65,
        81, 113, 137, 57, 149,
      ],
    },
  ])('agrees in all 25 columns at row $row', ({ row, points }) => {
    const computed = plainSobol(256, 25).slice(row * 25, row * 25 + 25)
    expect(Array.from(computed, (value) => value * 256)).toEqual(points)
  })
})
