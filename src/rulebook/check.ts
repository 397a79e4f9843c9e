import { neverTrue } from './check-never-true.ts'
import { factsIn } from './conditions.ts'
import type { Rulebook } from './load.ts'
import { placesIn } from './places.ts'
import type { Condition, Rule } from './schema.ts'

/**
 * What can be found wrong in a rulebook that loads, without trying it on builds.
 * Faults must be mended; notes are things that nothing uses.
 */
export interface Checked {
  readonly faults: readonly string[]
  readonly notes: readonly string[]
}

/** Check a loaded rulebook: see {@link Checked}. */
export function checkRulebook(rulebook: Rulebook): Checked {
  return {
    faults: [
      ...rulebook.rules.flatMap((rule) => impossibleConditions(rulebook, rule)),
      ...sameConditions(rulebook),
      ...stepFaults(rulebook),
    ],
    notes: [...unusedFollowOn(rulebook), ...unusedCosts(rulebook), ...unusedFacts(rulebook)],
  }
}

function placeOf({ fileOf }: Rulebook, { id }: Rule): string {
  return `${fileOf.get(id)}: ${id}`
}

function impossibleConditions(rulebook: Rulebook, rule: Rule): string[] {
  return neverTrue(rule.conditions).map(
    (name) => `${placeOf(rulebook, rule)}: conditions: what is asked of ${name} is never true`,
  )
}

/** Outcomes that take each other back when they rest on the same conditions. */
const OPPOSED = [
  ['for', 'does-not-hold'],
  ['for', 'impossible'],
  ['step-up', 'cannot-afford'],
] as const

/** Two rules of one scope on the very same conditions: said twice, or against each other. */
function sameConditions(rulebook: Rulebook): string[] {
  const seen = new Map<string, Rule>()
  return rulebook.rules.flatMap((rule) => {
    const key = `${rule.scope} ${canonical(rule.conditions)}`
    const other = seen.get(key)
    if (!other) seen.set(key, rule)
    if (!other) return []
    const effects = [other.outcome.effect, rule.outcome.effect]
    const opposed = OPPOSED.some((pair) => pair.every((effect) => effects.includes(effect)))
    if (opposed) {
      return [`${placeOf(rulebook, rule)}: contradicts ${other.id}, which has the same conditions`]
    }
    const same = JSON.stringify(other.outcome) === JSON.stringify(rule.outcome)
    return same ? [`${placeOf(rulebook, rule)}: says again what ${other.id} says`] : []
  })
}

/** The same text for conditions that differ only in the order of their parts. */
function canonical(condition: Condition): string {
  if ('all' in condition) return `all(${condition.all.map(canonical).sort().join()})`
  if ('any' in condition) return `any(${condition.any.map(canonical).sort().join()})`
  if ('not' in condition) return `not(${canonical(condition.not)})`
  return JSON.stringify([condition.fact, condition.operator, condition.value])
}

/** Two steps at one place leave the order of work to chance. */
function stepFaults({ followOn }: Rulebook): string[] {
  const at = new Map<number, string>()
  return Object.entries(followOn).flatMap(([id, { step }]) => {
    if (step === undefined) return []
    const other = at.get(step)
    at.set(step, id)
    return other ? [`follow-on.json: ${id}: step: ${step} is the step of ${other} too`] : []
  })
}

function unusedFollowOn({ followOn, rules, routes }: Rulebook): string[] {
  const used = new Set([
    ...rules.flatMap(({ outcome }) => (outcome.effect === 'must-do' ? [outcome.id] : [])),
    ...routes.flatMap(itemIds),
  ])
  return Object.entries(followOn)
    .filter(([id, { always }]) => !always && !used.has(id))
    .map(([id]) => `follow-on.json: ${id}: no rule and no route leads to it`)
}

function unusedCosts({ cost, routes }: Rulebook): string[] {
  const used = new Set(routes.flatMap(itemIds))
  return cost.items
    .filter(({ id }) => !used.has(id))
    .map(({ id }) => `cost.json: ${id}: no route needs it`)
}

function itemIds({ parts, work }: Rulebook['routes'][number]): string[] {
  return [...parts, ...work].map((entry) => (typeof entry === 'string' ? entry : entry.item))
}

function unusedFacts({ computedFacts, rules, routes }: Rulebook): string[] {
  const read = new Set([
    ...rules.flatMap((rule) => [
      ...factsIn(rule.conditions),
      ...placesIn([rule.because, rule.instead, rule.except].join(' ')),
    ]),
    ...routes.flatMap((route) => placesIn(route.call)),
  ])
  return Object.keys(computedFacts)
    .filter((name) => !read.has(name))
    .map((name) => `computed-facts.json: ${name}: no rule reads it`)
}
