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
