import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { typingSlips } from '../../src/check-in/typing-slips.ts'
import { check, goodBlock, measure } from './case.ts'

const FIELD = 'housing.4.fl'

describe('a reading that is likely a slip', () => {
  it.each([
    ['2.412', 'a digit dropped', '2.6412'],
    ['2.4612', 'two digits swapped', '2.6412'],
    ['22.6412', 'a digit too many', '2.6412'],
    ['26.412', 'a decimal point out of place', '2.6412'],
    ['67.086', 'a millimetre figure among inches', '2.6412'],
    ['2.6662', 'a micrometer read one turn off', '2.6412'],
    ['2.9412', 'one digit wrong', '2.6412'],
  ])('asks about %s as %s', (typed, words, meant) => {
    const { suspects, mains, overall } = check(goodBlock({ [FIELD]: typed }))
    expect(suspects).toHaveLength(1)
    expect(suspects[0]?.question).toContain(words)
    expect(Number(suspects[0]?.instead?.fields?.[FIELD])).toBeCloseTo(Number(meant), 3)
    // Left out until it is answered: the main is neither passed nor sent back for it.
    expect(mains[3]?.verdict).toBe('look-again')
    expect(overall.verdict).toBe('look-again')
  })

  it('is left out even where no slip explains it: it decides nothing and moves no limit', () => {
    // A journal larger than the bore inside its shells, 2.6412 − 2 × 0.0953 in, cannot be there.
    const typed = { 'journal.1.fv': '2.7' }
    const report = check(goodBlock(typed))
    expect(report.suspects[0]?.question).toContain('no common slip explains it')
    expect(report.suspects[0]?.instead).toBeUndefined()
    expect(report.overall.title).toBe('Look again: main 1')
    expect(report.mains[0]?.judged.every(({ verdict }) => verdict !== 'send-back')).toBe(true)
    const limits = [1, 2].map((main) => measure(report, 'clearance', main).limit)
    expect(limits[0]).toBe(limits[1])
    const stands = report.suspects[0]?.confirm ?? ''
    const confirmed = check(goodBlock({ ...typed, stands }))
    expect([confirmed.suspects, confirmed.kept.map((one) => one.fields)]).toEqual([
      [],
      [['journal.1.fv']],
    ])
    expect(confirmed.mains[0]?.verdict).toBe('send-back')
    expect(check(goodBlock({ 'journal.1.fv': '2.71', stands })).suspects).toHaveLength(1)
  })

  // That a bore is never as small as the journal that runs in it: the shells stand between.
  describe('written in the other column', () => {
    const swapped = { 'housing.1.fv': '2.4485', 'journal.1.fv': '2.6412' }
    const asked = (changes: Readonly<Record<string, string>>) =>
      check(goodBlock(changes)).suspects.map(({ fields, question }) => [fields, question])

    it('is offered so, both at once, and no other reading is asked about', () => {
      const { suspects, overall } = check(goodBlock(swapped))
      expect(suspects.map(({ fields }) => fields)).toEqual([['housing.1.fv'], ['journal.1.fv']])
      expect(suspects[0]?.question).toContain('fits the journals, and 2.6412 stands in its place')
      expect(suspects[1]?.question).toContain('fits the housing bores, and 2.4485 stands')
      expect(overall.title).toBe('Look again: main 1')
      for (const { instead } of suspects) {
        const changed = goodBlock({ ...swapped, ...instead?.fields })
        expect(changed.fields['housing.1.fv']).toBe('2.6412')
        expect(changed.fields['journal.1.fv']).toBe('2.4485')
        expect(check(changed).overall.verdict).toBe('pass')
      }
    })

    it('is seen where nothing was written in its place, which then has to be measured', () => {
      const { suspects } = check(goodBlock({ ...swapped, 'journal.1.fh': '2.641' }))
      expect(suspects.map(({ fields }) => fields)).toEqual([
        ['housing.1.fv'],
        ['journal.1.fv'],
        ['journal.1.fh'],
      ])
      expect(suspects[2]?.question).toContain('fits the housing bores: it looks as if')
      expect(suspects[2]?.instead).toBeUndefined()
    })

    it('is seen where all of one main was, in any unit', () => {
      const journals = ['fv', 'fh', 'rv', 'rh'].map((column) => [
        `journal.2.${column}`,
        '67.086 mm',
      ])
      expect(asked(Object.fromEntries(journals))).toHaveLength(4)
    })

    it('is not said of a reading that fits neither', () => {
      expect(asked({ 'housing.1.fv': '2.5' })[0]?.[1]).not.toContain('other column')
    })
  })

  it('asks about those two of four that are unlike the other mains, not about the others', () => {
    const { suspects } = check(goodBlock({ 'journal.1.fv': '2.4785', 'journal.1.fh': '2.4785' }))
    expect(suspects.map(({ fields }) => fields)).toEqual([['journal.1.fv'], ['journal.1.fh']])
  })

  it('leaves out a whole table of no likely size, until it is confirmed', () => {
    const journal = [1, 2, 3, 4, 5].flatMap((main) =>
      ['fv', 'fh', 'rv', 'rh'].map((column) => [`journal.${main}.${column}`, '3.2'] as const),
    )
    const wide = Object.fromEntries(journal)
    const { overall, suspects } = check(goodBlock(wide))
    expect(overall.verdict).toBe('look-again')
    const stands = suspects[0]?.confirm ?? ''
    expect(check(goodBlock({ ...wide, stands })).overall.verdict).toBe('send-back')
  })

  it('passes once the question is answered', () => {
    const asked = check(goodBlock({ [FIELD]: '2.412' })).suspects[0]
    expect(check(goodBlock(asked?.instead?.fields)).overall.verdict).toBe('pass')
  })

  it('does not take a truly bad main for a slip', () => {
    const bad = check(goodBlock({ 'housing.4.fv': '2.6432', 'housing.4.rv': '2.6431' }))
    expect(bad.suspects).toEqual([])
    expect(bad.overall.title).toBe('Send back: main 4')
  })

  it('does not take a main that was bored larger all round for six slips', () => {
    const columns = ['fv', 'fl', 'fr', 'rv', 'rl', 'rr']
    const larger = columns.map((column) => [`housing.4.${column}`, '2.6512'])
    const { suspects, mains } = check(goodBlock(Object.fromEntries(larger)))
    expect(suspects).toEqual([])
    expect(mains[3]?.verdict).toBe('send-back')
  })

  it('asks for the unit when a whole table is off by it', () => {
    const { fields } = goodBlock()
    const { suspects, overall } = check({ unit: 'mm', fields })
    expect(suspects[0]?.instead).toEqual({ unit: 'in' })
    expect(suspects[0]?.question).toContain(
      'in inches, not in millimetres. Were they typed in inches?',
    )
    expect(overall.verdict).not.toBe('send-back')
  })

  it('names texts that are no figures, and takes the rest', () => {
    const { wrong, mains } = check(goodBlock({ endFloat: 'tight', 'journal.1.fv': '-2.44845' }))
    expect(wrong.map(({ field }) => field).sort()).toEqual(['endFloat', 'journal.1.fv'])
    expect(mains[1]?.verdict).toBe('pass')
  })
})

describe('typingSlips', () => {
  const near = (meant: string) => (text: string) => Math.abs(Number(text) - Number(meant))

  it('undoes one slip of any kind', () => {
    const figure = fc.integer({ min: 10_000, max: 99_999 }).map((n) => `${n / 10_000}`)
    const place = fc.integer({ min: 2, max: 4 })
    fc.assert(
      fc.property(figure, place, (meant, at) => {
        fc.pre(meant.length === 6)
        const dropped = meant.slice(0, at) + meant.slice(at + 1)
        const found = typingSlips(dropped, near(meant), 1e-9)
        expect(found.map((one) => Number(one.meant))).toContain(Number(meant))
      }),
    )
  })

  it('finds nothing where no single slip leads near', () => {
    expect(typingSlips('9.87', near('2.6412'), 0.001)).toEqual([])
  })
})
