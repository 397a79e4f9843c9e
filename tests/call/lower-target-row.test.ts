import { describe, expect, it } from 'vitest'
import type { Assessment } from '../../shared/assessment.ts'
import { callFor } from '../support/rulebook.ts'

const BOOSTED = { induction: 'turbocharged', fuel: 'e85', compressionRatio: 9 }
const whyNotLowered = ({ call }: Assessment) =>
  call.insteadOf.find(({ route }) => route === 'lower-the-target')?.why

describe('why the target is not lowered', () => {
  it('says that the plan is held as it is only where the present hardware holds it', async () => {
    const kept = await callFor()
    expect(kept.call.route).toBe('keep-caps-and-bolts')
    expect(whyNotLowered(kept)).toMatch(/hold the plan as it is/)
  })

  it('says what the present hardware holds where the plan takes more', async () => {
    const changed = await callFor({ ...BOOSTED, boost: '18 psi' })
    const { lowered } = changed.routes.find(({ id }) => id === 'lower-the-target') ?? {}
    expect(changed.call.route).toBe('steel-caps')
    expect(lowered?.boost.value).toBeLessThan(18)
    expect(whyNotLowered(changed)?.replace(/\s/g, ' ')).toContain(
      `hold ${lowered?.boost.value} psi`,
    )
    expect(whyNotLowered(changed)).not.toContain('as it is')
  })
})

describe('a target that practice objects to however low it is', () => {
  const RACE = { compressionRatio: 13.2, fuel: 'race-gasoline', peakRpm: '6500 rpm' }

  it('does not say that the hardware would not hold it', async () => {
    const { call, routes } = await callFor({ ...RACE, budget: '100 USD' })
    const row = routes.find(({ id }) => id === 'lower-the-target')
    expect(call.route).toBe('lower-the-target')
    expect(call.title).toBe('No lower target answers what practice asks')
    expect(call.sentence).toContain(`hold in ${row?.holdsIn} of 100 sampled cases`)
    expect(call.sentence).not.toMatch(/not even|without boost/)
    expect(call.mustDo).toContain('settle-what-practice-asks')
    expect(call.mustDo).not.toContain('do-not-run-it')
    expect(row?.title).toBe(call.title)
    expect(row?.against.map(({ rule }) => rule)).not.toContain('power-given-up')
  })

  it('names the rule where another route is called', async () => {
    const other = await callFor(RACE)
    expect(other.call.route).not.toBe('lower-the-target')
    expect(whyNotLowered(other)).toMatch(/^No lower target answers what practice asks: “/)
    expect(whyNotLowered(other)).not.toContain('not even')
  })
})

// That a worn bore is honed at any speed, so that a lower target saves nothing of it: common
// practice, no published source.
describe('a plan that holds, with work that the budget does not pay for', () => {
  it('is not called a target to be lowered', async () => {
    const { call, routes } = await callFor({ capHistory: 'walked', budget: '50 USD' })
    const row = routes.find(({ id }) => id === 'lower-the-target')
    expect(call.route).toBe('lower-the-target')
    expect(call.title).toBe(
      'The target holds, but the work that it needs costs more than the budget',
    )
    expect(row?.title).toBe(call.title)
    const sentence = call.sentence.replace(/\s/g, ' ')
    expect(sentence).toContain('hold the plan as it is, 5,800 rpm')
    expect(sentence).toMatch(/work that costs \d+ USD, and the budget is 50 USD/)
    expect(sentence).not.toContain('Lower the target')
    expect(call.mustDo).toContain('line-hone')
    expect(call.mustDo).not.toContain('set-the-limits')
    expect(call.mustDo).not.toContain('do-not-run-it')
  })

  it('is a target to be lowered where the plan does not hold, and keeps its name where not called', async () => {
    const lowered = await callFor({ ...BOOSTED, capHistory: 'walked', budget: '50 USD' })
    expect(lowered.call.sentence).toMatch(/^Lower the target:/)
    expect(lowered.call.mustDo).toContain('set-the-limits')
    const paid = await callFor({ capHistory: 'walked' })
    expect(paid.call.route).toBe('keep-caps-and-bolts')
    expect(paid.routes.find(({ id }) => id === 'lower-the-target')?.title).toMatch(/^Lower/)
  })
})

describe('a target that cannot be lowered far enough', () => {
  it('is no limit to set: it is not run', async () => {
    const none = await callFor({
      ...BOOSTED,
      boost: '8 psi',
      registerFit: 'loose',
      budget: '300 USD',
    })
    expect(none.call.route).toBe('lower-the-target')
    expect(none.call.title).toBe('Nothing holds with the present hardware')
    expect(none.call.sentence).toMatch(/^Do not run it/)
    expect(none.call.mustDo).toContain('do-not-run-it')
    expect(none.call.mustDo).not.toContain('set-the-limits')
  })
})

describe('the cautions of a lowered target', () => {
  it('are of the engine as it is then run, not of the plan that is left', async () => {
    const plan = { ...BOOSTED, fuel: 'pump-gasoline', boost: '22 psi' }
    const asPlanned = await callFor(plan)
    const asLowered = await callFor({ ...plan, budget: '100 USD' })
    const rulesOf = ({ cautions }: Assessment) => cautions.map(({ rule }) => rule)
    expect(asLowered.call.route).toBe('lower-the-target')
    expect(rulesOf(asPlanned)).toContain('detonation-near')
    expect(rulesOf(asLowered)).not.toContain('detonation-near')
    expect(rulesOf(asLowered)).toContain('detonation-possible')
  })
})
