import { readdirSync, readFileSync } from 'node:fs'
import { z } from 'zod'
import { routeId } from '../../../shared/route-ids.ts'
import type { Rule } from '../../../src/rulebook/schema.ts'
import { rulebook, STREET_V8 } from '../../support/rulebook.ts'
import { type Asked, rulesAsked, speaksTo } from '../../support/rules-asked.ts'

const changes = z.record(z.string(), z.union([z.string(), z.number(), z.null()]))

const row = z.strictObject({
  /** What this build says otherwise than the street V8; null takes an answer out. */
  with: changes,
  /** The route that the rule is asked about; of a choice or a follow-on, the one that would be called. */
  route: routeId.optional(),
  /** Where the build must lie for the row to show anything: a computed fact between two ends. */
  where: z.record(z.string(), z.tuple([z.number(), z.number()])).optional(),
})

const ruleCases = z.strictObject({
  rule: z.string(),
  /** Why the trade, or a source, expects it to speak there and to be silent here. */
  because: z.string().min(30),
  source: z.string().min(10),
  /** Answers that all rows share. */
  on: changes.default({}),
  route: routeId.optional(),
  speaks: z.array(row).min(1),
  silent: z.array(row),
})

const folder = new URL('./', import.meta.url)

/** Whole builds on either side of what each rule says. */
export const RULE_CASES = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .flatMap((name) =>
    z.array(ruleCases).parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))),
  )

/** One whole build with what a rule is expected to do. */
export interface Case {
  readonly rule: string
  readonly name: string
  readonly speaks: boolean
  readonly answers: Readonly<Record<string, unknown>>
  readonly route?: z.output<typeof routeId>
  readonly where: Readonly<Record<string, readonly [number, number]>>
}

export const CASES: readonly Case[] = RULE_CASES.flatMap((group) =>
  (['speaks', 'silent'] as const).flatMap((kind) =>
    group[kind].map(({ with: own, route = group.route, where = {} }): Case => {
      const raw = Object.entries({ ...STREET_V8, ...group.on, ...own })
      return {
        rule: group.rule,
        name: `${group.rule} ${kind === 'speaks' ? 'speaks' : 'is silent'}: ${route ?? ''} ${JSON.stringify(own)}`,
        speaks: kind === 'speaks',
        answers: Object.fromEntries(raw.filter(([, value]) => value !== null)),
        where,
        ...(route ? { route } : {}),
      }
    }),
  ),
)

/** The rule of a case. */
export function ruleOf({ rule }: Case): Rule {
  const found = rulebook.rules.find(({ id }) => id === rule)
  if (!found) throw new RangeError(`no rule is called ${rule}`)
  return found
}

/** What a case's build asks its rule, and the route that would be called. */
export async function askedOf(one: Case): Promise<{ asked: Asked[]; wouldBe: string }> {
  const { scope } = ruleOf(one)
  const { asked, wouldBe } = await rulesAsked(one.answers)
  const ofScope = asked.filter((ask) => ask.scope === scope)
  const own = ofScope.filter(({ facts }) => scope !== 'route' || facts.get('route') === one.route)
  return { asked: own, wouldBe }
}

/** Whether the rule, or a changed one in its place, speaks to any of what was asked. */
export function speaks(rule: Rule, asked: readonly Asked[]): boolean {
  return asked.some((ask) => speaksTo(rule, ask))
}
