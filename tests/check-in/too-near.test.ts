import { describe, expect, it } from 'vitest'
import { mainsDrawing } from '../../src/pages/check-in-drawing.ts'
import { mainResults } from '../../src/pages/check-in-results.ts'
import { check, goodBlock, measure, shopRules } from './case.ts'

/** Both walls of a main a tenth of a thousandth thinner: 0.00235 in of clearance, worked out. */
const THIN = { 'shell.3.uc': '.0952', 'shell.3.lc': '.0952' }

describe('what a clearance may be off by', () => {
  // Source: JCGM 100:2008 (GUM), equation 10, and 4.2.3 and 5.2.4 from memory, by hand with the
  // gauges of rules/limits.json, in hundred-thousandths of an inch squared. Bore gauge 20, of which
  // 10 repeats: 300 set + 100/2 for a reading at each end. Ball micrometer 10, of which 5 repeats:
  // 75 set + 25/2 for two walls, both off alike, so 2² times. Micrometer the same over four: 75 + 25/4.
  const uncertainty = (main: number, changes: Readonly<Record<string, string>> = {}) =>
    measure(check(goodBlock(changes)), 'clearance', main).uncertainty

  it('adds up bore, two walls off by one setting, and journal', () => {
    const expected = Math.sqrt(350 + 4 * 87.5 + 81.25)
    expect(Math.round(expected)).toBe(28)
    expect(uncertainty(1)).toBe('±0.00028\u00a0in')
  })

  it('is more where one wall stands for both, and less with a better gauge', () => {
    expect(Math.round(Math.sqrt(350 + 4 * 100 + 81.25))).toBe(29)
    expect(uncertainty(1, { 'shell.1.lc': '' })).toBe('±0.00029\u00a0in')
    // Half of each: a quarter of the shell's part.
    expect(Math.round(Math.sqrt(350 + 350 / 4 + 81.25))).toBe(23)
    expect(uncertainty(1, { 'gauge-shell': '.00005' })).toBe('±0.00023\u00a0in')
  })

  it('is what the gauge repeats to, twice, where it was set on the journal', () => {
    expect(Math.round(Math.sqrt(100 + 100))).toBe(14)
    expect(uncertainty(1, { 'shell.1.c': '.0021' })).toBe('±0.00014\u00a0in')
  })
})

// That a bore gauge in the installed shells is held better than walls added up, and is what to do
// when these cannot tell: common practice, no published source.
describe('a clearance whose limit lies within what the readings may be off', () => {
  it('is a verdict of its own, says how it reads, and asks for a direct reading', () => {
    const { overall, mains } = check(goodBlock(THIN))
    expect(overall.title).toBe('Too near to tell: main 3')
    expect(mains.map(({ verdict }) => verdict)).toEqual([
      'pass',
      'pass',
      'too-near',
      'pass',
      'pass',
    ])
    // 0.00075 and 0.001 of a journal of 2.44845 in; four decimals of each would give 0.0000 or 0.0001.
    expect(mains[2]?.reasons.join(' ')).toMatch(
      /is 0\.00235.in.* 0\.00184 to 0\.00245.in.* 0\.00010.in within it/,
    )
    expect(mains[2]?.reasons.join(' ')).toContain('±0.00028\u00a0in: too near to tell')
    expect(overall.advice).toEqual([expect.stringMatching(/^Measure the clearance directly/)])
    expect(overall.advice[0]).toContain('±0.00014\u00a0in')
  })

  it('says on which side it reads', () => {
    const beyond = check(goodBlock({ 'shell.3.uc': '.0951', 'shell.3.lc': '.0951' }))
    expect(measure(beyond, 'clearance', 3).verdict).toBe('too-near')
    expect(measure(beyond, 'clearance', 3).reason).toMatch(/As read that is 0\.00010.in over/)
  })

  it('passes when the same is read directly, and is not asked to be once more when it cannot', () => {
    const read = (text: string) => check(goodBlock({ ...THIN, 'shell.3.c': text }))
    expect(read('.0023').overall.verdict).toBe('pass')
    const near = measure(read('.0024'), 'clearance', 3)
    expect(near.verdict).toBe('too-near')
    expect(near.advice).toMatch(/^Set the gauge anew/)
  })

  it('waits for a reading that is in question', () => {
    const { overall } = check(goodBlock({ ...THIN, 'housing.4.fl': '2.412' }))
    expect(overall.title).toBe('Look again: main 4')
  })

  it('has its own mark in the drawing and the table', () => {
    const report = check(goodBlock(THIN))
    const drawing = String(mainsDrawing(report, 'us'))
    expect(drawing).toContain('main 3 too near to tell')
    expect(drawing.match(/>±</g)).toHaveLength(1)
    expect(drawing).not.toContain('>?<')
    expect(String(mainResults(report, shopRules.checkIn))).toMatch(
      /Main 3<\/span> <span class="badge caution">Too near to tell/,
    )
  })
})
