import { describe, expect, it } from 'vitest'
import { callFor } from '../support/rulebook.ts'

const BOOSTED = {
  induction: 'turbocharged',
  boost: '8 psi',
  chargeCooling: 'intercooler',
  fuel: 'e85',
}

describe('answers that cannot be true together', () => {
  it.each([
    ['boost-without-compressor', { boost: '10 psi' }, 'withhold'],
    ['compressor-without-boost', { ...BOOSTED, boost: '0 psi' }, 'hedge'],
    [
      'boosted-high-compression-on-pump-gasoline',
      {
        ...BOOSTED,
        boost: '10 psi',
        compressionRatio: 11.5,
        fuel: 'pump-gasoline',
        chargeCooling: 'none',
      },
      'hedge',
    ],
    ['power-far-out-of-reach', { targetPower: '1500 hp' }, 'withhold'],
    ['power-far-below-the-figures', { targetPower: '42 hp' }, 'withhold'],
    ['displacement-disagrees', { displacement: '340 cu in' }, 'hedge'],
    ['displacement-disagrees-widely', { displacement: '250 cu in' }, 'withhold'],
    ['bore-over-stroke-unlikely', { bore: '5.5 in', stroke: '2.5 in' }, 'withhold'],
    ['rod-over-stroke-unlikely', { rodLength: '11.4 in' }, 'withhold'],
    ['piston-speed-unlikely', { peakRpm: '11800 rpm' }, 'withhold'],
    ['torque-peak-above-highest-speed', { torquePeakRpm: '6400 rpm' }, 'withhold'],
    ['mass-unlikely', { reciprocatingMass: '2400 g' }, 'withhold'],
    ['nitrous-power-without-nitrous', { nitrousPower: '150 hp' }, 'hedge'],
    ['torque-breaks-the-fastener', { fastenerTorque: '250 lb ft' }, 'withhold'],
    [
      'bolts-through-the-bearing',
      { capBoltSpan: '2.6 in', mainJournalDiameter: '2.45 in' },
      'withhold',
    ],
    [
      'cap-thinner-than-its-bearing',
      { capHeight: '1.3 in', mainJournalDiameter: '2.45 in' },
      'withhold',
    ],
    ['cross-bolts-without-a-skirt', { capFastening: 'cross-bolted', skirt: 'short' }, 'hedge'],
    ['stud-strength-on-bolts', { fastenerGrade: 'high-strength-stud' }, 'hedge'],
    ['replacement-caps-never-moved', { capOrigin: 'replacement' }, 'hedge'],
    ['measured-peak-out-of-reach', { peakCylinderPressure: '3900 psi' }, 'withhold'],
  ] as const)('%s is named with its pair', async (rule, changes, effect) => {
    const { call, contradictions } = await callFor(changes)
    const found = contradictions.find((one) => one.rule === rule)
    expect(contradictions.map((one) => one.rule)).toContain(rule)
    expect(found?.effect).toBe(effect)
    expect(found?.between.length).toBeGreaterThanOrEqual(2)
    expect(found?.text).not.toContain('{{')
    // Withheld or hedged, never silently made.
    expect(call.confidence).toBe(effect === 'withhold' ? 'withheld' : 'likely')
    if (effect === 'withhold') expect(call.route).toBeNull()
    if (effect === 'withhold') expect(call.sentence).toMatch(/^No call while this stands: /)
  })

  it('a plain build has none', async () => {
    expect((await callFor()).contradictions).toEqual([])
  })

  it.each([
    ['a target power', { targetPower: '42 hp' }, 'targetPower', 'decimal-point', '420'],
    [
      'a reciprocating mass',
      { reciprocatingMass: '85 g' },
      'reciprocatingMass',
      'decimal-point',
      '850',
    ],
    [
      'a torque in the other unit',
      { fastenerTorque: '230 lb ft', fastenerThread: '1/2-13' },
      'fastenerTorque',
      'unit',
      '230',
    ],
  ] as const)('a slip in %s is worked out and said', async (_, changes, fact, kind, meant) => {
    const { contradictions } = await callFor(changes)
    const first = contradictions.find(({ slips }) => slips?.length)
    const slip = first?.slips?.find((one) => one.fact === fact && one.kind === kind)
    expect(slip?.meant).toContain(meant)
    expect(first?.likelierSlip).toBe(fact)
    expect(first?.text).toContain('it fits:')
  })

  it('no slip is claimed where none would mend it', async () => {
    const { contradictions } = await callFor({ targetPower: '1500 hp' })
    const slips = contradictions[0]?.slips ?? []
    // 150 hp would fit an engine that makes far more: that too is refused or mended honestly.
    for (const { meant } of slips) expect(meant).not.toContain('15,000')
  })
})
