import { requireWithin } from './domain-error.ts'

/** A slip that would explain a reading far from where it should be. */
export interface ReadingSlip {
  kind: 'inch-for-mm' | 'mm-for-inch' | 'decimal-point' | 'thimble-turn'
  /** What the reading would be without the slip, m. */
  meant: number
}

const INCH = 0.0254

/** One turn of a micrometer's thimble: 0.025 in on inch micrometers, 0.5 mm on metric ones. */
const THIMBLE_TURNS: readonly number[] = [0.025 * INCH, 0.0005]

/**
 * Ask whether a reading that lies far from the expected size would fit if one
 * common slip were undone: the wrong unit, a decimal point one to three places
 * off, or a micrometer read one turn too high or low.
 *
 * @param found - the reading, taken in the unit that was said, m; above 0
 * @param expected - size that it should be near, m; above 0
 * @param within - how near is near, m; above 0, below half of the expected size
 * @returns the slips that would bring it within reach, nearest first; none when it is near already
 * @throws {DomainError} if an argument does not fit
 * Source: common practice, no published source.
 */
export function readingSlips(found: number, expected: number, within: number): ReadingSlip[] {
  requireWithin('found', found, 1e-9, 1e6, 'm')
  requireWithin('expected', expected, 1e-9, 10, 'm')
  requireWithin('within', within, 1e-12, expected / 2, 'm')
  const near = (value: number) => Math.abs(value - expected) <= within
  if (near(found)) return []
  const slips: ReadingSlip[] = [
    { kind: 'inch-for-mm', meant: found * 25.4 },
    { kind: 'mm-for-inch', meant: found / 25.4 },
  ]
  for (const places of [1, 2, 3]) {
    slips.push({ kind: 'decimal-point', meant: found * 10 ** places })
    slips.push({ kind: 'decimal-point', meant: found / 10 ** places })
  }
  for (const turn of THIMBLE_TURNS) {
    slips.push({ kind: 'thimble-turn', meant: found + turn })
    slips.push({ kind: 'thimble-turn', meant: found - turn })
  }
  const fitting = slips.filter(({ meant }) => near(meant))
  return fitting.sort((one, other) => off(one, expected) - off(other, expected))
}

function off({ meant }: ReadingSlip, expected: number): number {
  return Math.abs(meant - expected)
}
