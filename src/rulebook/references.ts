import { choicesOf, readAnswers } from '../../shared/answers.ts'
import { fact, isFactKey } from '../../shared/fact-keys.ts'
import { assumedFaults } from './assumed-figures.ts'
import { leaves } from './conditions.ts'
import type { Rulebook } from './load.ts'
import { placesIn } from './places.ts'
import type { Leaf, Route, Rule, Scope } from './schema.ts'
import { SCATTER_IDS } from './schema-tables.ts'

/** Scopes whose facts a scope also sees. */
const SEES: Readonly<Record<Scope, readonly Scope[]>> = {
  build: ['build'],
  route: ['build', 'route'],
  choice: ['build', 'route', 'choice'],
  'follow-on': ['build', 'route', 'choice', 'follow-on'],
}

/** Whether a rule of a scope may use a fact: a fact key, `<key>Said`, or a computed fact it can see. */
function knowsFact(rulebook: Rulebook, scope: Scope, name: string): boolean {
  if (isFactKey(name)) return true
  if (name.endsWith('Said') && isFactKey(name.slice(0, -4))) return true
  const computed = Object.hasOwn(rulebook.computedFacts, name)
    ? rulebook.computedFacts[name]
    : undefined
  return computed !== undefined && SEES[scope].includes(computed.scope)
}

/**
 * Names that point nowhere: unknown facts, choices, cost items, follow-on ids,
 * places in sentences. Each fault names file, entry and field.
 */
export function checkReferences(rulebook: Rulebook, factKeys: readonly string[]): string[] {
  return [
    ...rulebook.rules.flatMap((rule) => ruleFaults(rulebook, rule)),
    ...routeFaults(rulebook),
    ...scatterFaults(rulebook),
    ...tableFaults(rulebook, factKeys),
    ...assumedFaults(rulebook),
    ...presetFaults(rulebook),
  ]
}

function ruleFaults(rulebook: Rulebook, rule: Rule): string[] {
  const place = `${rulebook.fileOf.get(rule.id)}: ${rule.id}`
  const faults: string[] = []
  for (const leaf of leaves(rule.conditions)) {
    const named = typeof leaf.value === 'object' && 'fact' in leaf.value ? [leaf.value.fact] : []
    for (const name of [leaf.fact, ...named]) {
      if (!knowsFact(rulebook, rule.scope, name)) {
        faults.push(`${place}: conditions: no fact is called "${name}" in scope ${rule.scope}`)
      }
    }
    faults.push(...choiceFaults(place, leaf))
  }
  for (const field of ['because', 'instead', 'except'] as const) {
    for (const name of placesIn(rule[field] ?? '')) {
      if (!knowsFact(rulebook, rule.scope, name)) {
        faults.push(`${place}: ${field}: no fact is called "${name}" in scope ${rule.scope}`)
      }
    }
  }
  const { outcome } = rule
  if (outcome.effect === 'must-do' && !Object.hasOwn(rulebook.followOn, outcome.id)) {
    faults.push(`${place}: outcome.id: "${outcome.id}" is not in follow-on.json`)
  }
  if (outcome.effect === 'contradiction') {
    for (const name of [
      ...outcome.between,
      ...(outcome.likelierSlip ? [outcome.likelierSlip] : []),
    ]) {
      if (!isFactKey(name)) faults.push(`${place}: outcome.between: no fact key "${name}"`)
    }
  }
  return faults
}

function choiceFaults(place: string, { fact: name, operator, value }: Leaf): string[] {
  if (!isFactKey(name)) return []
  const entry = fact(name)
  if (entry.kind !== 'choice') {
    const numeric =
      entry.kind === 'thread' || typeof value === 'number' || typeof value === 'object'
    return numeric ? [] : [`${place}: conditions: "${name}" is a figure, "${value}" is none`]
  }
  const choices = choicesOf(entry)
  const given = Array.isArray(value) ? value : [value]
  const wrong = given.filter(
    (one) => typeof one !== 'object' && !Object.hasOwn(choices, String(one)),
  )
  const order = operator.startsWith('less') || operator.startsWith('greater')
  return [
    ...wrong.map((one) => `${place}: conditions: "${one}" is no choice of ${name}`),
    ...(order ? [`${place}: conditions: ${operator} cannot compare the choices of ${name}`] : []),
  ]
}

