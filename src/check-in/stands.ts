import { fromSi } from '../../shared/units.ts'

/** The field that keeps which odd measures and readings were taken again and found so. */
export const STANDS = 'stands'

const PART = /(?:[a-z]+ \d|[a-z]+\.\d\.[a-z]+) [\d.]+/g

/** One measure as it was found again: "journal 3 62.141" or "journal.3.fv 68.580", the size in mm. */
function written(measure: string, value: number): string {
  return `${measure} ${fromSi(value, 'mm').toFixed(3)}`
}

/**
 * Whether a measure was confirmed at this size; another size is asked about anew.
 *
 * @param measure - a measure and its main, such as `journal 3`, or a cell, such as `journal.3.fv`
 * @param value - m
 */
export function stands(text: string | undefined, measure: string, value: number): boolean {
  return parts(text).includes(written(measure, value))
}

/** The field's text once this measure is confirmed too. */
export function withStanding(text: string | undefined, measure: string, value: number): string {
  const others = parts(text).filter((part) => !part.startsWith(`${measure} `))
  return [...others, written(measure, value)].join('; ')
}

function parts(text: string | undefined): string[] {
  return [...(text ?? '').matchAll(PART)].map(([part]) => part)
}
