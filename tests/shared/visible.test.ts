import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { describeFound } from '../../shared/problem.ts'
import { jsonLine, visible } from '../../shared/visible.ts'

// The Unicode Standard, UnicodeData: controls, overrides and isolates of direction, separators of
// lines, signs without width, a half of a pair, a language tag.
const UNSEEN: [number, string][] = [
  [0x0, 'U+0000'],
  [0xa, 'U+000A'],
  [0x1b, 'U+001B'],
  [0x7f, 'U+007F'],
  [0x85, 'U+0085'],
  [0x9b, 'U+009B'],
  [0xad, 'U+00AD'],
  [0x61c, 'U+061C'],
  [0x200b, 'U+200B'],
  [0x200f, 'U+200F'],
  [0x2028, 'U+2028'],
  [0x2029, 'U+2029'],
  [0x202e, 'U+202E'],
  [0x2066, 'U+2066'],
  [0xfeff, 'U+FEFF'],
  [0xd800, 'U+D800'],
  [0xe0041, 'U+E0041'],
]

describe('what nobody can see of a text that is shown back', () => {
  it.each(UNSEEN)('%i stands by its number', (code, name) => {
    const text = `4${String.fromCodePoint(code)}03 in`
    expect(visible(text)).toBe(`4[${name}]03 in`)
    const { problems } = readAnswers({ bore: text })
    expect(problems.map(({ found }) => found)).toEqual([`4[${name}]03 in`])
  })

  it('leaves every other sign as it is', () => {
    for (const text of [
      '4.03 in',
      '½″ – 13',
      '内径 102 mm',
      'قطر ١٠٢',
      'é e\u0301 🔩',
      '680\u00a0kW',
    ]) {
      expect(visible(text)).toBe(text)
    }
  })

  it('also inside keys and values of what is no text', () => {
    expect(describeFound({ 'a\u202eb': 'c\u2028d' })).toBe('{"a[U+202E]b":"c[U+2028]d"}')
  })

  it('is never cut through, and never longer than a problem may show', () => {
    for (let length = 40; length < 70; length++) {
      const shown = describeFound(`${'x'.repeat(length)}\u202e${'y'.repeat(40)}`)
      expect(shown.length).toBeLessThanOrEqual(60)
      expect(shown).toMatch(/^x+(\[U\+202E\]y*)?…$/)
    }
    expect(describeFound('\u202e'.repeat(60))).toMatch(/^(\[U\+202E\])+…$/)
    expect(describeFound(`${'x'.repeat(58)}🔩🔩`)).toBe(`${'x'.repeat(58)}…`)
    expect(describeFound('x'.repeat(60))).toBe('x'.repeat(60))
    expect(describeFound('x'.repeat(61))).toBe(`${'x'.repeat(59)}…`)
  })
})

describe('jsonLine', () => {
  it('is plain to see, and reads back as the same value', () => {
    const value = { path: UNSEEN.map(([code]) => String.fromCodePoint(code)).join('/'), ms: 3 }
    const line = jsonLine(value)
    expect(line).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u)
    expect(JSON.parse(line)).toEqual(value)
  })
})
