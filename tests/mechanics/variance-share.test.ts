import fc from 'fast-check'
import { lusolve } from 'mathjs'
import { sampleCorrelation, sampleRankCorrelation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { lowDiscrepancy } from '../../src/mechanics/low-discrepancy.ts'
import { rankedInput, ranks, varianceShares } from '../../src/mechanics/variance-share.ts'

/** Run a model over every row of a sample. */
function results(
  sample: Float64Array,
  width: number,
  model: (inputs: Float64Array) => number,
): Float64Array {
  return Float64Array.from({ length: sample.length / width }, (_, row) =>
    model(sample.subarray(row * width, row * width + width)),
  )
}

/** Shares of the inputs that stand row after row in a sample. */
function sharesOf(sample: Float64Array, made: Float64Array, width: number) {
  const inputs = Array.from({ length: width }, (_, column) =>
    rankedInput(sample.filter((_, place) => place % width === column)),
  )
  return varianceShares(inputs, made)
}

const byInput = (shares: { input: number }[]) => shares.map(({ input }) => input)

describe('varianceShares', () => {
  it('finds the shares of a sum, where they are known in closed form', () => {
    // y = Σ aᵢ uᵢ with equal spreads: input i has aᵢ² / Σ a². Ranks bend a sum a little: 0.03.
    const weights = [1, -4, 2, 0, 3]
    const sample = lowDiscrepancy(1024, 5, 3)
    const sums = results(sample, 5, (u) => u.reduce((sum, v, i) => sum + weights[i]! * v, 0))
    const { shares, explained } = sharesOf(sample, sums, 5)
    expect(byInput(shares)).toEqual([1, 4, 2, 0, 3])
    for (const { input, share, slope, firstOrder } of shares) {
      const closed = weights[input]! ** 2 / 30
      expect(Math.abs(share - closed)).toBeLessThan(0.03)
      // 32 slices of 32 points each: their means scatter more than the regression does.
      expect(Math.abs(firstOrder - closed)).toBeLessThan(0.05)
      if (closed > 0.03) expect(Math.sign(slope)).toBe(Math.sign(weights[input]!))
    }
    expect(explained).toBeGreaterThan(0.95)
  })

  it('does not care how a rising result is stretched', () => {
    const sample = lowDiscrepancy(256, 3, 1)
    const plain = results(sample, 3, ([a, b, c]) => 5 * a! + 2 * b! + c!)
    const one = sharesOf(sample, plain, 3)
    const other = sharesOf(sample, plain.map(Math.exp), 3)
    const rankPart = ({ input, share, slope }: (typeof one.shares)[number]) => ({
      input,
      share,
      slope,
    })
    expect(other.shares.map(rankPart)).toEqual(one.shares.map(rankPart))
    expect(other.explained).toBe(one.explained)
  })

  it('is the squared rank correlation when there is one input', () => {
    const sample = lowDiscrepancy(200, 1, 8)
    const wavy = results(sample, 1, ([u]) => u! + 0.3 * Math.sin(20 * u!))
    const correlation = sampleRankCorrelation(Array.from(sample), Array.from(wavy))
    const { shares, explained } = sharesOf(sample, wavy, 1)
    expect(shares[0]!.share).toBeCloseTo(correlation ** 2, 10)
    expect(explained).toBeCloseTo(correlation ** 2, 10)
  })

  it('says by a low explained share that an effect turns back, and finds it by slices', () => {
    const sample = lowDiscrepancy(1024, 2, 2)
    const hump = results(sample, 2, ([u, v]) => (u! - 0.5) ** 2 + 0.01 * v!)
    const { shares, explained } = sharesOf(sample, hump, 2)
    expect(explained).toBeLessThan(0.1)
    expect(shares.find(({ input }) => input === 0)!.firstOrder).toBeGreaterThan(0.95)
  })

  it('gives nothing to an input, or a result, that does not vary', () => {
    const sample = lowDiscrepancy(64, 3, 2).map((value, place) => (place % 3 === 1 ? 0.5 : value))
    const { shares } = sharesOf(
      sample,
      results(sample, 3, ([u]) => u!),
      3,
    )
    expect(shares.find(({ input }) => input === 1)).toEqual({
      input: 1,
      share: 0,
      slope: 0,
      firstOrder: 0,
    })
    const still = sharesOf(sample, new Float64Array(64).fill(2), 3)
    expect(still.explained).toBe(0)
    expect(still.shares.every(({ share, firstOrder }) => share + firstOrder === 0)).toBe(true)
  })

  it('survives two columns that are the same', () => {
    const sample = lowDiscrepancy(64, 2, 2).map((_, place, all) => all[place - (place % 2)]!)
    const { shares, explained } = sharesOf(
      sample,
      results(sample, 2, ([u]) => u!),
      2,
    )
    expect(shares.every(({ share }) => Number.isFinite(share))).toBe(true)
    expect(explained).toBeCloseTo(1, 10)
  })

  it('keeps every number within 0 to 1', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 20, maxLength: 20 }),
        (values) => {
          const sample = lowDiscrepancy(20, 4, 1)
          const { shares, explained } = sharesOf(sample, Float64Array.from(values), 4)
          for (const figure of [explained, ...shares.flatMap((s) => [s.share, s.firstOrder])]) {
            expect(figure).toBeGreaterThanOrEqual(0)
            expect(figure).toBeLessThanOrEqual(1)
          }
        },
      ),
    )
  })

  it('refuses sizes that do not fit and results that are no numbers', () => {
    const sample = lowDiscrepancy(16, 2, 1)
    expect(() => sharesOf(sample, new Float64Array(15), 2)).toThrow(/inputs/)
    expect(() => sharesOf(sample, new Float64Array(16).fill(Number.NaN), 2)).toThrow(DomainError)
    expect(() => sharesOf(sample.slice(0, 8), new Float64Array(4), 2)).toThrow(/results/)
    expect(() => rankedInput(Float64Array.of(1, Number.NaN))).toThrow(DomainError)
  })
})

