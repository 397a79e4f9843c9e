import { describe, expect, it } from 'vitest'
import { assess } from '../../src/assess.ts'
import { whatIf } from '../../src/what-if/quick-call.ts'
import { rulebook, said } from '../support/rulebook.ts'

/** As much nitrous as these cylinders just take: a little less bore, speed or air, and they do not. */
const NEAR_THE_END = said({
  bore: '2 in',
  induction: 'nitrous',
  nitrousPower: '680 kW',
  use: 'track',
})

describe('a what-if that would be no engine', () => {
  it('is none, and no fault', async () => {
    const ask = whatIf(rulebook)
    expect(
      await ask({ ...NEAR_THE_END, torquePeakRpm: { value: 1000, unit: 'rpm' } }),
    ).toBeUndefined()
    expect(await ask(NEAR_THE_END)).toBeDefined()
  })

  it('does not refuse the engine whose what-if it is', async () => {
    const bare = await assess(rulebook, NEAR_THE_END, { withoutWhatIf: true })
    const whole = await assess(rulebook, NEAR_THE_END)
    expect(whole.call.route).toBe(bare.call.route)
    expect(whole.loads).toEqual(bare.loads)
    expect(whole.next).not.toBeNull()
  })
})
