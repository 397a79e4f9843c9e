import { describe, expect, it } from 'vitest'
import { callFor, routeOf } from '../support/rulebook.ts'

// Every expectation here: common practice, no published source.
describe('which route builders would take', () => {
  it.each([
    { use: 'street', peakRpm: '5800 rpm', compressionRatio: 9.5 },
    { use: 'street', peakRpm: '6200 rpm', compressionRatio: 10.5 },
    { use: 'street-strip', peakRpm: '6500 rpm', compressionRatio: 10.5 },
    { use: 'street-strip', peakRpm: '6200 rpm', compressionRatio: 10, layout: 'inline-6' },
    { use: 'street-strip', peakRpm: '6500 rpm', compressionRatio: 11, layout: 'v6-90' },
  ])('a standard $use two-bolt engine at $peakRpm keeps its caps', async (build) => {
    const { call } = await callFor(build)
    expect(['keep-caps-and-bolts', 'keep-caps-add-studs']).toContain(call.route)
  })

  it('a mild street engine also keeps its bolts', async () => {
    const { call, cost } = await callFor()
    expect(call.route).toBe('keep-caps-and-bolts')
    expect(cost.likely).toBe(0)
  })

  it.each([13, 13.4, 14.5])('ordinary caps at %s:1 give way to steel ones', async (ratio) => {
    const race = { use: 'drag', peakRpm: '7200 rpm', fuel: 'race-gasoline' }
    const { call } = await callFor({ ...race, compressionRatio: ratio })
    expect(call.route).toBe('steel-caps')
    expect(call.reasons.map(({ rule }) => rule)).toContain('compression-13-on-ordinary-caps')
  })

  it('caps known for their quality are not asked to go at 13:1', async () => {
    const { call } = await callFor({
      compressionRatio: 13.2,
      fuel: 'race-gasoline',
      capMaterial: 'ductile-iron',
    })
    expect(call.reasons.map(({ rule }) => rule)).not.toContain('compression-13-on-ordinary-caps')
    expect(['keep-caps-and-bolts', 'keep-caps-add-studs']).toContain(call.route)
  })

  it.each(['10 psi', '12 psi', '16 psi', '20 psi'])(
    'two turbochargers at %s with a large sum in the rotating assembly ask for steel caps',
    async (boost) => {
      const { call } = await callFor({
        induction: 'turbocharged',
        boost,
        chargeCooling: 'intercooler',
        fuel: 'e85',
        compressionRatio: 9,
        peakRpm: '6500 rpm',
        use: 'street-strip',
        invested: '12000 USD',
      })
      expect(call.route).toBe('steel-caps')
    },
  )

  it('the same sum in another currency asks for the same', async () => {
    const twin = {
      induction: 'turbocharged',
      boost: '12 psi',
      chargeCooling: 'intercooler',
      fuel: 'e85',
      compressionRatio: 9,
      use: 'street-strip',
    }
    const dollars = await callFor({ ...twin, invested: '9000 USD' })
    const yen = await callFor({ ...twin, invested: '1368000 JPY' })
    expect(dollars.call.route).toBe('steel-caps')
    expect(yen.call.route).toBe('steel-caps')
  })

  it('a four-bolt block takes more than a two-bolt one, a cross-bolted one far more', async () => {
    const boosted = { induction: 'supercharged', boost: '10 psi', compressionRatio: 9 }
    const margins = await Promise.all(
      ['two-bolt', 'four-bolt', 'cross-bolted'].map(async (capFastening) => {
        const report = await callFor({ ...boosted, capFastening })
        return routeOf(report, 'keep-caps-and-bolts').margins
      }),
    )
    const [two, four, cross] = margins
    if (!two || !four || !cross) throw new RangeError('three builds give three reports')
    for (const id of ['hold', 'separation', 'capFatigue'] as const) {
      expect(four[id].likely, id).toBeGreaterThan(1.1 * two[id].likely)
      expect(cross[id].likely, id).toBeGreaterThan(1.1 * two[id].likely)
    }
    // Far more sideways, where the bolts through the skirt act.
    expect(cross.hold.likely).toBeGreaterThan(1.5 * two.hold.likely)
    expect(cross.hold.likely).toBeGreaterThan(four.hold.likely)
  })

  it('a modern cross-bolted deep-skirt block keeps its caps where a two-bolt one cannot', async () => {
    const boosted = {
      induction: 'turbocharged',
      boost: '15 psi',
      chargeCooling: 'intercooler',
      fuel: 'e85',
      compressionRatio: 9.5,
      peakRpm: '6600 rpm',
      use: 'street-strip',
    }
    const old = await callFor(boosted)
    const modern = await callFor({
      ...boosted,
      capFastening: 'cross-bolted',
      capMaterial: 'ductile-iron',
      skirt: 'deep',
      fastenerThread: 'M11x1.25',
      fastenerTorque: undefined,
    })
    expect(old.call.route).toBe('steel-caps')
    expect(['keep-caps-and-bolts', 'keep-caps-add-studs']).toContain(modern.call.route)
  })
})
