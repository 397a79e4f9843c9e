import { describe, expect, it } from 'vitest'
import { apartFromFellows } from '../../src/check-in/fellows.ts'
import { check, engineOf, goodBlock, measure, shopRules } from './case.ts'

const MM = 0.001
const { fellows } = shopRules
const JOURNAL = ['fv', 'fh', 'rv', 'rh']

/** Journals of five mains, mm, nothing else. */
function journals(...sizes: readonly number[]) {
  const fields = sizes.flatMap((size, place) =>
    JOURNAL.map((column) => [`journal.${place + 1}.${column}`, `${size}`] as const),
  )
  return { unit: 'mm' as const, fields: Object.fromEntries(fields) }
}

describe('apartFromFellows', () => {
  const places = (...values: (number | undefined)[]) =>
    apartFromFellows(
      values.map((value) => value && value * MM),
      fellows,
    ).map(({ place }) => place)

  it('finds the one that is 0.05 mm off, either way, at any place', () => {
    for (let place = 0; place < 5; place++) {
      for (const off of [0.05, -0.05]) {
        const values = Array<number>(5).fill(62.19)
        values[place] = 62.19 + off
        expect(places(...values)).toEqual([place])
      }
    }
  })

  it('is not led astray by a second odd one, as a mean would be', () => {
    expect(places(62.19, 62.24, 62.19, 62.69, 62.19)).toEqual([1, 3])
  })

  it('picks none among values that scatter anyway, nor where too few can tell', () => {
    expect(places(62.11, 62.19, 62.15, 62.23, 62.17)).toEqual([])
    expect(places(62.19, 62.24, undefined)).toEqual([])
    expect(places(62.19, 62.19, 62.24, 62.24)).toEqual([])
  })

  it('leaves what is within a thousandth of an inch alone', () => {
    expect(places(62.19, 62.19, 62.19 + 0.0254, 62.19, 62.19)).toEqual([])
    expect(places(62.19, 62.19, 62.19 + 0.0256, 62.19, 62.19)).toEqual([2])
  })
})

describe('a main that is off from its fellows by 0.05 mm', () => {
  it.each(['housing', 'journal'])('is asked to be measured again: %s', (table) => {
    const columns = table === 'housing' ? ['fv', 'fl', 'fr', 'rv', 'rl', 'rr'] : JOURNAL
    const size = table === 'housing' ? 2.6412 : 2.44845
    const off = columns.map((column) => [`${table}.3.${column}`, (size - 0.05 / 25.4).toFixed(5)])
    const { housingLow, housingHigh, ...fields } = goodBlock(Object.fromEntries(off)).fields
    const { overall, mains, odd } = check({ unit: 'in', fields })
    expect(odd.map((one) => [one.measure, one.main])).toEqual([[table, 3]])
    // The clearance follows from it: it is not sent back before the measure is known.
    expect(overall.title).toBe('Look again: main 3')
    expect(overall.reasons.join(' ')).toContain('0.0020\u00a0in under the middle of the mains')
    expect(mains[2]?.verdict).toBe('look-again')
    expect(mains[0]?.verdict).toBe('pass')
  })

  it('is asked for a clearance read straight', () => {
    const straight = [1, 2, 3, 4, 5].map((main) => [`shell.${main}.c`, '.0021'])
    const fields = { ...Object.fromEntries(straight), 'shell.2.c': '.0041' }
    const { odd, overall } = check(goodBlock(fields))
    expect(odd.map((one) => [one.measure, one.main])).toEqual([['clearance', 2]])
    expect(overall.title).toBe('Look again: main 2')
  })

  it('is no plain pass where nothing but journals was measured', () => {
    const report = check(journals(62.19, 62.19, 62.14, 62.19, 62.19))
    expect(report.overall.verdict).toBe('look-again')
    const line = measure(report, 'journal-beside-fellows', 3)
    expect(line).toMatchObject({ verdict: 'look-again', source: { kind: 'practice' } })
    expect(Math.abs(line.value / MM + 0.05)).toBeLessThan(1e-6)
  })

  it('goes back all the same where it is outside the person’s own limits', () => {
    const columns = ['fv', 'fl', 'fr', 'rv', 'rl', 'rr']
    const larger = columns.map((column) => [`housing.4.${column}`, '2.6440'])
    const { odd, mains } = check(goodBlock(Object.fromEntries(larger)))
    expect(odd.map((one) => one.main)).toEqual([4])
    expect(mains[3]?.verdict).toBe('send-back')
  })

  it('stands once it was measured again, is said even then, and asked anew at another size', () => {
    const first = journals(62.19, 62.19, 62.14, 62.19, 62.19)
    const stands = check(first).odd[0]?.confirm ?? ''
    const again = check({ ...first, fields: { ...first.fields, stands } })
    expect(again.overall.verdict).toBe('pass')
    expect(again.overall.title).toContain('main 3 stands apart from the others')
    expect(again.mains[2]?.reasons.join(' ')).toContain('It was measured again and stands.')
    const other = journals(62.19, 62.19, 62.13, 62.19, 62.19)
    expect(check({ ...other, fields: { ...other.fields, stands } }).overall.verdict).toBe(
      'look-again',
    )
  })

  it('asks nothing of an engine whose mains agree, in any layout', () => {
    for (const layout of ['inline-3', 'v6-60', 'v8-cross-plane', 'flat-6']) {
      const engine = engineOf({ layout, mainJournalDiameter: '2.44845in' })
      expect(check(goodBlock(), engine).odd).toEqual([])
    }
  })
})
