import { z } from 'zod'
import { FACT_KEYS, fact } from '../../shared/fact-keys.ts'
import { routeId } from '../../shared/route-ids.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { factKey } from './body-parts.ts'
import { getOperation } from './operation.ts'

const factEntry = z.strictObject({
  key: factKey,
  kind: z.string(),
  topic: z.string(),
  label: z.string(),
  short: z.string(),
  help: z.string(),
  measure: z.string(),
  choices: z.record(z.string(), z.string()).optional(),
  /** Units that fit; the first is the one in which `low` and `high` count. */
  units: z.array(z.string()).optional(),
  suffix: z.string().optional(),
  low: z.number().optional(),
  high: z.number().optional(),
})

/** `GET /api/facts`: the dictionary of facts. */
export const factsOperation = getOperation({
  path: '/facts',
  id: 'facts',
  title: 'List the facts',
  text: 'Every fact that an answer can be given to: its key, kind, units, range, label, help and how to measure it.',
  response: z.strictObject({ version: z.string(), facts: z.array(factEntry) }),
  examples: [{ name: 'all', title: 'Every fact' }],
  answer: ({ rulebook }, c) =>
    c.json({ version: rulebook.version, facts: FACT_KEYS.map((key) => fact(key)) }),
})

const oneOf = z.strictObject({ fact: z.string(), in: z.array(z.string()) })
const when = z.union([
  oneOf,
  z.strictObject({ all: z.array(oneOf) }),
  z.strictObject({ any: z.array(oneOf) }),
])
const item = z.strictObject({ id: z.string(), title: z.string(), when: when.optional() })
const routeEntry = z.strictObject({
  id: routeId,
  title: z.string(),
  strength: z.number(),
  /** Facts that the route sets. */
  changes: z.record(z.string(), z.unknown()),
  parts: z.array(item),
  work: z.array(item),
})

/** `GET /api/routes`: what can be done. */
export const routesOperation = getOperation({
  path: '/routes',
  id: 'routes',
  title: 'List the routes',
  text: 'Every way to hold a crankshaft that the guide compares: what it changes in the build, the parts and the work it needs. An item with `when` is needed only for those answers.',
  response: z.strictObject({ version: z.string(), routes: z.array(routeEntry) }),
  examples: [{ name: 'all', title: 'Every route' }],
  answer: ({ rulebook }, c) => c.json({ version: rulebook.version, routes: routeList(rulebook) }),
})

function routeList({ routes, cost, followOn }: Rulebook) {
  const name = (id: string): string =>
    cost.items.find((one) => one.id === id)?.label ?? followOn[id]?.title ?? id
  const items = (entries: (typeof routes)[number]['parts']) =>
    entries.map((entry) =>
      typeof entry === 'string'
        ? { id: entry, title: name(entry) }
        : { id: entry.item, title: name(entry.item), when: entry.when },
    )
  return routes.map(({ id, title, strength, changes, parts, work }) => ({
    id,
    title,
    strength,
    changes,
    parts: items(parts),
    work: items(work),
  }))
}
