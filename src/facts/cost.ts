import type { CostItem, RouteCost } from '../../shared/assessment.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { type Build, figureOf } from '../build/build.ts'
import { jobCost } from '../mechanics/job-cost.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { ItemWhen, Route, RouteItem } from '../rulebook/schema.ts'

/** Ids of a route's parts or work that apply to a build as it stands. */
export function itemsOf(items: readonly RouteItem[], build: Build): string[] {
  const ids = items.flatMap((entry) => {
    if (typeof entry === 'string') return [entry]
    return applies(entry.when, build) ? [entry.item] : []
  })
  // Two reasons for the same work make it no dearer.
  return [...new Set(ids)]
}

function applies(when: ItemWhen, build: Build): boolean {
  if ('all' in when) return when.all.every((part) => applies(part, build))
  if ('any' in when) return when.any.some((part) => applies(part, build))
  return when.in.includes(String(build.facts[when.fact as FactKey].value))
}

/**
 * What a route costs, tax included where a rate is known.
 *
 * Low and high are the tenth and ninetieth case in a hundred of the sum, each
 * item on its own; likely is the sum of the likely prices.
 */
export function routeCost(route: Route, build: Build, rulebook: Rulebook): RouteCost {
  const items = pricedItems(route, build, rulebook)
  const taxRate = figureOf(build, 'taxRate') / 100
  if (items.length === 0) return { low: 0, likely: 0, high: 0, currency: build.currency, items }
  const { gross } = jobCost({ items, taxRate })
  return {
    low: Math.min(gross.p10, gross.likely),
    likely: gross.likely,
    high: Math.max(gross.p90, gross.likely),
    currency: build.currency,
    items,
  }
}

/** The sum of a route's likely prices, tax included where a rate is known. */
export function likelyRouteCost(route: Route, build: Build, rulebook: Rulebook): number {
  const net = pricedItems(route, build, rulebook).reduce((sum, { likely }) => sum + likely, 0)
  return net * (1 + figureOf(build, 'taxRate') / 100)
}

function pricedItems(route: Route, build: Build, rulebook: Rulebook): CostItem[] {
  const ids = [...itemsOf(route.parts, build), ...itemsOf(route.work, build)]
  return ids.flatMap((id) => {
    const found = rulebook.cost.items.find((item) => item.id === id)
    return found ? [priced(found, build, rulebook)] : []
  })
}

function priced(
  item: Rulebook['cost']['items'][number],
  build: Build,
  { cost }: Rulebook,
): CostItem {
  const { id, label, kind, price } = item
  const own = item.fact ? build.facts[item.fact as FactKey] : undefined
  if (own?.state === 'said' && typeof own.value === 'number') {
    const { value, low = value, high = value } = own
    const source = { kind: 'said' as const, cite: '' }
    return { id, label, kind, low, likely: value, high, state: 'said', source }
  }
  const rate = cost.rates[build.currency] ?? 1
  return {
    id,
    label,
    kind,
    low: price.low * rate,
    likely: price.likely * rate,
    high: price.high * rate,
    state: 'assumed',
    source: { kind: item.source.kind, cite: item.source.cite ?? '' },
  }
}
