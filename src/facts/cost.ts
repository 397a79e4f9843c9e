import type { CostItem, RouteCost, Source } from '../../shared/assessment.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { type Build, figureOf } from '../build/build.ts'
import { jobCost } from '../mechanics/job-cost.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { ItemWhen, Route, RouteItem } from '../rulebook/schema.ts'

/** Ids of a route's parts or work that apply to a build as it stands. */
export function itemsOf(items: readonly RouteItem[], build: Build): string[] {
  const ids: string[] = []
  for (const entry of items) {
    const id = typeof entry === 'string' ? entry : entry.item
    // Two reasons for the same work make it no dearer.
    if (ids.includes(id)) continue
    if (typeof entry === 'string' || applies(entry.when, build)) ids.push(id)
  }
  return ids
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
  const items = itemsPriced(route, build, rulebook).map((item) => priced(item, build, rulebook))
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
  const net = itemsPriced(route, build, rulebook).reduce(
    (sum, item) => sum + (ownPrice(item, build)?.value ?? likelyListed(item, build, rulebook)),
    0,
  )
  return net * (1 + figureOf(build, 'taxRate') / 100)
}

type ListedItem = Rulebook['cost']['items'][number]

/** What of a route's parts and work has a price. */
function itemsPriced(route: Route, build: Build, { cost }: Rulebook): ListedItem[] {
  const ids = [...itemsOf(route.parts, build), ...itemsOf(route.work, build)]
  return ids.flatMap((id) => cost.items.find((item) => item.id === id) ?? [])
}

/** The price that the person gave. */
function ownPrice({ fact }: ListedItem, build: Build) {
  const own = fact ? build.facts[fact as FactKey] : undefined
  return own?.state === 'said' && typeof own.value === 'number'
    ? { ...own, value: own.value }
    : undefined
}

function likelyListed({ price }: ListedItem, build: Build, { cost }: Rulebook): number {
  return price.likely * (cost.rates[build.currency] ?? 1)
}

function priced(item: ListedItem, build: Build, rulebook: Rulebook): CostItem {
  const { id, label, kind, price, listed = false } = item
  const own = ownPrice(item, build)
  if (own) {
    const { value, low = value, high = value } = own
    const source = { kind: 'said' as const, cite: '' }
    return { id, label, kind, low, likely: value, high, state: 'said', source }
  }
  const { rates, ratesSource, currency } = rulebook.cost
  const rate = rates[build.currency] ?? 1
  const isConverted = listed && currency !== build.currency
  return {
    id,
    label,
    kind,
    low: price.low * rate,
    likely: likelyListed(item, build, rulebook),
    high: price.high * rate,
    state: listed ? 'listed' : 'assumed',
    source: sourceOf(item.source),
    ...(isConverted ? { converted: { from: currency, rate, source: sourceOf(ratesSource) } } : {}),
  }
}

function sourceOf({ kind, cite = '' }: ListedItem['source']): Source {
  return { kind, cite }
}
