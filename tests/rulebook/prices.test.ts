import { describe, expect, it } from 'vitest'
import { rulebook } from '../support/rulebook.ts'

describe('prices that stand in two tables', () => {
  const priced = rulebook.cost.items.filter(({ fact }) => fact !== undefined)

  it.each(priced.map(({ fact, price, source }) => ({ fact: String(fact), price, source })))(
    'what is assumed for $fact is the price in the list',
    ({ fact, price, source }) => {
      const assumed = rulebook.assumptions[fact]
      const { take } = assumed ?? {}
      // Where the price hangs on another fact, each item of the list stands for one of its cases.
      const taken = take && 'by' in take ? [...Object.values(take.cases), take.otherwise] : [take]
      expect(taken).toContainEqual({ value: price.likely, low: price.low, high: price.high })
      for (const one of taken) {
        const prices = priced.filter((item) => item.fact === fact).map((item) => item.price)
        expect(prices.map(({ likely: value, low, high }) => ({ value, low, high }))).toContainEqual(
          one,
        )
      }
      expect(assumed?.source).toEqual(source)
    },
  )
})
