import { guardBand } from '../mechanics/guard-band.ts'
import { rangeText } from '../shop-sheet/workshop-figures.ts'

/** Prints a value, with so many decimals more than is usual. */
export type Show = (value: number, finer?: number) => string

/** How a measured value stands to its limit, the gauge counted in. */
export interface Standing {
  readonly verdict: 'pass' | 'too-near' | 'send-back'
  /** Distance inside the nearer limit, negative outside. */
  readonly inside: number
  readonly nearer: 'low' | 'high'
}

/** A value, its limits and its uncertainty, in one unit. */
export interface Stood {
  readonly found: number
  readonly low: number
  readonly high: number
  readonly uncertainty: number
}

/**
 * Pass where the value conforms for all that the gauge may be off, send back where it does not for
 * all of that, too near to tell in between.
 *
 * @param nothing - a distance that is none: the last bits of a conversion must not decide
 * @see ISO 14253-1, decision rules (from memory)
 */
export function standingOf({ found, low, high, uncertainty }: Stood, nothing: number): Standing {
  const band = guardBand(found, { low, high }, uncertainty)
  const { inside, nearer, surelyInside, surelyOutside } = band
  const verdict =
    surelyOutside > nothing ? 'send-back' : surelyInside >= -nothing ? 'pass' : 'too-near'
  return { verdict, inside, nearer }
}

/** The figures of one judged measure as they are printed. */
export interface Printed {
  readonly found: string
  /** "at most 0.0005 in" */
  readonly limit: string
  readonly uncertainty: string
  /** Between the value and its nearer limit, as the printed figures give it. */
  readonly off: string
}

/** Decimals beyond the usual that are tried. */
const FINEST = 4

/**
 * Print the figures of a measure with as few decimals as will do: whoever does the sum again with
 * what is printed comes to the same verdict, as far from the limit.
 */
export function asPrinted(stood: Stood, standing: Standing, show: Show): Printed {
  for (let finer = 0; finer < FINEST; finer++) {
    const printed = printedWith(stood, show, finer)
    if (agrees(printed.standing, standing, show)) return printed
  }
  return printedWith(stood, show, FINEST)
}

function printedWith(
  { found, low, high, uncertainty }: Stood,
  show: Show,
  finer: number,
): Printed & { readonly standing: Standing } {
  const fine = (value: number) => show(value, finer)
  const texts = { found: fine(found), uncertainty: fine(uncertainty) }
  const read = (value: number) => (Number.isFinite(value) ? numberIn(fine(value)) : value)
  const again = {
    found: numberIn(texts.found),
    low: read(low),
    high: read(high),
    uncertainty: numberIn(texts.uncertainty),
  }
  const standing = standingOf(again, NOTHING)
  const nearest = fine(standing.nearer === 'low' ? low : high)
  const decimals = Math.max(...[texts.found, nearest].map(decimalsOf))
  const off = texts.found.replace(FIGURE, Math.abs(standing.inside).toFixed(decimals))
  return { ...texts, off, limit: rangeText({ low, high }, fine), standing }
}

/** Whether the printed figures tell the same: the verdict, and where it is no pass, how far off. */
function agrees(printed: Standing, { verdict, inside }: Standing, show: Show): boolean {
  if (printed.verdict !== verdict) return false
  const exact = numberIn(show(inside, FINEST))
  return (
    verdict === 'pass' || Math.abs(printed.inside - exact) <= ROUNDED * Math.abs(exact) + NOTHING
  )
}

/** By how much of itself a distance may come out differently for the rounding of its ends. */
const ROUNDED = 0.1
/** Far less than any printed decimal, in any unit. */
const NOTHING = 1e-9
const FIGURE = /[-−]?\d+(?:\.(\d+))?/

function numberIn(text: string): number {
  return Number((FIGURE.exec(text)?.[0] ?? '').replace('−', '-'))
}

function decimalsOf(text: string): number {
  return FIGURE.exec(text)?.[1]?.length ?? 0
}
