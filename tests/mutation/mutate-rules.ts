/**
 * `npm run mutate:rules [-- rule-id …]`: makes every slip in every rule, one at a time, and counts
 * those that the rules' edges or the scenarios notice. Ends with 1 below eight in ten.
 */
import { readFileSync } from 'node:fs'
import { assess } from '../../src/assess.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { decide } from '../../src/call/decide.ts'
import { followOnRules, followOnTable } from '../../src/call/follow-on.ts'
import type { DecideInput } from '../../src/call/look.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import { factsIn } from '../../src/rulebook/conditions.ts'
import { isTrue, type Readable } from '../../src/rulebook/evaluate.ts'
import { runRulesNow } from '../../src/rulebook/run.ts'
import type { Rule, Scope } from '../../src/rulebook/schema.ts'
import { rowsOf } from '../rulebook/edges.ts'
import { rulebook, said } from '../support/rulebook.ts'
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

const seen = await Promise.all(scenarios.map(factsSeen))
let [total, killed, byEdges, byScenarios] = [0, 0, 0, 0]
for (const rule of rules) {
  for (const mutant of mutantsOf(rule)) {
    const [edges, builds] = [edgesNotice(mutant), await scenariosNotice(rule, mutant)]
    total++
    if (edges) byEdges++
    if (builds) byScenarios++
    if (edges || builds) killed++
    else console.log(`survived: ${rule.id}: ${mutant.slip}`)
  }
}
const share = (count: number) => `${((100 * count) / total).toFixed(1)} %`
console.log(
  `${killed} of ${total} slips noticed (${share(killed)}): ${share(byEdges)} by the edges, ${share(byScenarios)} by the calls of ${scenarios.length} builds`,
)
process.exit(killed / total < ENOUGH ? 1 : 0)

function edgesNotice({ rule }: Mutant): boolean {
  return rowsOf(rule.id).some(({ facts, speaks }) => isTrue(rule.conditions, facts) !== speaks)
}

async function scenariosNotice(rule: Rule, { rule: slipped }: Mutant): Promise<boolean> {
  const changed = rulebook.rules.map((one): Rule => (one.id === rule.id ? slipped : one))
  const names = factsIn(rule.conditions)
  for (const [n, scenario] of scenarios.entries()) {
    const differs = (seen[n] ?? []).some(
      ({ scope, facts }) =>
        scope === rule.scope &&
        names.every((name) => facts.has(name)) &&
        isTrue(rule.conditions, facts) !== isTrue(slipped.conditions, facts),
    )
    if (differs && !(await holds(scenario, { ...rulebook, rules: changed }))) return true
  }
  return false
}

/** What the rules of each scope were asked about for a build, as the rulebook is. */
async function factsSeen({ answers }: Scenario): Promise<{ scope: Scope; facts: Readable }[]> {
  const asked: { scope: Scope; facts: Readable }[] = []
  const given = said(answers)
  const input: DecideInput = {
    answers: given,
    trials: trialsOf(buildFromAnswers(rulebook, given), rulebook),
    rulebook,
    run: (rules, scope, facts) => {
      asked.push({ scope, facts })
      return runRulesNow(rules, scope, facts)
    },
    system: 'us',
    everyRoute: true,
  }
  await followOnRules(input, followOnTable(input, await decide(input)))
  return asked
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
