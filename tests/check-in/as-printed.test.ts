import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkIn } from '../../src/check-in/check-in.ts'
import { checkInCsv } from '../../src/check-in/csv.ts'
import type { Judged } from '../../src/check-in/judge.ts'
import { mainResults } from '../../src/pages/check-in-results.ts'
import { check, engineOf, goodBlock, measure, shopRules } from './case.ts'

const numbers = (text: string) =>
  [...text.replaceAll('−', '-').matchAll(/-?\d+(?:\.\d+)?/g)].map(([one]) => Number(one))

/** The verdict that a person comes to with the printed figures and a pencil. */
function byPencil({ text, limit, uncertainty }: Pick<Judged, 'text' | 'limit' | 'uncertainty'>) {
  const [found = Number.NaN, within = Number.NaN] = [text, uncertainty].map(
    (one) => numbers(one)[0],
  )
  const ends = numbers(limit)
  const [low, high] = limit.startsWith('at most')
    ? [Number.NEGATIVE_INFINITY, ends[0]]
    : limit.startsWith('at least')
      ? [ends[0], Number.POSITIVE_INFINITY]
      : ends
  const inside = Math.min(found - (low ?? Number.NaN), (high ?? Number.NaN) - found)
  const tenth = 1e-9
  if (inside - within >= -tenth) return 'pass'
  return -inside - within > tenth ? 'send-back' : 'too-near'
}

/** Bores by the gauge at 2.6410 and 2.6411 in, journals of 2.4490 in, shells of 0.0950 in. */
function sound(changes: Readonly<Record<string, string>> = {}) {
  const fields: Record<string, string> = {}
  for (let main = 1; main <= 5; main++) {
    for (const column of ['fv', 'fr', 'rl']) fields[`housing.${main}.${column}`] = '2.6410'
    for (const column of ['fl', 'rv', 'rr']) fields[`housing.${main}.${column}`] = '2.6411'
    for (const column of ['fv', 'fh', 'rv', 'rh']) fields[`journal.${main}.${column}`] = '2.4490'
    for (const column of ['uc', 'lc']) fields[`shell.${main}.${column}`] = '.0950'
  }
  return { unit: 'in' as const, fields: { ...fields, ...changes } }
}
const engine = engineOf({ layout: 'v8-cross-plane', mainJournalDiameter: '2.449in' })

describe('the printed figures of a judged measure', () => {
  // 2.64105 less two shells of 0.0950 and a journal of 2.4490; 0.00075 and 0.001 of the journal.
  it('show why a clearance of 0.00205 in is too near to a limit of 0.00184 in', () => {
    const report = check(sound(), engine)
    const found = measure(report, 'clearance', 1)
    expect(found).toMatchObject({
      verdict: 'too-near',
      text: '0.00205\u00a0in',
      limit: '0.00184 to 0.00245\u00a0in',
      uncertainty: '±0.00028\u00a0in',
    })
    expect(found.reason).toContain('0.00021\u00a0in within it')
    expect(checkInCsv(sound(), report)).toContain(
      'Main 1,"Vertical bearing clearance, cold",0.00205 in,0.00184 to 0.00245 in,±0.00028 in,Too near',
    )
    const page = String(mainResults(report, shopRules.checkIn))
    expect(page).toContain('>0.00205\u00a0in<')
    // No noughts that nobody worked out: the shapes were read to a tenth of a thousandth.
    expect(page).toContain('>at most 0.0005\u00a0in<')
  })

  it('lead to its verdict, whatever was read and in whichever unit it is shown', () => {
    const away = (least: number, greatest: number) =>
      fc.integer({ min: least, max: greatest }).map((one) => one / 10_000)
    const cells = fc.record({
      bore: away(26_400, 26_425),
      rear: away(26_400, 26_425),
      journal: away(24_480, 24_495),
      wall: away(948, 954),
    })
    fc.assert(
      fc.property(
        cells,
        fc.constantFrom('us', 'metric'),
        ({ bore, rear, journal, wall }, units) => {
          const fields: Record<string, string> = { housingLow: '2.6406', housingHigh: '2.6415' }
          for (const c of ['fv', 'fl', 'fr']) fields[`housing.2.${c}`] = `${bore}`
          for (const c of ['rv', 'rl', 'rr']) fields[`housing.2.${c}`] = `${rear}`
          for (const c of ['fv', 'fh', 'rv', 'rh']) fields[`journal.2.${c}`] = `${journal}`
          for (const c of ['uc', 'lc']) fields[`shell.2.${c}`] = `${wall}`
          const report = checkIn(goodBlock(fields), engine, shopRules, units)
          for (const one of report.mains[1]?.judged ?? []) {
            if (one.verdict === null || one.id.endsWith('beside-fellows')) continue
            const verdict = one.reason.includes('follows from a measure')
              ? 'send-back'
              : one.verdict
            expect([one.title, byPencil(one)]).toEqual([one.title, verdict])
          }
        },
      ),
    )
  })
})
