import { describe, expect, it } from 'vitest'
import { readMessage } from '../support/reader.ts'

describe('what nobody sees in a message', () => {
  // The Unicode Standard, section 23.2, layout controls: they have no glyph of their own.
  it.each(['\u200b', '\u200e', '\u2060', '\u202e', '\ufeff'])(
    'does not part a figure from its unit: U+%s',
    (hidden) => {
      const { facts, spans } = readMessage(`torque 100${hidden}Nm on the main studs`)
      expect(facts.fastenerTorque).toEqual({ value: 100, unit: 'N m' })
      expect(spans.length).toBeGreaterThan(0)
      expect(readMessage(`boost 1${hidden}.5 bar`).facts.boost).toEqual({ value: 1.5, unit: 'bar' })
    },
  )
})

describe('thousands that are parted by a space', () => {
  // SI Brochure, 9th ed., section 5.4.4: digits in groups of three, parted by a thin space.
  it.each([
    ['budget is 2 500 euro', 'budget', { value: 2500, currency: 'EUR' }],
    ['I have 10\u202f000 dollars in it', 'invested', { value: 10000, currency: 'USD' }],
    ['displacement 5 700 cc', 'displacement', { value: 5700, unit: 'cc' }],
    ['spin it to 7 200 rpm', 'peakRpm', { value: 7200, unit: 'rpm' }],
  ] as const)('%s', (text, key, value) => {
    expect(readMessage(text).facts[key]).toEqual(value)
  })

  it('are two figures where nothing is counted in thousands', () => {
    expect(readMessage('350 500 hp').facts.targetPower).toEqual({ value: 500, unit: 'hp' })
  })
})
