import { visible } from './visible.ts'

/** Something a person gave that cannot be used: data first, wording last. */
export interface Problem {
  /** Where it is: a fact key, or a path such as `answers.bore.unit`. */
  readonly field: string
  readonly code:
    | 'unknown-fact'
    | 'unknown-field'
    | 'duplicate'
    | 'not-a-choice'
    | 'not-a-number'
    | 'unit-missing'
    | 'unit-unknown'
    | 'out-of-range'
    | 'currency-missing'
    | 'not-a-thread'
    | 'wrong-shape'
    | 'range-reversed'
    | 'too-long'
  /** What was found, shortened, all of it to be seen; never echoed unescaped. */
  readonly found: string
  /** What would fit, in words. */
  readonly fits: string
}

const LONGEST_ECHO = 60

/** A short text of any value, safe to store in a {@link Problem}: what nobody could see stands by its number. */
export function describeFound(value: unknown): string {
  // JSON has no word for NaN and the infinities; it would call them null.
  const text =
    typeof value === 'string' || typeof value === 'number'
      ? String(value)
      : (JSON.stringify(value) ?? String(value))
  const signs = Array.from(text.slice(0, 2 * LONGEST_ECHO), visible)
  const whole = signs.join('')
  if (text.length <= LONGEST_ECHO && whole.length <= LONGEST_ECHO) return whole
  let shown = ''
  for (const sign of signs) {
    if (shown.length + sign.length >= LONGEST_ECHO) break
    shown += sign
  }
  return `${shown}…`
}

/** The problem in one sentence. */
export function problemSentence({ field, found, fits }: Problem): string {
  return `${field}: found ${found === '' ? 'nothing' : `“${found}”`}; ${fits}`
}
