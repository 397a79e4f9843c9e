import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { ROUTE_IDS } from '../../shared/route-ids.ts'
import { assess } from '../../src/assess.ts'
import { workSteps } from '../../src/site/call.ts'
import { rulebook } from '../check-in/case.ts'

/** The call of an example build, and the ids of its order of work. */
async function orderOf(preset: string) {
  const said = rulebook.presets.find(({ id }) => id === preset)?.answers
  const { answers } = readAnswers((said ?? {}) as Record<string, string>)
  const assessment = await assess(rulebook, answers, { withoutWhatIf: true })
  const steps = workSteps(rulebook, assessment).map(({ id }) => id)
  const called = assessment.routes.find(({ id }) => id === assessment.call.route)
  return { route: assessment.call.route, work: called?.work ?? [], steps }
}

// That an engine is taken apart only for work on it is common practice, no published source.
describe('the order of work', () => {
  it('takes nothing apart where the call keeps everything', async () => {
    const { route, work, steps } = await orderOf('mild-street')
    expect([route, work]).toEqual(['keep-caps-and-bolts', []])
    expect(steps[0]).toBe('nothing-comes-apart')
    expect(steps).not.toContain('strip-down')
    expect(steps).not.toContain('wash-block')
  })

  it('begins a lower target with its limits, and takes nothing apart for it', async () => {
    const { route, steps } = await orderOf('small-budget-boost')
    expect(route).toBe('lower-the-target')
    expect(steps.slice(0, 2)).toEqual(['set-the-limits', 'nothing-comes-apart'])
    expect(steps).not.toContain('strip-down')
  })

  it('strips and washes a block whose kept caps are honed', async () => {
    const { steps } = await orderOf('walked-caps')
    expect(steps).toEqual(expect.arrayContaining(['strip-down', 'line-hone', 'wash-block']))
    expect(steps).not.toContain('nothing-comes-apart')
  })

  it('strips, for every route that changes parts', () => {
    const rule = rulebook.rules.find(({ id }) => id === 'work-begins-with-stripping')
    const named = JSON.stringify(rule?.conditions)
    const kept = ['keep-caps-and-bolts', 'lower-the-target']
    expect(ROUTE_IDS.filter((id) => !kept.includes(id) && !named.includes(`"${id}"`))).toEqual([])
  })
})
