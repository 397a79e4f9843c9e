/**
 * Advance widths of the semibold serif in ems, measured on the bundled font and rounded
 * up to twentieths: enough to break lines by.
 */
const WIDTHS: readonly (readonly [number, string])[] = [
  [0.25, " '’\u00a0"],
  [0.3, '.,:;/'],
  [0.35, 'fijlt-()'],
  [0.4, 'I'],
  [0.45, 'rs'],
  [0.5, 'cz'],
  [0.55, '0123456789aegS+'],
  [0.6, 'bdkopqvxyFL'],
  [0.65, 'hnuBCEPT'],
  [0.7, 'ADRV'],
  [0.75, 'GKNOU'],
  [0.85, 'wHQ'],
  [0.95, 'mM%'],
  [1, 'W'],
]
const OTHER = 0.65
const widthOf = new Map(WIDTHS.flatMap(([width, signs]) => [...signs].map((sign) => [sign, width])))

/** About how wide a text is, ems. */
export function roughWidth(text: string): number {
  return [...text].reduce((width, sign) => width + (widthOf.get(sign) ?? OTHER), 0)
}

/**
 * Words to lines of about equal length, so that none is left with one word.
 *
 * @param ems - width of a line, ems
 * @param most - lines at most; the last one then ends in an ellipsis
 */
export function wrapWords(text: string, ems: number, most: number): string[] {
  let lines = filled(text, ems)
  if (lines.length > most) return cut(lines, ems, most)
  for (let width = ems - 0.5; width > 0; width -= 0.5) {
    const narrower = filled(text, width)
    if (narrower.length > lines.length || narrower.some((one) => roughWidth(one) > width)) break
    lines = narrower
  }
  return lines
}

function filled(text: string, ems: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    const longer = last === undefined ? word : `${last} ${word}`
    if (last === undefined || roughWidth(longer) > ems) lines.push(word)
    else lines[lines.length - 1] = longer
  }
  return lines
}

function cut(lines: readonly string[], ems: number, most: number): string[] {
  const words = (lines[most - 1] ?? '').split(' ')
  while (words.length > 1 && roughWidth(`${words.join(' ')} …`) > ems) words.pop()
  return [...lines.slice(0, most - 1), `${words.join(' ').replace(/[.,;:]$/, '')} …`]
}
