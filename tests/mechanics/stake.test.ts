import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { breakEvenChance, costLoss, expectedOutlay, stake } from '../../src/mechanics/stake.ts'

const money = fc.double({ min: 1, max: 1e5, noNaN: true })
const share = fc.double({ min: 0.01, max: 1, noNaN: true })

describe('breakEvenChance', () => {
  it('is the chance at which protecting saves nothing', () => {
    fc.assert(
      fc.property(money, money, share, (extraCost, more, protection) => {
        const atStake = extraCost + more
        const chance = breakEvenChance(extraCost, atStake, protection)
        fc.pre(chance <= 1)
        const { saving } = costLoss({ extraCost, atStake, chance, protection })
        expect(Math.abs(saving)).toBeLessThan(1e-9 * atStake)
      }),
    )
  })

  it('parts the chances at which protecting pays from those at which it does not', () => {
    fc.assert(
      fc.property(money, money, share, share, (extraCost, more, protection, chance) => {
        const atStake = extraCost + more
        const threshold = breakEvenChance(extraCost, atStake, protection)
        fc.pre(Math.abs(chance - threshold) > 1e-6)
        const { saving } = costLoss({ extraCost, atStake, chance, protection })
        expect(saving > 0).toBe(chance > threshold)
      }),
    )
  })

  it('refuses a stake of nothing and figures out of order', () => {
    expect(() => breakEvenChance(100, 0)).toThrow(/atStake/)
    expect(() => breakEvenChance(-1, 100)).toThrow(DomainError)
    expect(() => breakEvenChance(1, 100, 0)).toThrow(/protection/)
  })
})

describe('stake', () => {
  it('adds the route to what is in the engine, less what can be saved', () => {
    expect(stake({ invested: 6000 })).toBe(6000)
    expect(stake({ invested: 6000, work: 1000, salvage: 0.25, besides: 300 })).toBe(5550)
    expect(() => stake({ invested: Number.NaN })).toThrow(/invested/)
  })
})

describe('expectedOutlay', () => {
  it('adds cost and the weighted stake', () => {
    expect(expectedOutlay(900, 0.1, 6000)).toBe(1500)
    expect(() => expectedOutlay(900, 1.1, 6000)).toThrow(/chance/)
  })
})
