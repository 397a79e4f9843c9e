import { describe, expect, it } from 'vitest'
import { callFor } from '../support/rulebook.ts'

const HARD = {
  ...{ induction: 'turbocharged', boost: '45 psi', fuel: 'methanol', compressionRatio: 11 },
  ...{ peakRpm: '8500 rpm', use: 'drag', websAllowFourBolt: 'no' },
}

/** Bolts do not hold it; studs do as much as a stronger case, so only their price can speak against them. */
const CASE = {
  ...{ layout: 'flat-4', induction: 'turbocharged', boost: '28 psi', fuel: 'methanol' },
  ...{ compressionRatio: 9, peakRpm: '7500 rpm' },
}

// A split case has two halves and no caps: common practice, no published source.
describe('the call for a stronger block', () => {
  it('speaks of caps where there are caps, and of no split case', async () => {
    const { call } = await callFor(HARD)
    expect(call.route).toBe('stronger-block')
    expect(call.title).toBe('Build on a stronger block')
    expect(call.sentence).toContain('steel caps')
    expect(call.sentence).not.toMatch(/split|stronger case/)
  })

  it('speaks of a case where the crank lies between two halves', async () => {
    const { call } = await callFor({ ...CASE, studsPrice: { value: 9000, currency: 'USD' } })
    expect(call.route).toBe('stronger-block')
    expect(call.title).toBe('Build on a stronger case')
    expect(call.sentence).toContain('case with larger webs')
    expect(call.sentence).not.toMatch(/block|caps/)
  })

  it('says which block is sent with which fasteners', async () => {
    const { call } = await callFor(HARD)
    const sent = call.followOn.find(({ id }) => id === 'send-block-with-final-fasteners')
    expect(sent?.title).toContain('block that stays')
    expect(sent?.text).toContain('a new one where one is bought')
  })
})
