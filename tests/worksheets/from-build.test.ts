import { describe, expect, it } from 'vitest'
import { type Answers, readAnswers } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import { jointTaken } from '../../src/site/worksheets.ts'
import { runWorksheet } from '../../src/worksheets/input.ts'
import { worksheetNamed } from '../../src/worksheets/registry.ts'
import { rulebook } from '../support/app.ts'

const { answers } = readAnswers({
  layout: 'v8-cross-plane',
  bore: '4.03 in',
  stroke: '3.48 in',
  compressionRatio: 9.5,
  induction: 'turbocharged',
  boost: '14 psi',
  peakRpm: '6500 rpm',
})

/** A worksheet's figures in metric units when it is filled in from the case. */
async function filled(name: string, said: Answers = answers): Promise<(id: string) => number> {
  const sheet = worksheetNamed(name)
  if (!sheet) throw new Error(`no worksheet ${name}`)
  const assessment = await assess(rulebook, said, { withoutWhatIf: true })
  const { loads } = trialsOf(buildFromAnswers(rulebook, said), rulebook)
  const joint = jointTaken(rulebook)
  const outcome = runWorksheet(sheet, sheet.fromBuild({ assessment, loads, joint }), 'metric')
  if (!('ok' in outcome)) throw new Error(JSON.stringify(outcome.problems))
  return (id) => outcome.ok.results.find((result) => result.id === id)?.value ?? Number.NaN
}

describe('a worksheet filled in from a case', () => {
  // The inputs are carried over to six figures, so what the guide worked out comes back.
  it('repeats the guide’s cycle at its highest pressure', async () => {
    const value = await filled('gas-cycle')
    const { loads } = trialsOf(buildFromAnswers(rulebook, answers), rulebook)
    const peaks = loads.fullLoads.map(({ cycle }) => cycle.peakPressure)
    expect(Math.abs(value('peakPressure') / (Math.max(...peaks) / 1e5) - 1)).toBeLessThan(1e-3)
  })

  it('repeats the guide’s loads at that speed', async () => {
    const value = await filled('main-loads')
    const { loads } = trialsOf(buildFromAnswers(rulebook, answers), rulebook)
    const worst = loads.sweep.worstPull.force / 1000
    expect(value('worstPull')).toBeLessThanOrEqual(worst * 1.001)
    expect(value('worstPull')).toBeGreaterThan(0.8 * worst)
  })

  it('clamps as the guide clamps', async () => {
    const assessment = await assess(rulebook, answers, { withoutWhatIf: true })
    const keep = assessment.routes.find(({ id }) => id === 'keep-caps-and-bolts')
    const value = await filled('preload')
    expect(Math.abs(value('preload') / (keep?.joint.preload ?? 0) - 1)).toBeLessThan(2e-2)
  })
  it('holds the cap as the guide holds it: clamp and load factor', async () => {
    const { joint } = await keptOf(answers)
    const value = await filled('cap-joint')
    expect(Math.abs(value('clamp') / joint.clamp - 1)).toBeLessThan(1e-2)
    expect(Math.abs(value('loadFactor') / joint.loadFactor - 1)).toBeLessThan(2e-2)
  })

  it('weighs no chance where nothing is at stake', async () => {
    const free = readAnswers({ invested: '0 USD' }).answers
    const value = await filled('job-cost', { ...answers, ...free })
    expect(value('stake')).toBeNaN()
    const paid = readAnswers({ invested: '8000 USD' }).answers
    const weighed = await filled('job-cost', { ...answers, ...paid })
    expect(weighed('stake')).toBeGreaterThan(0)
  })

  it('names no torque for fasteners that an angle tightens', async () => {
    const turned = readAnswers({
      fastenerThread: 'M11x1.5',
      fastenerGrade: 'iso-10.9',
      fastenerTorque: '30 N m',
      tightening: 'torque-angle',
    }).answers
    const { joint } = await keptOf(turned)
    const value = await filled('preload', turned)
    expect(Math.abs(value('preload') / joint.preload - 1)).toBeLessThan(1e-3)
    expect(value('torque')).toBeNaN()
  })
})

async function keptOf(said: Answers) {
  const { routes } = await assess(rulebook, said, { withoutWhatIf: true })
  const keep = routes.find(({ id }) => id === 'keep-caps-and-bolts')
  if (!keep) throw new Error('no such route')
  return keep
}
