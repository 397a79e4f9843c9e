import { DomainError, requireWithin } from './domain-error.ts'

/** How straight a row of points is; m. */
export interface Straightness {
  /** Least-squares line: height at position 0, and slope. */
  intercept: number
  slope: number
  /** Height of each point above that line, in the order given. */
  residuals: number[]
  /** Greatest distance of any point from the line. */
  greatest: number
  /** Highest less lowest residual: straightness about the least-squares line. */
  range: number
  /** Width of the narrowest pair of parallel lines that holds all points. */
  leastZone: number
}

/**
 * Straightness of points along a line, by least squares and by the least zone.
 * Slopes are small, so height stands in for distance from the line.
 *
 * @param positions - along the crank, m; at least two, no two the same
 * @param heights - across it, m; one a position
 * @throws {DomainError} if the rows do not match or a number does not fit
 *
 * @see ISO 12780-1, straightness: least squares and minimum zone reference lines (from memory)
 */
export function straightness(
  positions: readonly number[],
  heights: readonly number[],
): Straightness {
  requireRows(positions, heights)
  const count = positions.length
  const middle = positions.reduce((sum, z) => sum + z, 0) / count
  const level = heights.reduce((sum, h) => sum + h, 0) / count
  let squares = 0
  let products = 0
  positions.forEach((z, place) => {
    squares += (z - middle) ** 2
    products += (z - middle) * (heights[place]! - level)
  })
  const slope = products / squares
  const residuals = heights.map((h, place) => h - level - slope * (positions[place]! - middle))
  return {
    intercept: level - slope * middle,
    slope,
    residuals,
    greatest: Math.max(...residuals.map(Math.abs)),
    range: Math.max(...residuals) - Math.min(...residuals),
    leastZone: leastZone(positions, heights),
  }
}

/**
 * What feeler gauges say about one gap: it takes one leaf and refuses another.
 *
 * @param passes - thickest leaf that goes under, m; 0 when none does
 * @param refused - thinnest leaf that does not, m
 * @returns the least and greatest the gap can be, and their middle
 * @throws {DomainError} if the leaves are out of order
 */
export function feelerGap(
  passes: number,
  refused: number,
): { low: number; high: number; middle: number } {
  requireWithin('passes', passes, 0, 0.005, 'm')
  requireWithin('refused', refused, passes, 0.005, 'm')
  return { low: passes, high: refused, middle: (passes + refused) / 2 }
}

/** One side of the least zone lies along a line through two of the points. */
function leastZone(positions: readonly number[], heights: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY
  for (let one = 0; one < positions.length; one++) {
    for (let other = one + 1; other < positions.length; other++) {
      const slope = (heights[other]! - heights[one]!) / (positions[other]! - positions[one]!)
      const levels = heights.map((h, place) => h - slope * positions[place]!)
      least = Math.min(least, Math.max(...levels) - Math.min(...levels))
    }
  }
  return least
}

function requireRows(positions: readonly number[], heights: readonly number[]): void {
  requireWithin('positions', positions.length, 2, 100)
  if (heights.length !== positions.length) {
    throw new DomainError('heights', heights.length, `${positions.length} numbers`)
  }
  if (new Set(positions).size !== positions.length) {
    throw new DomainError('positions', positions.join(', '), 'all different')
  }
  positions.forEach((z, place) => {
    requireWithin(`positions[${place}]`, z, -10, 10, 'm')
    requireWithin(`heights[${place}]`, heights[place]!, -0.1, 0.1, 'm')
  })
}
