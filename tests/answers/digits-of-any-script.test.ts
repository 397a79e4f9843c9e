import { describe, expect, it } from 'vitest'
import { normaliseText, originalSpan } from '../../src/answers/normalise-text.ts'
import { readMessage } from '../support/reader.ts'

/** Zeros of some scripts that have their own decimal digits (Unicode Character Database, Nd). */
const ZEROS: readonly [string, number][] = [
  ['Arabic-Indic', 0x0660],
  ['Extended Arabic-Indic', 0x06f0],
  ['Devanagari', 0x0966],
  ['Bengali', 0x09e6],
  ['Thai', 0x0e50],
  ['Tibetan', 0x0f20],
  ['fullwidth', 0xff10],
  ['Osmanya, beyond the first plane', 0x104a0],
  ['Sora Sompeng, beyond the first plane', 0x110f0],
  ['mathematical bold', 0x1d7ce],
  ['mathematical monospace, in the same run', 0x1d7f6],
  ['Adlam, beyond the first plane', 0x1e950],
]

/** The same text with the digits of another script. */
const inDigits = (text: string, zero: number) =>
  text.replace(/\d/g, (digit) => String.fromCodePoint(zero + Number(digit)))

describe('digits of another script', () => {
  it.each(ZEROS)('%s are the digits they are', (_, zero) => {
    expect(normaliseText(inDigits('0123456789', zero)).text).toBe('0123456789')
  })

  it.each(ZEROS)('%s are read, with the place they stand at', (_, zero) => {
    const bore = inDigits('4.03', zero)
    const text = `🔧 bore ${bore} in, ${inDigits('9.5', zero)}:${inDigits('1', zero)}`
    const { facts, spans, unclear } = readMessage(text)
    expect(facts).toEqual({ bore: { value: 4.03, unit: 'in' }, compressionRatio: 9.5 })
    expect(unclear).toEqual([])
    const span = spans.find(({ key }) => key === 'bore')
    expect(text.slice(span?.start, span?.end)).toContain(bore)
  })

  it('with the decimal, thousands and percent signs of the Arabic script', () => {
    const { facts } = readMessage('bore ١٠٢٫٤ mm, spin it to ٦٬٥٠٠ rpm, tax ٨٪')
    expect(facts).toMatchObject({
      bore: { value: 102.4, unit: 'mm' },
      peakRpm: { value: 6500, unit: 'rpm' },
      taxRate: { value: 8, unit: '%' },
    })
  })

  it('that belong to nothing are said to be unread, as others are', () => {
    const { unclear } = readMessage('bore 4.03 in, call ٥٥٥١٢٣٤')
    expect(unclear.map(({ text }) => text).join()).toContain('٥٥٥١٢٣٤')
  })

  it('lead back to both halves of a digit beyond the first plane', () => {
    const text = `x${String.fromCodePoint(0x104a4)}y`
    const plain = normaliseText(text)
    expect(plain.text).toBe('x4y')
    expect(originalSpan(plain, 1, 2)).toEqual({ start: 1, end: 3 })
  })
})
