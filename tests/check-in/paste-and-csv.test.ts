import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkInCsv, csvCell, csvText } from '../../src/check-in/csv.ts'
import { pasteTable } from '../../src/check-in/paste-table.ts'
import { measuredFromForm } from '../../src/check-in/read-form.ts'
import { type GridTable, tableOf } from '../../src/shop-sheet/fields.ts'
import { check, goodBlock } from './case.ts'

const housing = tableOf('housing') as GridTable

describe('a block of cells from a spreadsheet', () => {
  it.each([
    ['tabs', '2.6412\t2.6411\t2.641\n2.6413\t2.6412\t2.6411'],
    ['semicolons', '2.6412; 2.6411; 2.641\n2.6413; 2.6412; 2.6411'],
    ['spaces', '2.6412 2.6411 2.641\n2.6413 2.6412 2.6411'],
    ['a head of words', 'front up\tleft\tright\n2.6412\t2.6411\t2.641\n2.6413\t2.6412\t2.6411'],
    ['names of rows', 'Main 1\t2.6412\t2.6411\t2.641\r\nMain 2\t2.6413\t2.6412\t2.6411\r\n'],
  ])('is read with %s', (_, text) => {
    expect(pasteTable(housing, text)).toEqual({
      'housing.1.fv': '2.6412',
      'housing.1.fl': '2.6411',
      'housing.1.fr': '2.641',
      'housing.2.fv': '2.6413',
      'housing.2.fl': '2.6412',
      'housing.2.fr': '2.6411',
    })
  })

  it('takes numbered rows when the row is full, and decimal commas', () => {
    const row = ['3', '67,091', '67,092', '67,093', '67,094', '67,095', '67,096'].join('\t')
    expect(pasteTable(housing, row)['housing.3.fv']).toBe('67,091')
    expect(pasteTable(housing, row)['housing.3.rr']).toBe('67,096')
  })

  it('keeps the place of an empty cell, and drops what is beyond the table', () => {
    const fields = pasteTable(housing, '2.64\t\t2.65\t\t\t\t9\t9\t9')
    expect(fields).toEqual({ 'housing.1.fv': '2.64', 'housing.1.fr': '2.65' })
  })

  it('goes into a form without script', () => {
    const form = new URLSearchParams({ 'paste-into': 'housing', paste: '2.64\t2.65' })
    const { fields } = measuredFromForm(form, goodBlock())
    expect(fields['housing.1.fl']).toBe('2.65')
    expect(fields['housing.5.rr']).toBe('2.6412')
  })
})

// Cells are told apart by a pattern; one that tried a long cell again from each place would take
// hours for these, and the test would never end.
describe('a cell of two million digits', () => {
  it.each(['x', ';1', ' in x'])('is no reading, and no trouble, before %s', (end) => {
    const fields = pasteTable(housing, `${'1'.repeat(2_000_000)}${end}`)
    expect(Object.values(fields).filter((text) => text.length > 40)).toEqual([])
  })
})

describe('csv', () => {
  // Source: RFC 4180 for quoting; OWASP, CSV injection: = + - @, tab and carriage return begin formulas.
  it.each([
    ['=1+1', "'=1+1"],
    ['+1+cmd', "'+1+cmd"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['-2+3', "'-2+3"],
    ['  =1', "'  =1"],
    ['\t=1', "'\t=1"],
    ['a;=1+1', "a;'=1+1"],
    [';"=1+1;', '";\'""=1+1;"'],
    ['＝1+1', "'＝1+1"],
    ['\u202e=1', "'\u202e=1"],
    ['−0.0009', '-0.0009'],
    ['-0.5', '-0.5'],
    ['2.6412', '2.6412'],
    ['say "no", twice', '"say ""no"", twice"'],
    ['two\nlines', '"two\nlines"'],
    ['=HYPERLINK("x")', '"\'=HYPERLINK(""x"")"'],
  ])('writes %j as %j', (text, cell) => {
    expect(csvCell(text)).toBe(cell)
  })

  it('never begins a cell with what a spreadsheet would run', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const cell = csvCell(text).replace(/^"/, '')
        expect(/^[=+@\t\r]/.test(cell) || /^-(?!\d+(\.\d+)?$)/.test(cell)).toBe(false)
      }),
    )
  })

  it('holds the readings as typed, and each measure with its limit and verdict', () => {
    const measured = goodBlock({ 'housing.3.fv': '2.6424', blockMark: '=cmd|calc' })
    const text = checkInCsv(measured, check(measured))
    expect(text.startsWith('\ufeff')).toBe(true)
    const lines = text.split('\r\n')
    expect(lines).toContain('Verdict,Send back')
    expect(lines).toContain('"Main 3, front, up and down",2.6424,in')
    expect(
      lines.some((line) => /^Main 3,Out of round,0\.0012 in,at most 0\.0005 in/.test(line)),
    ).toBe(true)
    expect(text).toContain("'=cmd|calc")
  })

  it('ends every row alike', () => {
    expect(csvText([['a', 'b'], ['c']])).toBe('\ufeffa,b\r\nc\r\n')
  })
})
