import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coverFan } from '../../src/mechanics/fan-cover.ts'
import { emptyMoments, type Moments, shareAt } from '../../src/mechanics/moments.ts'

const force = fc.double({ min: -1e4, max: 1e4, noNaN: true })
const loads = fc.array(fc.tuple(force, force, force, force), { minLength: 1, maxLength: 40 })
const RATIOS = [0.3, 1, 3]

function momentsOf(rows: readonly (readonly [number, number, number, number])[]): Moments {
  const moments = emptyMoments(rows.length)
  moments.count = rows.length
  rows.forEach(([gasX, gasY, inertiaX, inertiaY], at) => {
    moments.gasX[at] = gasX
    moments.gasY[at] = gasY
    moments.inertiaX[at] = inertiaX
    moments.inertiaY[at] = inertiaY
  })
  return moments
}

describe('coverFan', () => {
  it('keeps moments that stand for all at every ratio and every weighting', () => {
    fc.assert(
      fc.property(loads, (rows) => {
        const moments = momentsOf(rows)
        const kept = coverFan(moments, RATIOS, 64)
        expect(kept.length).toBeGreaterThan(0)
        expect(new Set(kept).size).toBe(kept.length)
        for (const ratio of RATIOS) {
          shareAt(moments, ratio)
          for (let turn = 0; turn <= 30; turn++) {
            const [x, y] = [Math.cos((turn * Math.PI) / 60), Math.sin((turn * Math.PI) / 60)]
            const value = (at: number) => x * (moments.pull[at] ?? 0) + y * (moments.side[at] ?? 0)
            const most = Math.max(...rows.map((_, at) => value(at)))
            // 0.05 % of the weighted share, and what the hull itself leaves out.
            expect(Math.max(...kept.map(value))).toBeGreaterThanOrEqual(0.9995 * most - 1e-3)
          }
        }
      }),
    )
  })

  it('keeps one for many that are alike, and each of those that are not', () => {
    // Straight down and straight across at rising size: only the greatest of each counts.
    const down = [1, 2, 3].map((n) => [0, -n, 0, 0] as const)
    const across = [1, 2, 3].map((n) => [n, 0, 0, 0] as const)
    expect(coverFan(momentsOf([...down, ...down]), RATIOS, 64)).toEqual([2])
    const both = coverFan(momentsOf([...down, ...across]), RATIOS, 64)
    expect([...both].sort()).toEqual([2, 5])
  })

  it('keeps no more than it may', () => {
    // A fan of loads, each the greatest in its own direction.
    const fan = Array.from({ length: 60 }, (_, n) => {
      const angle = (n * Math.PI) / 118
      return [1e4 * Math.sin(angle), -1e4 * Math.cos(angle), 0, 0] as const
    })
    const many = coverFan(momentsOf(fan), [1], 64).length
    expect(many).toBeGreaterThan(8)
    expect(coverFan(momentsOf(fan), [1], 8).length).toBeLessThanOrEqual(8)
    expect(coverFan(momentsOf(fan), [1], 1)).toHaveLength(1)
  })
})
