import { fromSi, toSi } from './units.ts'

/** A fastener thread as it is written on a parts list. */
export interface Thread {
  /** Basic major diameter, m. */
  readonly diameter: number
  /** Distance between crests, m. */
  readonly pitch: number
  readonly series: 'unified' | 'metric'
}

const METRIC = /^m\s*(\d{1,2}(?:\.\d{1,2})?)\s*[x×*]\s*(\d(?:\.\d{1,3})?)$/i
const UNIFIED =
  /^(?:(\d{1,2})\s*\/\s*(\d{1,2})|(0?\.\d{1,4}|1(?:\.0{1,3})?))\s*"?\s*(?:-|x|×)\s*(\d{1,2})(?:\s*(?:unc|unf|unef|un))?$/i

/**
 * Read a thread such as `1/2-13`, `7/16-14 UNC`, `.500-20` or `M11x1.25`.
 *
 * @returns the thread, or undefined when the text is none, or is no thread that
 * could hold a main cap (5 to 20 mm; pitch 0.5 mm to a fifth of the diameter)
 */
export function readThread(text: string): Thread | undefined {
  const trimmed = text.trim()
  const metric = METRIC.exec(trimmed)
  if (metric) {
    return usable({
      diameter: Number(metric[1]) / 1000,
      pitch: Number(metric[2]) / 1000,
      series: 'metric',
    })
  }
  const unified = UNIFIED.exec(trimmed)
  if (!unified) return undefined
  const [, top, bottom, decimal, perInch] = unified
  const inches = decimal === undefined ? Number(top) / Number(bottom) : Number(decimal)
  return usable({
    diameter: toSi(inches, 'in'),
    pitch: toSi(1 / Number(perInch), 'in'),
    series: 'unified',
  })
}

function usable(thread: Thread): Thread | undefined {
  const { diameter, pitch } = thread
  const fits = diameter >= 0.005 && diameter <= 0.02 && pitch >= 0.0005 && pitch <= diameter / 5
  return fits ? thread : undefined
}

/** The thread as the trade writes it: `1/2-13`, `M11x1.25`. Inverse of {@link readThread}. */
export function printThread({ diameter, pitch, series }: Thread): string {
  if (series === 'metric') return `M${tidy(diameter * 1000)}x${tidy(pitch * 1000)}`
  const perInch = Math.round(1 / fromSi(pitch, 'in'))
  return `${inchFraction(fromSi(diameter, 'in'))}-${perInch}`
}

function inchFraction(inches: number): string {
  const sixtyFourths = Math.round(inches * 64)
  if (Math.abs(sixtyFourths / 64 - inches) > 1e-6) return tidy(inches)
  let [top, bottom] = [sixtyFourths, 64]
  while (top % 2 === 0 && bottom > 1) [top, bottom] = [top / 2, bottom / 2]
  return bottom === 1 ? String(top) : `${top}/${bottom}`
}

function tidy(value: number): string {
  return String(Number(value.toFixed(4)))
}
