import { type FactKey, fact, isQuantity } from '../../shared/fact-keys.ts'
import type { Route } from '../rulebook/schema.ts'
import type { Build, BuildFact } from './build.ts'
import { formulas } from './formulas.ts'
import type { Lookup } from './from-answers.ts'

/**
 * The build as it would be after a route: only what the route changes differs.
 *
 * Changes stand in the order of the route, so that a formula sees those before it.
 * Fasteners are left alone where studs are fitted already.
 *
 * @param build - as it stands
 * @param route - from rules/routes.json
 */
export function withRoute(build: Build, route: Pick<Route, 'changes'>): Build {
  const studded = build.facts.fastenerKind.value === 'stud'
  const facts: Record<string, BuildFact> = { ...build.facts }
  for (const [name, change] of Object.entries(route.changes)) {
    const key = name as FactKey
    if (studded && (key.startsWith('fastener') || key === 'tightening')) continue
    if (typeof change === 'object' && 'unless' in change && change.unless) {
      const { fact: decider, in: excepted } = change.unless
      if (excepted.includes(String(build.facts[decider as FactKey].value))) continue
    }
    facts[key] = changed(facts[key] as BuildFact, change, (other) => facts[other] as BuildFact)
  }
  return { ...build, facts: facts as Build['facts'] }
}

function changed(before: BuildFact, change: Route['changes'][string], lookup: Lookup): BuildFact {
  const { key } = before
  if (typeof change === 'string') return { key, state: 'derived', value: change }
  if ('to' in change) return { key, state: 'derived', value: change.to }
  if ('formula' in change) {
    const value = within(key, formulas[change.formula](lookup, change.at))
    return { key, state: 'derived', value }
  }
  const scale = (value: number | undefined): number | undefined =>
    value === undefined ? undefined : within(before.key, applied(value, change))
  const { value, low, high } = before
  const [newLow, newHigh] = [scale(low), scale(high)]
  return {
    ...before,
    value: typeof value === 'number' ? (scale(value) as number) : value,
    ...(newLow === undefined ? {} : { low: newLow }),
    ...(newHigh === undefined ? {} : { high: newHigh }),
  }
}

function applied(
  value: number,
  change: { readonly times: number } | { readonly atLeast: number },
): number {
  return 'times' in change ? value * change.times : Math.max(value, change.atLeast)
}

function within(key: FactKey, value: number): number {
  const entry = fact(key)
  return isQuantity(entry) ? Math.min(entry.high, Math.max(entry.low, value)) : value
}
