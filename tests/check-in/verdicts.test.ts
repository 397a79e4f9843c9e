import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeBy, type Measure } from '../../src/check-in/judge.ts'
import { mainsDrawing } from '../../src/pages/check-in-drawing.ts'
import { mainResults } from '../../src/pages/check-in-results.ts'
import type { Limit } from '../../src/shop-sheet/limits.ts'
import { check, engineOf, goodBlock, measure, shopRules } from './case.ts'

const limit = (low: number, high: number): Limit => ({
  id: 'housing-size',
  title: 'Housing bore',
  low,
  high,
  known: true,
  because: 'for a test',
  ifLow: 'too small',
  ifHigh: 'too large',
  source: { kind: 'practice', cite: '' },
  goesBack: 'block',
})
const judge = (by: Limit, measure: Measure) => judgeBy(by, measure, shopRules.checkIn)
const show = (value: number) => value.toFixed(2)

describe('judge', () => {
  // Source: ISO 14253-1 decision rules (from memory): conformity is proved inside the limits
  // narrowed by U, non-conformity outside the limits widened by U.
  it.each([
    [5, 'pass'],
    [9, 'pass'],
    [9.5, 'too-near'],
    [10.5, 'too-near'],
    [11, 'too-near'],
    [11.01, 'send-back'],
    [-1.01, 'send-back'],
  ])('calls %d within 0 to 10 ±1 %s', (value, verdict) => {
    expect(judge(limit(0, 10), { value, uncertainty: 1, show }).verdict).toBe(verdict)
  })

  it('sends nobody back to a gauge that is too coarse for the limit', () => {
    // ±3 on each side leave 4 of 10 to pass in; ±2 leave 6.
    const coarse = judge(limit(0, 10), { value: 8, uncertainty: 3, show })
    const fine = judge(limit(0, 10), { value: 9, uncertainty: 2, show })
    expect([coarse.verdict, fine.verdict]).toEqual(['too-near', 'too-near'])
    expect(coarse.advice).toMatch(/finer gauge/)
    expect(fine.advice).toMatch(/measure again/)
  })

  it('is as bad as the worse of least and greatest', () => {
    const both = { value: 5, least: -3, greatest: 10.2, uncertainty: 0.5, show }
    const { verdict, reason, advice } = judge(limit(0, 10), both)
    expect(verdict).toBe('send-back')
    expect(reason).toContain('-3.00')
    expect(advice).toBe('too small')
  })

  it('never passes what a worse gauge would pass and a better would not', () => {
    const one = fc.double({ min: -5, max: 15, noNaN: true })
    fc.assert(
      fc.property(one, fc.double({ min: 0, max: 3, noNaN: true }), (value, uncertainty) => {
        const fine = judge(limit(0, 10), { value, uncertainty: 0, show }).verdict
        const coarse = judge(limit(0, 10), { value, uncertainty, show }).verdict
        expect([fine, 'too-near']).toContain(coarse)
      }),
    )
  })

  it('does not judge where no limit is known', () => {
    const open = { ...limit(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY), known: false }
    const { verdict, reason } = judge(open, { value: 5, uncertainty: 1, show })
    expect(verdict).toBeNull()
    expect(reason).toContain('service data')
  })
})

