import { unitSymbol } from './units.ts'

/** What a fraction may be, for a refusal of one that is not. */
export const FRACTIONS = 'fractions of an inch from halves to sixty-fourths, such as 4 1/32 in'

/** "7/16 in", "4 1/32 in", "4-1/32 in"; then whatever stands for the unit. */
const WRITTEN = /^(?:(\d{1,3})(?: +| ?- ?))?(\d{1,2}) ?\/ ?(2|4|8|16|32|64)(?!\d)\s*(.*)$/

/**
 * A length written as inches and a plain fraction of one, exactly; undefined when the
 * text is none. Rulers, drills and bolts are named so; nobody writes millimetres that way.
 */
export function readInchFraction(text: string): { value: number; rest: string } | undefined {
  const [, whole = '0', top, bottom, rest = ''] = WRITTEN.exec(text.trim()) ?? []
  const part = Number(top) / Number(bottom)
  if (!(part < 1) || unitSymbol(rest) !== 'in') return undefined
  return { value: Number(whole) + part, rest }
}

/** What would fit, and what fractions there are when somebody wrote one that is none of them. */
export function withFractions(fits: string, raw: unknown): string {
  return typeof raw === 'string' && /[/\u00bc-\u00be\u2150-\u215e]/.test(raw)
    ? `${fits}; decimals, or ${FRACTIONS}`
    : fits
}
