/** Rough advance widths of the serif in ems: enough to break lines, a little wide on purpose. */
const NARROW = /[iljtfrI.,:;'’‘“”|!()\-/]/
const WIDE = /[mwMW%@—]/
const CAPITAL = /[A-Z0-9+=]/

/** About how wide a text is, ems. */
export function roughWidth(text: string): number {
  let width = 0
  for (const sign of text) {
    if (sign === ' ' || sign === '\u00a0') width += 0.26
    else if (NARROW.test(sign)) width += 0.34
    else if (WIDE.test(sign)) width += 0.88
    else width += CAPITAL.test(sign) ? 0.62 : 0.53
  }
  return width
}

/**
 * Words to lines.
 *
 * @param ems - width of a line, ems
 * @param most - lines at most; the last one then ends in an ellipsis
 */
export function wrapWords(text: string, ems: number, most: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    const longer = last === undefined ? word : `${last} ${word}`
    if (last === undefined || roughWidth(longer) > ems) lines.push(word)
    else lines[lines.length - 1] = longer
  }
  if (lines.length <= most) return lines
  const kept = lines.slice(0, most)
  const words = (kept[most - 1] as string).split(' ')
  while (words.length > 1 && roughWidth(`${words.join(' ')} …`) > ems) words.pop()
  kept[most - 1] = `${words.join(' ').replace(/[.,;:]$/, '')} …`
  return kept
}
