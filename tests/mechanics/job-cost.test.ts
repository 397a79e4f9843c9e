import fc from 'fast-check'
import { mean as meanOf, quantileSorted, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { pertMoments, pertQuantile, type Spread } from '../../src/mechanics/distributions.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { jobCost, sumOfSpreads } from '../../src/mechanics/job-cost.ts'
import { lowDiscrepancy } from '../../src/mechanics/low-discrepancy.ts'

const items: Spread[] = [
  { low: 90, likely: 130, high: 260 },
  { low: 300, likely: 450, high: 500 },
  { low: 60, likely: 60, high: 60 },
  { low: 150, likely: 200, high: 420 },
]

const price: fc.Arbitrary<Spread> = fc
  .tuple(
    fc.double({ min: 0, max: 2000, noNaN: true }),
    fc.double({ min: 0, max: 1000, noNaN: true }),
    fc.double({ min: 0, max: 1000, noNaN: true }),
  )
  .map(([low, up, further]) => ({ low, likely: low + up, high: low + up + further }))

/** Totals of independent items, sampled. */
function sampledTotals(spreads: Spread[], count: number): number[] {
  const sample = lowDiscrepancy(count, spreads.length, 21)
  const totals = Array.from({ length: count }, (_, row) =>
    spreads.reduce(
      (sum, spread, item) => sum + pertQuantile(sample[row * spreads.length + item]!, spread),
      0,
    ),
  )
  return totals.sort((one, other) => one - other)
}

describe('jobCost', () => {
  it('agrees with a sampled sum in mean, deviation and quantiles', () => {
    const totals = sampledTotals(items, 8192)
    const { net } = jobCost({ items })
    const width = net.high - net.low
    expect(Math.abs(meanOf(totals) - net.mean)).toBeLessThan(0.0005 * width)
    expect(Math.abs(standardDeviation(totals) - net.deviation)).toBeLessThan(0.0005 * width)
    // The docstring allows 1 % of the width for usual prices.
    for (const [chance, quantile] of [
      [0.1, net.p10],
      [0.5, net.p50],
      [0.9, net.p90],
    ] as const) {
      expect(Math.abs(quantileSorted(totals, chance) - quantile)).toBeLessThan(0.01 * width)
    }
  })

  it('keeps to 3 % of the width for any set of items', () => {
    fc.assert(
      fc.property(fc.array(price, { minLength: 2, maxLength: 8 }), (prices) => {
        const sum = sumOfSpreads(prices)
        const width = sum.high - sum.low
        fc.pre(width > 1)
        const totals = sampledTotals(prices, 2048)
        for (const [chance, quantile] of [
          [0.1, sum.p10],
          [0.5, sum.p50],
          [0.9, sum.p90],
        ] as const) {
          expect(Math.abs(quantileSorted(totals, chance) - quantile)).toBeLessThan(0.03 * width)
        }
      }),
      { numRuns: 15 },
    )
  })

  it('keeps to 3 % for the worst pair: one figure likely low, the other likely high', () => {
    for (const width of [0.1, 0.2, 0.4, 0.7, 1]) {
      const pair = [
        { low: 0, likely: 0, high: 1 },
        { low: 0, likely: width, high: width },
      ]
      const totals = sampledTotals(pair, 4096)
      const sum = sumOfSpreads(pair)
      for (const [chance, quantile] of [
        [0.1, sum.p10],
        [0.9, sum.p90],
      ] as const) {
        expect(Math.abs(quantileSorted(totals, chance) - quantile)).toBeLessThan(0.03 * sum.high)
      }
    }
  })

  it('is exact for one item', () => {
    const item = { low: 10, likely: 20, high: 60 }
    const sum = sumOfSpreads([item])
    expect(sum.p10).toBeCloseTo(pertQuantile(0.1, item), 8)
    expect(sum.p90).toBeCloseTo(pertQuantile(0.9, item), 8)
    expect(sum.deviation).toBeCloseTo(pertMoments(item).deviation, 10)
  })

  it('adds deviations outright when all prices move together', () => {
    const deviations = items.map((item) => pertMoments(item).deviation)
    const together = deviations.reduce((sum, deviation) => sum + deviation, 0)
    expect(sumOfSpreads(items, 1).deviation).toBeCloseTo(together, 10)
    expect(sumOfSpreads(items, 0).deviation).toBeCloseTo(Math.hypot(...deviations), 10)
  })

  it('keeps low ≤ p10 ≤ p50 ≤ p90 ≤ high, and a wider spread the more prices move together', () => {
    fc.assert(
      fc.property(
        fc.array(price, { maxLength: 10 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (prices, correlation) => {
          const sum = sumOfSpreads(prices, correlation)
          const rising = [sum.low, sum.p10, sum.p50, sum.p90, sum.high]
          rising.slice(1).forEach((value, place) => {
            expect(value).toBeGreaterThanOrEqual(rising[place]! - 1e-9 * (1 + sum.high))
          })
          const apart = sumOfSpreads(prices, 0).deviation
          expect(sum.deviation).toBeGreaterThanOrEqual(apart - 1e-9)
          expect(Object.values(sum).every(Number.isFinite)).toBe(true)
        },
      ),
    )
  })

  it('taxes what is taxable and counts quantities', () => {
    const cost = jobCost({
      items: [
        { low: 10, likely: 10, high: 10, quantity: 4 },
        { low: 100, likely: 200, high: 300, taxable: false },
      ],
      taxRate: 0.08,
    })
    expect(cost.net.likely).toBe(240)
    expect(cost.tax.likely).toBeCloseTo(3.2, 12)
    expect(cost.tax.high).toBeCloseTo(3.2, 12)
    expect(cost.gross.likely).toBeCloseTo(243.2, 12)
    expect(cost.items[0]!.mean).toBeCloseTo(43.2, 12)
    expect(cost.items.map(({ varianceShare }) => varianceShare)).toEqual([0, 1])
  })

  it('shares the variance out whole', () => {
    for (const correlation of [0, 0.4, 1]) {
      const { items: parts } = jobCost({ items, correlation })
      const whole = parts.reduce((sum, { varianceShare }) => sum + varianceShare, 0)
      expect(whole).toBeCloseTo(1, 12)
    }
  })

  it('costs nothing when there is nothing to do', () => {
    const { gross } = jobCost({ items: [] })
    expect(Object.values(gross).every((value) => value === 0)).toBe(true)
  })

  it('names the item and the figure that do not fit', () => {
    const wrong = [items[0]!, { low: 5, likely: 3, high: 9 }]
    expect(() => jobCost({ items: wrong })).toThrow(/items\[1\]\.likely/)
    expect(() => jobCost({ items: [{ low: -1, likely: 3, high: 9 }] })).toThrow(/items\[0\]\.low/)
    expect(() => jobCost({ items, taxRate: 8 })).toThrow(DomainError)
  })
})
