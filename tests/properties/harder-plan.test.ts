import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Answers, withAnswer } from '../../shared/answers.ts'
import { rulebook } from '../support/rulebook.ts'
import { build, callsOf, quantity, runs, strength, without } from './support.ts'

/**
 * A target power or a measured pressure calibrates the engine: more boost at the same
 * power is then a weaker engine, not a harder plan. A torque peak that is said has to
 * stay below the highest speed.
 */
function free(answers: Answers): Answers {
  return without(answers, 'targetPower', 'peakCylinderPressure', 'torquePeakRpm')
}

/** More of it never gives a weaker route; lowering the target stands last. */
async function neverWeaker(easier: Answers, harder: Answers): Promise<void> {
  const calls = await callsOf(easier, harder)
  fc.pre(calls !== undefined)
  const [less, more] = calls
  expect(strength(more?.wouldBe ?? 'keep-caps-and-bolts')).toBeGreaterThanOrEqual(
    strength(less?.wouldBe ?? 'lower-the-target'),
  )
}

describe('a harder plan never gets a weaker route', () => {
  it('more boost', async () => {
    const induction = fc.constantFrom('turbocharged', 'supercharged')
    const boost = fc.double({ min: 0.5, max: 34, noNaN: true })
    const more = fc.double({ min: 0, max: 20, noNaN: true })
    await fc.assert(
      fc.asyncProperty(build, induction, boost, more, async (answers, kind, low, extra) => {
        const base = withAnswer(free(answers), 'induction', kind)
        await neverWeaker(
          withAnswer(base, 'boost', quantity(low, 'psi')),
          withAnswer(base, 'boost', quantity(low + extra, 'psi')),
        )
      }),
      runs(250),
    )
  })

  it('more compression', async () => {
    const ratio = fc.double({ min: 7, max: 15, noNaN: true })
    const more = fc.double({ min: 0, max: 3, noNaN: true })
    await fc.assert(
      fc.asyncProperty(build, ratio, more, async (answers, low, extra) => {
        const base = free(answers)
        await neverWeaker(
          withAnswer(base, 'compressionRatio', low),
          withAnswer(base, 'compressionRatio', low + extra),
        )
      }),
      runs(250),
    )
  })

  it('more rpm', async () => {
    const speed = fc.double({ min: 3500, max: 9000, noNaN: true })
    const more = fc.double({ min: 0, max: 2500, noNaN: true })
    await fc.assert(
      fc.asyncProperty(build, speed, more, async (answers, low, extra) => {
        const base = free(answers)
        await neverWeaker(
          withAnswer(base, 'peakRpm', quantity(low, 'rpm')),
          withAnswer(base, 'peakRpm', quantity(low + extra, 'rpm')),
        )
      }),
      runs(250),
    )
  })

  it('harder use', async () => {
    const { hardness } = rulebook.holding
    const use = fc.integer({ min: 0, max: hardness.length - 1 })
    await fc.assert(
      fc.asyncProperty(build, use, use, async (answers, one, other) => {
        const base = free(answers)
        await neverWeaker(
          withAnswer(base, 'use', hardness[Math.min(one, other)]),
          withAnswer(base, 'use', hardness[Math.max(one, other)]),
        )
      }),
      runs(250),
    )
  })

  it('the needed share of cases rises with the hardness of the use', () => {
    const { hardness, needed } = rulebook.holding
    const shares = hardness.map((use) => needed[use] ?? 0)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    expect([...hardness].sort()).toEqual(Object.keys(needed).sort())
  })
})
