import { DomainError } from './domain-error.ts'
import { type Straightness, straightness } from './straightness.ts'

/** Alignment of the row of main bores; m. */
export interface BoreAlignment {
  /** Sideways and upright straightness, each about its own least-squares line. */
  sideways: Straightness
  upright: Straightness
  /** Distance of each bore's centre from the straight axis that fits them best. */
  offAxis: number[]
  /** The greatest of these. */
  overall: number
  /** Between each bore and the next, how far the centre steps across that axis. */
  steps: number[]
  greatestStep: number
  /** How far each bore stands off the line through its two neighbours; 0 for the ends. */
  bows: number[]
  greatestBow: number
}

/**
 * Alignment of main bores, neighbour to neighbour and over all, from the
 * centres of the bores measured against any straight reference (a bar, a wire,
 * a straightedge): where the reference lies and how it leans drops out.
 *
 * A crank bends to follow a slow curve and fights a sudden step; so both are given.
 *
 * @param positions - of the bores along the crank, m, in order
 * @param centres - x to the side and y up, m; one a position
 * @throws {DomainError} unless there are two or more, in order, and all numbers fit
 */
export function boreAlignment(
  positions: readonly number[],
  centres: readonly { x: number; y: number }[],
): BoreAlignment {
  const sideways = straightness(
    positions,
    centres.map(({ x }) => x),
  )
  const upright = straightness(
    positions,
    centres.map(({ y }) => y),
  )
  requireOrder(positions)
  const xs = sideways.residuals
  const ys = upright.residuals
  const offAxis = xs.map((x, place) => Math.hypot(x, ys[place]!))
  const steps = xs
    .slice(1)
    .map((x, place) => Math.hypot(x - xs[place]!, ys[place + 1]! - ys[place]!))
  const bows = xs.map((_, place) =>
    Math.hypot(bow(positions, xs, place), bow(positions, ys, place)),
  )
  return {
    sideways,
    upright,
    offAxis,
    overall: Math.max(...offAxis),
    steps,
    greatestStep: Math.max(...steps),
    bows,
    greatestBow: Math.max(...bows),
  }
}

/** Height of a point above the line through its two neighbours. */
function bow(positions: readonly number[], heights: readonly number[], place: number): number {
  if (place === 0 || place === positions.length - 1) return 0
  const from = positions[place - 1]!
  const share = (positions[place]! - from) / (positions[place + 1]! - from)
  const line = heights[place - 1]! + share * (heights[place + 1]! - heights[place - 1]!)
  return heights[place]! - line
}

function requireOrder(positions: readonly number[]): void {
  positions.forEach((z, place) => {
    if (place > 0 && !(z > positions[place - 1]!)) {
      throw new DomainError(`positions[${place}]`, z, `beyond ${positions[place - 1]}`)
    }
  })
}
