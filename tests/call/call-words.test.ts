import { describe, expect, it } from 'vitest'
import type { Assessment } from '../../shared/assessment.ts'
import { assess } from '../../src/assess.ts'
import { loadRulebook } from '../../src/rulebook/load.ts'
import type { CallWords } from '../../src/rulebook/schema-call.ts'
import { ruleTexts, STREET_V8, said } from '../support/rulebook.ts'

/** The call of the street V8 with other answers, by a rulebook with other words in rules/call.json. */
async function callWith(
  change: (words: { -readonly [part in keyof CallWords]: Record<string, unknown> }) => void,
  answers: Readonly<Record<string, unknown>> = {},
): Promise<Assessment> {
  const texts = ruleTexts()
  const words = JSON.parse(texts.get('call.json') as string)
  change(words)
  const rulebook = loadRulebook(texts.set('call.json', JSON.stringify(words)))
  return assess(rulebook, said({ ...STREET_V8, ...answers }), { withoutWhatIf: true })
}

const whyNot = ({ call }: Assessment, route: string) =>
  call.insteadOf.find((one) => one.route === route)?.why ?? ''

describe('rules/call.json', () => {
  it('says why another route is not called, the price in its place', async () => {
    const found = await callWith(({ insteadOf }) => {
      insteadOf.dearer = 'For {{price}} it may be had, and need not be.'
      insteadOf.planHolds = 'Nobody has to ask less of it.'
    })
    expect(found.call.route).toBe('keep-caps-and-bolts')
    expect(whyNot(found, 'steel-caps')).toMatch(/^For \S.*\d.* it may be had, and need not be\.$/)
    expect(whyNot(found, 'lower-the-target')).toBe('Nobody has to ask less of it.')
  })

  it('says what is wrong where there is no call', async () => {
    const found = await callWith(
      ({ withheld }) => {
        withheld.sentence = 'Put this right first: {{contradictions}}.'
      },
      { boost: '10 psi' },
    )
    expect(found.call.route).toBeNull()
    expect(found.call.sentence).toMatch(/^Put this right first: \w.*\.$/)
  })

  it('tries no lower speed than the least, and says so in its words', async () => {
    const found = await callWith(
      ({ lowered }) => {
        lowered.leastSpeed = 0.8
        lowered.none = 'less than {{target}}'
        lowered.withoutBoost = '{{speed}} unblown'
      },
      {
        induction: 'turbocharged',
        boost: '45 psi',
        fuel: 'e85',
        compressionRatio: 13,
        peakRpm: '7500 rpm',
        use: 'endurance',
        budget: '50 USD',
      },
    )
    expect(found.call.route).toBe('lower-the-target')
    // Eight tenths of 7,500.
    expect(found.call.sentence).toMatch(/hold less than 6,000\srpm unblown, about \d+\shp\.$/)
  })
})
