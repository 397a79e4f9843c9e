import { describe, expect, it } from 'vitest'
import { callFor, routeOf } from '../support/rulebook.ts'

const HIGH_COMPRESSION = {
  compressionRatio: 13.5,
  fuel: 'race-gasoline',
  use: 'drag',
  peakRpm: '7200 rpm',
}

const STEEL_UNDER_LOAD = {
  capMaterial: 'steel',
  compressionRatio: 12.5,
  fuel: 'race-gasoline',
}

// Every expectation here: common practice, no published source, unless it says otherwise.
describe('steel caps and studs', () => {
  it('steel caps bring studs', async () => {
    const report = await callFor(HIGH_COMPRESSION)
    expect(report.call.route).toBe('steel-caps')
    expect(report.call.mustDo).toContain('studs-with-steel-caps')
    expect(routeOf(report, 'steel-caps').parts).toContain('main-studs')
  })

  it('steel caps already on bolts ask for studs, since the bolts are then the weak point', async () => {
    const { call } = await callFor(STEEL_UNDER_LOAD)
    expect(call.route).toBe('keep-caps-add-studs')
    expect(call.reasons.map(({ rule }) => rule)).toContain('steel-caps-on-bolts')
    expect(call.mustDo).toContain('studs-with-steel-caps')
  })

  it('a mild engine keeps its bolts under steel caps as it does under iron ones', async () => {
    const iron = await callFor()
    const { call, cautions } = await callFor({ capMaterial: 'steel' })
    expect(call.route).toBe(iron.call.route)
    expect(cautions.map(({ rule }) => rule)).toContain('steel-caps-on-bolts-mild')
  })

  it('bolts that nobody mentioned are no fact, but ask for the same', async () => {
    const { call } = await callFor({ ...STEEL_UNDER_LOAD, fastenerKind: undefined })
    expect(call.route).toBe('keep-caps-add-studs')
    const asked = call.reasons.find(({ rule }) => rule.startsWith('steel-caps-on-bolts'))
    expect(asked?.rule).toBe('steel-caps-on-bolts-unsaid')
    expect(asked?.title).toMatch(/^If /)
  })

  it('studs for four fasteners a cap cost more than studs for two, unless their price was said', async () => {
    const studsOf = async (own: Record<string, unknown>) => {
      const report = await callFor({ ...STEEL_UNDER_LOAD, ...own })
      expect(report.call.route).toBe('keep-caps-add-studs')
      return report.cost.items.find(({ id }) => id.startsWith('main-studs'))?.likely ?? 0
    }
    const two = await studsOf({})
    for (const capFastening of ['four-bolt', 'four-bolt-splayed']) {
      expect(await studsOf({ capFastening })).toBeGreaterThan(1.5 * two)
    }
    const said = { studsPrice: { value: 210, currency: 'USD' }, capFastening: 'four-bolt' }
    expect(await studsOf(said)).toBe(210)
  })

  it('steel caps on studs already are simply kept', async () => {
    const { call } = await callFor({
      capMaterial: 'steel',
      fastenerKind: 'stud',
      fastenerGrade: 'high-strength-stud',
      fastenerTorque: '110 lb ft',
    })
    expect(call.route).toBe('keep-caps-and-bolts')
    expect(call.mustDo).not.toContain('studs-with-steel-caps')
  })

  it('studs of a half-inch thread take 110 lb ft where bolts take 85, and clamp up by as much', async () => {
    const report = await callFor()
    const bolts = routeOf(report, 'keep-caps-and-bolts').joint
    const studs = routeOf(report, 'keep-caps-add-studs').joint
    // 25 lb ft more each; the torque of studs is worked out here, so a pound-foot either way.
    const [boltTorque, studTorque] = [bolts.torque?.value ?? 0, studs.torque?.value ?? 0]
    expect(boltTorque).toBeCloseTo(85, 6)
    expect(Math.abs(studTorque - 110)).toBeLessThanOrEqual(1)
    // T = K F d with the same thread and lubricant: preload rises as torque does
    // (Shigley's Mechanical Engineering Design, 9th ed., equation 8–27).
    expect(studs.preload / bolts.preload).toBeCloseTo(studTorque / boltTorque, 9)
    // The clamp loses the same settling from both, so it rises by a little more.
    expect(studs.clamp / bolts.clamp).toBeGreaterThan(1.25)
    expect(studs.clamp / bolts.clamp).toBeLessThan(1.5)
  })

  it('says that steel caps are 10 to 20% heavier, as a note', async () => {
    const report = await callFor(HIGH_COMPRESSION)
    const note = routeOf(report, 'steel-caps').against.find(
      ({ rule }) => rule === 'steel-caps-weigh-more',
    )
    expect(note?.severity).toBe('note')
    expect(note?.text).toContain('10 to 20% heavier')
  })

  it('the final fasteners go to the shop with the block, and stay', async () => {
    const { call } = await callFor(HIGH_COMPRESSION)
    expect(call.mustDo).toContain('send-block-with-final-fasteners')
    const text = call.followOn.find(({ id }) => id === 'send-block-with-final-fasteners')?.text
    expect(text).toMatch(/very fasteners that will stay/)
  })

  it.each([{}, HIGH_COMPRESSION, { capHistory: 'walked' }])(
    'caps go back to their own places, whatever the call',
    async (changes) => {
      const { call } = await callFor(changes)
      expect(call.mustDo).toEqual(
        expect.arrayContaining(['keep-caps-in-order', 'caps-must-not-be-mixed']),
      )
    },
  )

  it('caps that are kept on new studs are measured again with the studs torqued', async () => {
    const { call } = await callFor(STEEL_UNDER_LOAD)
    expect(call.mustDo).toContain('recheck-bores-after-studs')
  })
})
