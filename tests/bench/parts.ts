import { Engine, type TopLevelCondition } from 'json-rules-engine'
import type { Answers } from '../../shared/answers.ts'
import { type AssessOptions, assess } from '../../src/assess.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { engineLoads } from '../../src/facts/engine-loads.ts'
import { jointOf, marginsOf } from '../../src/facts/joint.ts'
import { buildValues } from '../../src/facts/live-facts.ts'
import { newMemory } from '../../src/facts/memory.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import { factsIn } from '../../src/rulebook/conditions.ts'
import type { FactValue } from '../../src/rulebook/evaluate.ts'
import type { Rulebook } from '../../src/rulebook/load.ts'
import { runRules, runRulesNow } from '../../src/rulebook/run.ts'
import { whatIf } from '../../src/what-if/quick-call.ts'
import { exampleOf } from './cases.ts'
import { kernelSweep } from './kernel.ts'
import { ms, type Timed, table, timed } from './measure.ts'

/** Speeds of a load sweep, rad/s. */
const SPEEDS = [262, 346, 429, 513, 597, 681, 715]

/** The kernel, the mechanics, a run of all rules, an assessment, turns: each against the floor. */
export async function benchParts(rulebook: Rulebook, answers: Answers): Promise<void> {
  const build = buildFromAnswers(rulebook, answers)
  const memory = newMemory()
  const trials = trialsOf(build, rulebook, memory)
  const facts = new Map([...buildValues(trials.build), ...trials.facts])
  const all = new Map([...facts, ...trials.trial('steel-caps').facts])
  const ask = whatIf(rulebook, memory)
  const sampled = (): void => {
    const own = newMemory()
    const loads = engineLoads(build, rulebook, own)
    marginsOf(jointOf(trials.build, rulebook, own), loads.cases, rulebook)
  }
  const kernel = await timed(300, () => kernelSweep(SPEEDS))
  const engine = await timed(150, () => plainRun(rulebook, all))
  const rows: [string, Timed][] = [
    ['bare kernel of a load sweep', kernel],
    ['one json-rules-engine run of the rulebook', engine],
    [
      'gas cycles, mains, margin points',
      await timed(150, () => engineLoads(build, rulebook).cases),
    ],
    [`the same and margins in ${rulebook.loadCases.samples} cases`, await timed(150, sampled)],
    [
      'build rules as a call runs them',
      await timed(150, () => runRules(rulebook.rules, 'build', facts)),
    ],
    [
      'build rules by our evaluator',
      await timed(200, () => runRulesNow(rulebook.rules, 'build', facts)),
    ],
    ['one what-if, loads known', await timed(200, () => ask(answers))],
    ...(await assessments(rulebook, answers)),
  ]
  const sum = kernel.cpu + engine.cpu
  table(
    'Parts (one process; aims: assessment without what-ifs at most 3 × (kernel + rules), turn 50 ms)',
    [
      ['', 'CPU ms', 'median ms', '× kernel', '× (kernel + rules)'],
      ...rows.map(([name, { cpu, median }]) => [
        name,
        ms(cpu),
        ms(median),
        (cpu / kernel.cpu).toFixed(1),
        (cpu / sum).toFixed(1),
      ]),
    ],
  )
}

/** The rulebook as json-rules-engine's own guide would have it run: every rule of known facts, once. */
async function plainRun({ rules }: Rulebook, facts: ReadonlyMap<string, FactValue>): Promise<void> {
  const engine = new Engine()
  for (const { id, conditions } of rules) {
    if (!factsIn(conditions).every((name) => facts.has(name))) continue
    engine.addRule({ name: id, conditions: conditions as TopLevelCondition, event: { type: id } })
  }
  await engine.run(Object.fromEntries(facts))
}

/** Whole assessments of the example, of its engine without boost, of nothing and of next to nothing. */
async function assessments(rulebook: Rulebook, answers: Answers): Promise<[string, Timed][]> {
  const sparse: Answers = { layout: 'v8-cross-plane', induction: 'turbocharged' }
  const bare = { withoutWhatIf: true }
  // As /api/turn and the guide's page ask.
  const turn = { withoutTurningPoints: true, talking: true }
  const street = exampleOf(rulebook, 'mild-street')
  const of = (runs: number, case_: Answers, options: AssessOptions): Promise<Timed> =>
    timed(runs, () => assess(rulebook, case_, options))
  return [
    ['assessment, what-ifs left out', await of(200, answers, bare)],
    ['the same, mild street engine', await of(200, street, bare)],
    ['chat turn: call and next question', await of(30, answers, turn)],
    ['chat turn, mild street engine', await of(30, street, turn)],
    ['chat turn, nothing said', await of(20, {}, turn)],
    ['chat turn, two answers', await of(20, sparse, turn)],
    ['assessment with turning points', await of(15, answers, {})],
  ]
}
