import type { Answers } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { engineLoads } from '../../src/facts/engine-loads.ts'
import { jointOf, marginsOf } from '../../src/facts/joint.ts'
import { buildValues } from '../../src/facts/live-facts.ts'
import { newMemory } from '../../src/facts/memory.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import type { Rulebook } from '../../src/rulebook/load.ts'
import { runRules, runRulesNow } from '../../src/rulebook/run.ts'
import { whatIf } from '../../src/what-if/quick-call.ts'
import { kernelSweep } from './kernel.ts'
import { ms, type Timed, table, timed } from './measure.ts'

/** Speeds of a load sweep, rad/s. */
const SPEEDS = [262, 346, 429, 513, 597, 681, 715]

/** The kernel, the mechanics, one run of all rules, an assessment, a turn: each against the floor. */
export async function benchParts(rulebook: Rulebook, answers: Answers): Promise<void> {
  const build = buildFromAnswers(rulebook, answers)
  const memory = newMemory()
  const trials = trialsOf(build, rulebook, memory)
  const facts = new Map([...buildValues(trials.build), ...trials.facts])
  const ask = whatIf(rulebook, memory)
  const sampled = (): void => {
    const own = newMemory()
    const loads = engineLoads(build, rulebook, own)
    marginsOf(jointOf(trials.build, rulebook, own), loads.cases, rulebook)
  }
  const kernel = await timed(300, () => kernelSweep(SPEEDS))
  const engine = await timed(100, () => runRules(rulebook.rules, 'build', facts))
  const rows: [string, Timed][] = [
    ['bare kernel of a load sweep', kernel],
    ['gas cycles, mains, margin points', await timed(150, () => engineLoads(build, rulebook))],
    [`the same and margins in ${rulebook.loadCases.samples} cases`, await timed(150, sampled)],
    ['build rules by json-rules-engine', engine],
    [
      'build rules by our evaluator',
      await timed(200, () => runRulesNow(rulebook.rules, 'build', facts)),
    ],
    ['one what-if, loads known', await timed(200, () => ask(answers))],
    [
      'assessment, what-ifs left out',
      await timed(40, () => assess(rulebook, answers, { withoutWhatIf: true })),
    ],
    [
      'chat turn: call and next question',
      await timed(30, () => assess(rulebook, answers, { withoutTurningPoints: true })),
    ],
    ['assessment with turning points', await timed(15, () => assess(rulebook, answers))],
  ]
  const sum = kernel.cpu + engine.cpu
  table('Parts (one build, one process)', [
    ['', 'CPU ms', 'median ms', '× kernel', '× (kernel + rules)'],
    ...rows.map(([name, { cpu, median }]) => [
      name,
      ms(cpu),
      ms(median),
      (cpu / kernel.cpu).toFixed(1),
      (cpu / sum).toFixed(1),
    ]),
  ])
}