function scatterFaults({ scatter }: Rulebook): string[] {
  const ids = scatter.map(({ id }) => id)
  return [
    ...SCATTER_IDS.filter((id) => !ids.includes(id)).map((id) => `scatter.json: no entry "${id}"`),
    ...scatter.flatMap(({ id, take }) => {
      if (!('by' in take)) return []
      if (!isFactKey(take.by) || fact(take.by).kind !== 'choice')
        return [`scatter.json: ${id}: take.by: "${take.by}" is no fact with choices`]
      return Object.keys(choicesOf(fact(take.by)))
        .filter((choice) => !Object.hasOwn(take.cases, choice))
        .map((choice) => `scatter.json: ${id}: take.cases: "${choice}" is missing`)
    }),
  ]
}

/** Facts by which a route's changes and work are made to depend, and their choices. */
function dependsFaults(route: Route): string[] {
  const named = [
    ...Object.entries(route.changes).flatMap(([key, change]) =>
      typeof change === 'object' && 'unless' in change && change.unless
        ? [{ place: `changes.${key}.unless`, ...change.unless }]
        : [],
    ),
    ...[...route.parts, ...route.work].flatMap((entry) => {
      if (typeof entry === 'string') return []
      const { when } = entry
      const each = 'all' in when ? when.all : 'any' in when ? when.any : [when]
      return each.map((one) => ({ place: `${entry.item}: when`, ...one }))
    }),
  ]
  return named.flatMap(({ place, fact: key, in: values }) => {
    if (!isFactKey(key)) return [`routes.json: ${route.id}: ${place}: no fact key "${key}"`]
    const choices = choicesOf(fact(key))
    return values
      .filter((value) => !Object.hasOwn(choices, value))
      .map((value) => `routes.json: ${route.id}: ${place}: "${value}" is no choice of ${key}`)
  })
}

function routeFaults({ routes, cost, followOn }: Rulebook): string[] {
  const items = new Set(cost.items.map(({ id }) => id))
  return routes.flatMap((route) => [
    ...dependsFaults(route),
    ...Object.keys(route.changes)
      .filter((key) => !isFactKey(key))
      .map((key) => `routes.json: ${route.id}: changes: no fact key "${key}"`),
    ...[...route.parts, ...route.work]
      .map((entry) => (typeof entry === 'string' ? entry : entry.item))
      .filter((item) => !items.has(item) && !Object.hasOwn(followOn, item))
      .map(
        (item) => `routes.json: ${route.id}: "${item}" is neither in cost.json nor follow-on.json`,
      ),
  ])
}

function tableFaults(rulebook: Rulebook, factKeys: readonly string[]): string[] {
  const asked = new Set(rulebook.questions.map((question) => question.fact))
  const strangers = (file: string, names: readonly string[]): string[] =>
    names.filter((name) => !isFactKey(name)).map((name) => `${file}: no fact key "${name}"`)
  return [
    ...strangers('assumptions.json', Object.keys(rulebook.assumptions)),
    ...strangers('relevance.json', Object.keys(rulebook.relevance)),
    ...strangers('questions.json', [...asked]),
    ...factKeys
      .filter((key) => !asked.has(key))
      .map((key) => `questions.json: no question asks for ${key}`),
    ...rulebook.cost.items
      .filter((item) => item.fact !== undefined && !isFactKey(item.fact))
      .map((item) => `cost.json: ${item.id}: no fact key "${item.fact}"`),
  ]
}

function presetFaults({ presets }: Rulebook): string[] {
  return presets.flatMap((preset) =>
    readAnswers(preset.answers).problems.map(
      (problem) => `presets.json: ${preset.id}: ${problem.field}: ${problem.fits}`,
    ),
  )
}