describe('a block that came back', () => {
  it('passes when every main is as it should be', () => {
    const { overall, mains, suspects, notes } = check(goodBlock())
    expect(overall).toMatchObject({ verdict: 'pass', complete: true })
    expect(mains.map(({ verdict }) => verdict)).toEqual(Array(5).fill('pass'))
    expect([suspects, notes]).toEqual([[], []])
  })

  it('names the one bad main, and says why', () => {
    const { overall, mains } = check(
      goodBlock({ 'housing.3.fv': '2.6424', 'housing.3.rv': '2.6424' }),
    )
    expect(overall.verdict).toBe('send-back')
    expect(overall.title).toBe('Send back: main 3')
    expect(overall.reasons.join(' ')).toMatch(/Main 3\. Out of round is 0\.0012.in/)
    expect(overall.reasons.every((reason) => reason.startsWith('Main 3.'))).toBe(true)
    expect(mains.map(({ verdict }) => verdict)).toEqual([
      'pass',
      'pass',
      'send-back',
      'pass',
      'pass',
    ])
  })

  it('puts a step on the main that is out of line, not on its neighbours', () => {
    for (const main of [2, 3, 4]) {
      const { mains } = check(goodBlock({ [`line.${main}.y`]: '-.003' }))
      const back = mains.filter(({ verdict }) => verdict === 'send-back').map((one) => one.main)
      expect(back).toEqual([main])
    }
  })

  it('says what is missing and does not call it a pass of all', () => {
    const good = goodBlock()
    const fields = Object.entries(good.fields).filter(([name]) => !name.startsWith('housing.5'))
    const { overall } = check({ ...good, fields: Object.fromEntries(fields) })
    expect(overall).toMatchObject({ verdict: 'pass', complete: false })
    expect(overall.title).toContain('main 5 is not measured')
  })

  it('goes by the person’s own limits, and says so', () => {
    const tight = check(goodBlock({ clearanceLow: '.0025', clearanceHigh: '.0030' }))
    const clearance = measure(tight, 'clearance', 1)
    expect(clearance.verdict).toBe('send-back')
    expect(clearance.source).toEqual({ kind: 'said', cite: 'your service data' })
    expect(measure(check(goodBlock()), 'clearance', 1).source.kind).toBe('practice')
  })

  it('counts a coarser gauge against the part', () => {
    const oval = { 'housing.1.fv': '2.64155', 'housing.1.rv': '2.64155', housingHigh: '2.642' }
    expect(measure(check(goodBlock(oval)), 'housing-out-of-round', 1).verdict).toBe('pass')
    const coarse = check(goodBlock({ ...oval, 'gauge-bore': '.0005' }))
    expect(measure(coarse, 'housing-out-of-round', 1).verdict).toBe('too-near')
  })

  it('gives the same in millimetres', () => {
    const metric = Object.fromEntries(
      Object.entries(goodBlock({ 'housing.3.fv': '2.6424' }).fields).map(([name, text]) => [
        name,
        `${Number(text) * 25.4}`.slice(0, 16),
      ]),
    )
    const inches = check(goodBlock({ 'housing.3.fv': '2.6424' }))
    const found = check({ unit: 'mm', fields: metric })
    expect(found.mains.map(({ verdict }) => verdict)).toEqual(
      inches.mains.map(({ verdict }) => verdict),
    )
    expect(found.overall.title).toBe(inches.overall.title)
  })

  it('lets a clearance read straight go before the one worked out, with its finer gauge', () => {
    const near = { 'shell.2.c': '.0023', 'shell.3.uc': '.0952', 'shell.3.lc': '.0952' }
    const report = check(goodBlock(near))
    const direct = measure(report, 'clearance', 2)
    expect(Math.abs(direct.value / 0.0254 - 0.0023)).toBeLessThan(1e-9)
    expect(direct.verdict).toBe('pass')
    // The same 0.0023 in out of five readings is too near to the limit to tell.
    expect(measure(report, 'clearance', 3).verdict).toBe('too-near')
  })

  it('takes crush off the shells into account, and finds a loose one', () => {
    const stands = { 'shell.1.uo': '.001', 'shell.1.lo': '.001' }
    const big = check(goodBlock({ ...stands, ...housing(1, '2.6424') }))
    // Half of the circumference grew by π/2 × 0.00135 in, more than the crush that there was.
    const left = measure(big, 'overstand', 1)
    expect(Math.abs(left.value / 0.0254 - (0.001 - (Math.PI / 2) * 0.00135))).toBeLessThan(5e-6)
    expect(left.verdict).toBe('send-back')
    const good = measure(check(goodBlock(stands)), 'clearance', 1).value
    expect(good).toBeGreaterThan(measure(check(goodBlock()), 'clearance', 1).value)
  })

  it('says in words what the mechanics refuse, and keeps the rest', () => {
    const { notes, overall } = check(
      goodBlock({
        'axis.1.told': '.3',
        drive: 'chain',
        driveCentres: '5',
        chainPitch: '.375',
        crankTeeth: '21',
        camTeeth: '42',
      }),
    )
    expect(notes).toContainEqual(
      expect.stringMatching(/^The timing chain cannot be worked out: its readings .* a slip\.$/),
    )
    expect(overall.verdict).toBe('send-back')
  })

  it('works for every layout', () => {
    for (const layout of ['inline-3', 'inline-6', 'v6-60', 'v12-60', 'flat-4', 'flat-6']) {
      const engine = engineOf({ layout, mainJournalDiameter: '2.44845in' })
      const report = check(goodBlock(), engine)
      expect(report.mains).toHaveLength(engine.mains)
      expect(report.mains[0]?.verdict).toBe('pass')
    }
  })
})

