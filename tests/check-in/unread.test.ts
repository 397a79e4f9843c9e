import { describe, expect, it } from 'vitest'
import { checkInCsv } from '../../src/check-in/csv.ts'
import { mainsDrawing } from '../../src/pages/check-in-drawing.ts'
import { check, goodBlock } from './case.ts'

describe('an entry that cannot be read', () => {
  it.each(['housing.5.fl', 'journal.5.fv', 'shell.5.uc', 'line.5.y'])(
    'lets no main pass on what is left: %s',
    (field) => {
      const report = check(goodBlock({ [field]: 'abc' }))
      const [last, ...others] = [...report.mains].reverse()
      expect(last).toMatchObject({ verdict: 'look-again', words: 'Look again' })
      expect(last?.reasons.join(' ')).toContain('“abc” is not a number. Type it anew')
      expect(others.map(({ verdict }) => verdict)).toEqual(['pass', 'pass', 'pass', 'pass'])
      expect(report.overall.title).toBe('Look again: main 5')
      expect(String(mainsDrawing(report, 'us'))).toContain('main 5 look again')
    },
  )

  it.each([
    ['housingLow', 'finished housing bore, least'],
    ['endFloat', 'end float'],
    ['axis.1.told', 'front main'],
  ])('lets no block pass where it is of no main: %s', (field, named) => {
    const { overall } = check(goodBlock({ [field]: 'abc' }))
    expect(overall.verdict).toBe('look-again')
    expect(overall.title.toLowerCase()).toContain(`look again: ${named}`)
    expect(overall.reasons.join(' ')).toContain('“abc” is not a number')
  })

  it('is none where nothing is written', () => {
    const { wrong, overall } = check(goodBlock({ endFloat: '', 'line.2.z': ' ' }))
    expect([wrong, overall.verdict]).toEqual([[], 'pass'])
  })

  it('takes nothing from a main that goes back, and stands in the file', () => {
    const measured = goodBlock({ 'housing.4.fv': '2.6432', 'journal.4.fh': 'abc' })
    const report = check(measured)
    expect(report.overall.title).toBe('Send back: main 4')
    expect(checkInCsv(measured, report)).toContain(
      'Not read,As typed,Why\r\n"Main 4, front, a quarter turn on",abc,“abc” is not a number',
    )
  })
})
