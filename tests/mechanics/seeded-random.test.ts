import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { mixBits, randomStream } from '../../src/mechanics/seeded-random.ts'

describe('randomStream', () => {
  it('repeats for a seed and differs between seeds', () => {
    const draw = (seed: number) => {
      const stream = randomStream(seed)
      return Array.from({ length: 50 }, stream.next)
    }
    expect(draw(7)).toEqual(draw(7))
    expect(draw(7)).not.toEqual(draw(8))
  })

  it('draws every whole number below a bound about equally often', () => {
    // Pearson's statistic over 10 cells has mean 9 and passes 27.9 once in a thousand seeds
    // (chi-squared, 9 degrees of freedom); the seed is fixed, so the result is too.
    const stream = randomStream(1)
    const counts = new Array<number>(10).fill(0)
    for (let draw = 0; draw < 100_000; draw++) counts[stream.below(10)]!++
    const statistic = counts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0)
    expect(statistic).toBeLessThan(27.9)
  })

  it('keeps fractions strictly inside 0 to 1 with mean one half', () => {
    const stream = randomStream(3)
    const draws = Array.from({ length: 100_000 }, stream.fraction)
    expect(Math.min(...draws.slice(0, 50_000))).toBeGreaterThan(0)
    expect(Math.max(...draws.slice(0, 50_000))).toBeLessThan(1)
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length
    // Standard error 1/√(12 n) = 0.00091; three of them.
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.0028)
  })

  it('favours no remainder where the bound does not divide 2³²', () => {
    // A third of the numbers below 3 · 2³⁰ lie below 2³⁰; taking remainders plainly gives half.
    // Standard error √(2/9 / 20 000) = 0.0033; three of them.
    const stream = randomStream(5)
    const third = 2 ** 30
    let [small, most] = [0, 0]
    for (let draw = 0; draw < 20_000; draw++) {
      const found = stream.below(3 * third)
      most = Math.max(most, found)
      if (found < third) small++
    }
    expect(Math.abs(small / 20_000 - 1 / 3)).toBeLessThan(0.01)
    expect(most).toBeLessThan(3 * third)
  })

  it('puts a fraction in the middle of its own step of 2⁻³²', () => {
    const [fractions, words] = [randomStream(11), randomStream(11)]
    for (let draw = 0; draw < 100; draw++) {
      expect(fractions.fraction() * 2 ** 32).toBeCloseTo(words.next() + 0.5, 6)
    }
  })

  it('refuses a seed that is no whole number of 32 bits', () => {
    for (const seed of [-1, 0.5, 2 ** 32, Number.NaN]) {
      expect(() => randomStream(seed)).toThrow(DomainError)
    }
  })
})

describe('mixBits', () => {
  it('sends different words to different words', () => {
    const mixed = new Set(Array.from({ length: 65_536 }, (_, word) => mixBits(word * 65_537)))
    expect(mixed.size).toBe(65_536)
  })

  it('flips half of the output bits, on average, for one input bit', () => {
    let flipped = 0
    for (let word = 0; word < 2000; word++) {
      let difference = mixBits(word) ^ mixBits(word ^ (1 << (word % 32)))
      for (; difference !== 0; difference &= difference - 1) flipped++
    }
    expect(Math.abs(flipped / 2000 - 16)).toBeLessThan(0.3)
  })
})
