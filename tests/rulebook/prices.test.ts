import { describe, expect, it } from 'vitest'
import { rulebook } from '../support/rulebook.ts'

describe('prices that stand in two tables', () => {
  const priced = rulebook.cost.items.filter(({ fact }) => fact !== undefined)

  it.each(priced.map(({ fact, price, source }) => ({ fact: String(fact), price, source })))(
    'what is assumed for $fact is the price in the list',
    ({ fact, price, source }) => {
      const assumed = rulebook.assumptions[fact]
      expect(assumed?.take).toEqual({ value: price.likely, low: price.low, high: price.high })
      expect(assumed?.source).toEqual(source)
    },
  )
})
