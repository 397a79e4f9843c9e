import { describe, expect, it } from 'vitest'
import { breakEvenChance, costLoss } from '../../src/mechanics/stake.ts'

describe('cost–loss rule', () => {
  // Source: the cost–loss ratio situation, Murphy, Monthly Weather Review 113 (1985): protect when
  // the chance exceeds cost over loss. Figures worked from that rule; exact.
  it('breaks even at 900 / 6000 = 0.15', () => {
    expect(breakEvenChance(900, 6000)).toBeCloseTo(0.15, 14)
  })

  it('does not protect at a chance of 0.10: an expected loss of 600 against 900', () => {
    const { leave, protect, saving } = costLoss({ extraCost: 900, atStake: 6000, chance: 0.1 })
    expect(leave).toBeCloseTo(600, 10)
    expect(protect).toBeCloseTo(900, 10)
    expect(saving).toBeCloseTo(-300, 10)
  })
})
