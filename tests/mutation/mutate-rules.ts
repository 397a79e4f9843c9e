/**
 * `npm run mutate:rules [-- rule-id …]`: makes every slip in every rule, one at a time, and counts
 * those that a whole build notices: a row of tests/practice/rules/ or the call of a scenario.
 * Ends with 1 below eight in ten.
 */
import { readFileSync } from 'node:fs'
import { assess } from '../../src/assess.ts'
import type { Rule } from '../../src/rulebook/schema.ts'
import { askedOf, CASES, speaks } from '../practice/rules/cases.ts'
import { rulebook, said } from '../support/rulebook.ts'
import { type Asked, rulesAsked, speaksTo } from '../support/rules-asked.ts'
import { type Mutant, mutantsOf } from './rule-mutants.ts'

const ENOUGH = 0.8

interface Scenario {
  readonly name: string
  readonly answers: Readonly<Record<string, unknown>>
  readonly route: string | null | readonly (string | null)[]
  readonly mustDo?: readonly string[]
  readonly mustNotDo?: readonly string[]
  readonly rules?: readonly string[]
  readonly rulesNot?: readonly string[]
}

const file = new URL('../scenarios/builds.json', import.meta.url)
const scenarios = JSON.parse(readFileSync(file, 'utf8')) as readonly Scenario[]
const wanted = process.argv.slice(2)
const rules = rulebook.rules.filter(({ id }) => wanted.length === 0 || wanted.includes(id))

const rows = await Promise.all(
  CASES.map(async (one) => ({ ...one, asked: (await askedOf(one)).asked })),
)
const seen = await Promise.all(
  scenarios.map(async (one) => ({ ...one, asked: (await rulesAsked(one.answers)).asked })),
)
let [total, killed, byRows, byScenarios] = [0, 0, 0, 0]
for (const rule of rules) {
  for (const mutant of mutantsOf(rule)) {
    const [row, call] = [rowsNotice(mutant), await scenariosNotice(rule, mutant)]
    total++
    if (row) byRows++
    if (call) byScenarios++
    if (row || call) killed++
    else console.log(`survived: ${rule.id}: ${mutant.slip}`)
  }
}
const share = (count: number) => `${((100 * count) / total).toFixed(1)} %`
console.log(
  `${killed} of ${total} slips noticed (${share(killed)}): ${share(byRows)} by ${rows.length} builds on either side of a rule, ${share(byScenarios)} by the calls of ${scenarios.length} scenarios`,
)
process.exit(killed / total < ENOUGH ? 1 : 0)

function rowsNotice({ rule }: Mutant): boolean {
  return rows.some((row) => row.rule === rule.id && speaks(rule, row.asked) !== row.speaks)
}

async function scenariosNotice(rule: Rule, { rule: slipped }: Mutant): Promise<boolean> {
  const changed = rulebook.rules.map((one): Rule => (one.id === rule.id ? slipped : one))
  const differs = (ask: Asked) => speaksTo(rule, ask) !== speaksTo(slipped, ask)
  for (const scenario of seen) {
    if (!scenario.asked.some(differs)) continue
    if (!(await holds(scenario, { ...rulebook, rules: changed }))) return true
  }
  return false
}

/** Whether the call is what the scenario expects; a rulebook that cannot be run is noticed too. */
async function holds(scenario: Scenario, changed: typeof rulebook): Promise<boolean> {
  const { mustDo = [], mustNotDo = [], rules: spoken = [], rulesNot = [] } = scenario
  try {
    const found = await assess(changed, said(scenario.answers), { withoutWhatIf: true })
    const { call, routes, cautions, contradictions } = found
    const ofRoutes = routes.flatMap((route) => [...route.for, ...route.against])
    const fired = [...call.reasons, ...cautions, ...contradictions, ...ofRoutes].map(
      ({ rule }) => rule,
    )
    const done: readonly string[] = call.mustDo
    return (
      [scenario.route].flat().includes(call.route) &&
      mustDo.every((id) => done.includes(id)) &&
      !mustNotDo.some((id) => done.includes(id)) &&
      spoken.every((id) => fired.includes(id)) &&
      !rulesNot.some((id) => fired.includes(id))
    )
  } catch {
    return false
  }
}
