import type { Answers } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { engineLoads } from '../../src/facts/engine-loads.ts'
import type { Rulebook } from '../../src/rulebook/load.ts'
import { engineOf, repeated, withSamples } from './cases.ts'
import { ms, type Timed, table, timed } from './measure.ts'

const TURN = { withoutTurningPoints: true }

/** How time grows with cylinders, with rules and with sampled cases. */
export async function benchGrowth(rulebook: Rulebook, answers: Answers): Promise<void> {
  // What runs first would pay for compiling what all share.
  for (let run = 0; run < 30; run++) await assess(rulebook, answers, TURN)
  const cylinders: [string, Timed, Timed][] = []
  for (const layout of ['inline-3', 'inline-4', 'inline-6', 'v8-cross-plane', 'v12-60', 'flat-6']) {
    const engine = engineOf(layout)
    const build = buildFromAnswers(rulebook, engine)
    const loads = await timed(60, () => engineLoads(build, rulebook).cases)
    cylinders.push([layout, loads, await timed(10, () => assess(rulebook, engine, TURN))])
  }
  print('Growth with cylinders', 'loads of an engine', cylinders)
  const rules: [string, Timed, Timed][] = []
  for (const times of [1, 2, 4]) {
    const more = repeated(rulebook, times)
    const call = await timed(20, () => assess(more, answers, { withoutWhatIf: true }))
    rules.push([
      `${more.rules.length} rules`,
      call,
      await timed(10, () => assess(more, answers, TURN)),
    ])
  }
  print('Growth with rules', 'without what-ifs', rules)
  const samples: [string, Timed, Timed][] = []
  const build = buildFromAnswers(rulebook, answers)
  for (const count of [64, 256, 1024]) {
    const more = withSamples(rulebook, count)
    const loads = await timed(60, () => engineLoads(build, more).cases)
    samples.push([`${count} cases`, loads, await timed(10, () => assess(more, answers, TURN))])
  }
  print('Growth with sampled cases', 'loads of an engine', samples)
}

function print(title: string, first: string, rows: readonly [string, Timed, Timed][]): void {
  const [least] = rows as [[string, Timed, Timed]]
  table(title, [
    ['', `${first}, CPU ms`, '×', 'chat turn, CPU ms', '×'],
    ...rows.map(([name, one, turn]) => [
      name,
      ms(one.cpu),
      (one.cpu / least[1].cpu).toFixed(2),
      ms(turn.cpu),
      (turn.cpu / least[2].cpu).toFixed(2),
    ]),
  ])
}

/** Heap before and after many turns, MB; the garbage is collected before each look. */
export async function benchMemory(rulebook: Rulebook, answers: Answers): Promise<void> {
  const collect = (globalThis as { gc?: () => void }).gc ?? (() => {})
  const heap = (): string => {
    collect()
    return (process.memoryUsage().heapUsed / 1e6).toFixed(1)
  }
  const rows = [['turns', 'heap, MB']]
  for (const turns of [20, 40, 80]) {
    for (let turn = 0; turn < turns; turn++) await assess(rulebook, answers, TURN)
    rows.push([`${turns} more`, heap()])
  }
  table('Memory after collection', rows)
}
