import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { ROUTE_IDS, routeId } from '../../shared/route-ids.ts'
import { assess } from '../../src/assess.ts'
import { rulebook, said } from '../support/rulebook.ts'

/** A whole build with what a careful builder would expect of the call. */
const scenario = z.strictObject({
  name: z.string().min(10),
  /** Why this is what to expect; "common practice, no published source" where it is that. */
  because: z.string().min(10),
  answers: z.record(z.string(), z.unknown()),
  route: z.union([routeId, z.array(routeId).min(2), z.null()]),
  mustDo: z.array(z.string()).default([]),
  mustNotDo: z.array(z.string()).default([]),
  /** Rules among the reasons, cautions and contradictions. */
  rules: z.array(z.string()).default([]),
  rulesNot: z.array(z.string()).default([]),
  impossible: z.array(routeId).default([]),
})

const folder = new URL('./', import.meta.url)
const scenarios = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .flatMap((name) => {
    const text = readFileSync(new URL(name, folder), 'utf8')
    return z.array(scenario).parse(JSON.parse(text))
  })

describe.each(['us', 'metric'] as const)('scenarios, %s', (system) => {
  it.each(scenarios.map((one) => [one.name, one] as const))('%s', async (_, expected) => {
    const found = await assess(rulebook, said(expected.answers), { system, withoutWhatIf: true })
    const { call, routes, cautions, contradictions } = found
    const routesWanted = [expected.route].flat()
    expect(routesWanted).toContain(call.route)
    for (const id of expected.mustDo) expect(call.mustDo).toContain(id)
    for (const id of expected.mustNotDo) expect(call.mustDo).not.toContain(id)
    const ofRoutes = routes.flatMap((route) => [...route.for, ...route.against])
    const rules = [...call.reasons, ...cautions, ...contradictions, ...ofRoutes].map(
      ({ rule }) => rule,
    )
    for (const id of expected.rules) expect(rules).toContain(id)
    for (const id of expected.rulesNot) expect(rules).not.toContain(id)
    for (const id of expected.impossible) {
      const route = routes.find((one) => one.id === id)
      expect(route?.possible, id).toBe(false)
      expect(route?.whyNot?.length, id).toBeGreaterThan(20)
    }
  })

  it.each(scenarios.map((one) => [one.name, one] as const))(
    '%s: every route has its reasons, every sentence its figures',
    async (_, { answers }) => {
      const found = await assess(rulebook, said(answers), { system, withoutWhatIf: true })
      const findings = [
        ...found.call.reasons,
        ...found.cautions,
        ...found.contradictions,
        ...found.routes.flatMap((route) => [...route.for, ...route.against]),
      ]
      for (const { rule, text, source } of findings) {
        expect(text, rule).not.toMatch(/\{\{|undefined|NaN|Infinity/)
        expect(text, rule).toMatch(/[.!?]$/)
        if (source.kind === 'published') expect(source.cite.length, rule).toBeGreaterThan(5)
      }
      for (const route of found.routes) {
        expect(route.for.length + route.against.length, route.id).toBeGreaterThan(0)
        if (found.call.route === null || route.id === found.call.route) continue
        const why = found.call.insteadOf.find((one) => one.route === route.id)?.why ?? ''
        expect(why.length, route.id).toBeGreaterThan(20)
      }
      if (found.call.route !== null) {
        expect(found.call.reasons.length).toBeGreaterThan(0)
        expect(found.call.insteadOf).toHaveLength(ROUTE_IDS.length - 1)
      }
      expect(found.call.sentence).not.toMatch(/\{\{|undefined|NaN/)
    },
  )
})
