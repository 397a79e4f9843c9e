import { fromSi } from '../../shared/units.ts'

/** The field that keeps which odd measures were taken again and found so. */
export const STANDS = 'stands'

const PART = /([a-z]+) (\d) ([\d.]+)/g

/** One measure of one main as it was found again: "journal 3 62.141", the size in mm. */
function written(measure: string, main: number, value: number): string {
  return `${measure} ${main} ${fromSi(value, 'mm').toFixed(3)}`
}

/** Whether a measure was confirmed at this size; another size is asked about anew. */
export function stands(
  text: string | undefined,
  measure: string,
  main: number,
  value: number,
): boolean {
  return parts(text).includes(written(measure, main, value))
}

/** The field's text once this measure is confirmed too. */
export function withStanding(
  text: string | undefined,
  measure: string,
  main: number,
  value: number,
): string {
  const others = parts(text).filter((part) => !part.startsWith(`${measure} ${main} `))
  return [...others, written(measure, main, value)].join('; ')
}

function parts(text: string | undefined): string[] {
  return [...(text ?? '').matchAll(PART)].map(([part]) => part)
}