function housing(main: number, text: string): Record<string, string> {
  const columns = ['fv', 'fl', 'fr', 'rv', 'rl', 'rr']
  return Object.fromEntries(columns.map((column) => [`housing.${main}.${column}`, text]))
}

describe('a pass', () => {
  it('names only what has no limit of its own', () => {
    expect(check(goodBlock()).overall.title).toMatch(/not judged: journal$/)
  })

  it('says what had no limit, and is none of every measure', () => {
    const { verdict, title } = check(goodBlock({ housingLow: '', housingHigh: '' })).overall
    expect(verdict).toBe('pass')
    expect(title).toMatch(/^Pass so far: .*not judged: .*housing bore/)
  })
})

// Which part is mended for which measure: common practice, no published source.
describe('what goes back', () => {
  const thin = Object.fromEntries(
    ['fv', 'fh', 'rv', 'rh'].map((column) => [`journal.2.${column}`, '2.4460']),
  )
  const journalLimits = { journalLow: '2.4480', journalHigh: '2.4490' }

  it('is the crank where a journal is outside its limits, though the clearance is too', () => {
    const { overall, mains } = check(goodBlock({ 'journal.1.fv': '2.4465' }))
    expect(overall.title).toBe('Send back the crank, not the block: journal 1')
    expect(overall.verdict).toBe('send-back')
    expect(mains[0]?.goesBack).toEqual({ block: false, crank: true })
    const small = check(goodBlock({ ...thin, ...journalLimits }))
    expect(measure(small, 'clearance', 2).verdict).toBe('send-back')
    expect(small.overall.title).toBe('Send back the crank, not the block: journal 2')
  })

  it('is both where a bore is out too, and the block where only its own measures are', () => {
    const both = check(goodBlock({ ...thin, ...journalLimits, ...housing(3, '2.6424') }))
    expect(both.overall.title).toBe('Send back: main 3; and the crank: journal 2')
    expect(check(goodBlock(housing(3, '2.6424'))).overall.title).toBe('Send back: main 3')
  })
})

describe('a main whose size nothing judges', () => {
  const bores = Object.assign({}, ...[1, 2, 3, 4, 5].map((main) => housing(main, '2.6906')))
  const shown = (measured: Parameters<typeof check>[0]) => {
    const report = check(measured)
    return {
      tiles: String(mainsDrawing(report, 'us')),
      rows: String(mainResults(report, shopRules.checkIn)),
      report,
    }
  }

  it('shows no bare pass where only housings were read and their limits are not known', () => {
    const { tiles, rows, report } = shown({ unit: 'in', fields: bores })
    expect(report.mains.map(({ verdict, sizeOpen }) => [verdict, sizeOpen])).toEqual(
      Array(5).fill(['pass', true]),
    )
    expect(tiles).not.toMatch(/>pass</)
    expect(tiles).toContain('main 1 shape passes; size not judged')
    expect(rows.match(/Main \d<\/span> <span[^>]*>Shape passes; size not judged/g)).toHaveLength(5)
    expect(rows).not.toMatch(/Main \d<\/span> <span[^>]*>Pass</)
  })

  it('passes with the limits said', () => {
    const limits = { housingLow: '2.6900', housingHigh: '2.6910' }
    const { tiles, rows } = shown({ unit: 'in', fields: { ...bores, ...limits } })
    expect(tiles.match(/>pass</g)).toHaveLength(5)
    expect(rows).not.toContain('size not judged')
  })

  it('is judged by its clearance where only the journal has no limits', () => {
    expect(check(goodBlock()).mains.map(({ sizeOpen }) => sizeOpen)).toEqual(Array(5).fill(false))
  })
})
