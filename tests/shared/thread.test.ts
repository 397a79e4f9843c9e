import { describe, expect, it } from 'vitest'
import { printThread, readThread, type Thread } from '../../shared/thread.ts'

describe('threads', () => {
  // Basic diameters and pitches: ASME B1.1-2003 Table 1 (UNC, UNF), ISO 261:1998 Table 2; from memory.
  it.each([
    ['1/2-13', 12.7, 25.4 / 13],
    ['7/16-14', 11.1125, 25.4 / 14],
    ['3/8-16', 9.525, 25.4 / 16],
    ['9/16-12', 14.2875, 25.4 / 12],
    ['1/2-20', 12.7, 25.4 / 20],
    ['M11x1.25', 11, 1.25],
    ['M12x1.75', 12, 1.75],
    ['M8x1.25', 8, 1.25],
  ])('%s is %d mm by %d mm', (text, diameter, pitch) => {
    const thread = readThread(text) as Thread
    // Inches are exact; the only error is the last bit of a product.
    expect(Math.abs(thread.diameter * 1000 - diameter)).toBeLessThan(1e-12)
    expect(Math.abs(thread.pitch * 1000 - pitch)).toBeLessThan(1e-12)
    expect(printThread(thread)).toBe(text)
  })

  it.each([
    ['7/16-14 UNC', '7/16-14'],
    ['7/16"-14', '7/16-14'],
    ['7 / 16 x 20 unf', '7/16-20'],
    ['.500-13', '1/2-13'],
    ['0.4375-14', '7/16-14'],
    ['14/32-14', '7/16-14'],
    ['m11 X 1.25', 'M11x1.25'],
    ['M11×1.25', 'M11x1.25'],
    ['M10*1.5', 'M10x1.5'],
    ['  1/2-13  ', '1/2-13'],
  ])('“%s” is printed %s', (text, printed) => {
    expect(printThread(readThread(text) as Thread)).toBe(printed)
  })

  it.each([
    '',
    'M11',
    'M4x0.7',
    'M24x3',
    'M11x0.25',
    'M11x3',
    '1/0-13',
    '0/2-13',
    '1/2-3',
    '1/2-99',
    '2-4.5',
    '1-8',
    '1/2',
    '1/2-13-13',
    'M11x1.25; drop',
    `M11x1.${'2'.repeat(60)}`,
  ])('“%s” is no main cap’s thread', (text) => expect(readThread(text)).toBeUndefined())
})
