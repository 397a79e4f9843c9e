import { describe, expect, it } from 'vitest'
import { toQuery } from '../../shared/share-link.ts'
import { assess } from '../../src/assess.ts'
import { app, rulebook } from '../support/app.ts'
import { STREET_V8, said } from '../support/rulebook.ts'

const LITTLE_MONEY = {
  ...STREET_V8,
  ...{ induction: 'turbocharged', boost: '22 psi', compressionRatio: 9 },
  ...{ use: 'street-strip', peakRpm: '6200 rpm', budget: '400 USD' },
}
const MEASURED = { capHeight: '2.6 in', capWidth: '1.02 in' }

const found = (raw: Readonly<Record<string, unknown>>) =>
  assess(rulebook, said(raw), { withoutTurningPoints: true })

const textOf = async (path: string): Promise<string> =>
  (await (await app.request(path)).text()).replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ')

// A cap bends as a beam: its strength goes with the square of the crown's thickness
// (Shigley's Mechanical Engineering Design, 9th ed., section 3–10), so its height has to be named.
describe('a lowered target whose route is settled', () => {
  it('says that its figures rest on what was assumed, the cap height among them', async () => {
    const { call } = await found(LITTLE_MONEY)
    expect(call).toMatchObject({ route: 'lower-the-target', confidence: 'settled' })
    expect(call.targetMoves).toContain('cap height')
  })

  it('does move with what it names, and no longer names what was measured', async () => {
    const { call } = await found({ ...LITTLE_MONEY, ...MEASURED })
    expect(call.route).toBe('lower-the-target')
    expect(call.sentence).not.toBe((await found(LITTLE_MONEY)).call.sentence)
    expect(call.targetMoves ?? '').not.toContain('cap height')
  })

  it('is not said of a route that lowers nothing', async () => {
    expect((await found(STREET_V8)).call.targetMoves).toBeUndefined()
  })

  it('stands on the call, in the guide, on the sheet and in a post', async () => {
    const link = toQuery(said(LITTLE_MONEY), rulebook.version)
    for (const page of ['call', '', 'sheet', 'forum']) {
      const text = await textOf(`/${page}?${link}`)
      expect(text).toMatch(/The figures of the target rest on answers that were assumed; most on/)
      expect(text).not.toContain('No open answer can change it.')
    }
    expect(await textOf(`/call?${link}`)).toContain('No open answer can change the route.')
  })
})