describe('ranks', () => {
  it('shares the mean rank among equals', () => {
    expect(Array.from(ranks(Float64Array.of(3, 1, 3, 2)))).toEqual([3.5, 1, 3.5, 2])
  })
})

describe('columns that hang together', () => {
  it('are told apart as a general library’s regression on ranks tells them', () => {
    const [count, width] = [400, 4]
    const drawn = lowDiscrepancy(count, width, 23)
    const sample = new Float64Array(count * width)
    const made = new Float64Array(count)
    for (let row = 0; row < count; row++) {
      const [a, b, c, d] = drawn.subarray(row * width, row * width + width) as unknown as number[]
      // Each column holds a good part of the one before.
      const cells = [a!, 0.6 * a! + b!, 0.5 * a! + 0.5 * b! + c!, d! - 0.7 * c!]
      sample.set(cells, row * width)
      made[row] = 2 * cells[0]! - cells[1]! + 0.5 * cells[2]! ** 3 + cells[3]!
    }
    const columns = [0, 1, 2, 3].map((column) =>
      Array.from(
        ranks(Float64Array.from({ length: count }, (_, row) => sample[row * width + column]!)),
      ),
    )
    const target = Array.from(ranks(made))
    const matrix = columns.map((one) => columns.map((other) => sampleCorrelation(one, other)))
    const right = columns.map((one) => sampleCorrelation(one, target))
    const slopes = (lusolve(matrix, right) as [number][]).map(([slope]) => slope)
    const { shares, explained } = sharesOf(sample, made, width)
    for (const { input, slope, share } of shares) {
      expect(slope).toBeCloseTo(slopes[input] ?? Number.NaN, 9)
      expect(share).toBeCloseTo(Math.min(1, slope ** 2), 12)
    }
    const fitted = slopes.reduce((sum, slope, column) => sum + slope * (right[column] ?? 0), 0)
    expect(explained).toBeCloseTo(fitted, 9)
    // Off the diagonal there is something to tell apart.
    expect(Math.abs(matrix[0]?.[1] ?? 0)).toBeGreaterThan(0.4)
  })
})
