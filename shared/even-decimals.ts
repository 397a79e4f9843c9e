/** A number, the second end of a range that shares its unit, and the unit. */
const WITH_UNIT =
  /(?<![\d.,/])(\d[\d,]*)(?:\.(\d+))?(?=( to [\d,.]+)?(?:\u00a0([^\s,;:)]+)|([°%])))/g
const BARE = /^(−?\d[\d,]*)(?:\.(\d+))?$/

/**
 * Texts of one column or list with as many decimals for each figure as the finest of its unit has:
 * "4 in" beside "3.75 in" becomes "4.00 in". Figures line up, and none looks less certain than its
 * neighbour for a nought that fell away. Texts without figures stay as they are.
 *
 * @param texts - as printed, a no-break space before each unit
 * @param units - only figures in these units, such as lengths in a list of unlike quantities;
 *   all, and figures without a unit, when left out
 */
export function evenDecimals(texts: readonly string[], units?: readonly string[]): string[] {
  const most = new Map<string, number>()
  const note = (unit: string, part = '') =>
    most.set(unit, Math.max(most.get(unit) ?? 0, part.length))
  for (const text of texts) figures(text, note)
  const padded = (unit: string, whole: string, part = ''): string => {
    const places = units && !units.includes(unit) ? part.length : (most.get(unit) ?? 0)
    return places === 0 ? whole : `${whole}.${part.padEnd(places, '0')}`
  }
  return texts.map((text) =>
    text
      .replace(WITH_UNIT, (_, whole: string, part, _range, unit, sign) =>
        padded(unit ?? sign, whole, part),
      )
      .replace(BARE, (_, whole: string, part) => padded('', whole, part)),
  )
}

/** Call with unit and decimals of every figure in a text. */
function figures(text: string, note: (unit: string, part?: string) => void): void {
  for (const [, , part, , unit, sign] of text.matchAll(WITH_UNIT)) note(unit ?? sign ?? '', part)
  const bare = BARE.exec(text)
  if (bare) note('', bare[2])
}

/** The units of lengths as pages print them. */
export const LENGTHS = ['in', 'mm'] as const
