import { type Answer, type Answers, withAnswer } from '../../shared/answers.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { CostTable } from '../rulebook/schema-cost.ts'
import type { Shop } from './schema.ts'

/**
 * The same rulebook with a shop's prices in its price list and its currency as the
 * usual one. Rules, routes and cautions are the very same objects: a shop prices, it
 * does not decide.
 */
export function pricedRulebook(rulebook: Rulebook, shop: Shop): Rulebook {
  return { ...rulebook, cost: pricedCost(rulebook.cost, shop) }
}

function pricedCost(cost: CostTable, { name, currency, prices }: Shop): CostTable {
  const rate = cost.rates[currency] ?? 1
  const source = { kind: 'published' as const, cite: `Price list of ${name}` }
  return {
    ...cost,
    currency,
    rates: Object.fromEntries(
      Object.entries(cost.rates).map(([code, worth]) => [code, worth / rate]),
    ),
    items: cost.items.map((item) => {
      const own = prices[item.id]
      if (own) return { ...item, price: own, source, listed: true }
      const { low, likely, high } = item.price
      return { ...item, price: { low: low * rate, likely: likely * rate, high: high * rate } }
    }),
  }
}

/** What the guide knows before the first question in a shop's frame; any of it can be changed. */
export function firstAnswers({ tax, does, answers }: Shop): Answers {
  const own: Answers = {
    ...(tax === undefined ? {} : { taxRate: { value: tax, unit: '%' } as Answer }),
    shopLineBores: does.bore ? 'yes' : 'no',
  }
  return (Object.entries({ ...own, ...answers }) as [keyof Answers, Answer][]).reduce(
    (all, [key, answer]) => withAnswer(all, key, answer),
    {} as Answers,
  )
}
