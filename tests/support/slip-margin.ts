import { capShare } from '../../src/mechanics/cap-share.ts'
import { DomainError, requireWithin } from '../../src/mechanics/domain-error.ts'
import type { MarginPoint } from '../../src/mechanics/margin-points.ts'

/** What holds a cap sideways. */
export interface SlipLaw {
  /** Clamp over the parting faces with no load on the cap, N, 0 or above. */
  clamp: number
  /** μ of the parting faces, 0 to 1. */
  friction: number
  /** N of clamp lost at the parting faces for each N of pull, 0 to 1; default 1. */
  relief?: number
  /** What stands against side push besides friction, N, 0 or above; default 0. */
  resistance?: number
}

/** The moment of least margin. */
export interface WorstSlip {
  /** Capacity over side push; Infinity where nothing pushes sideways. */
  margin: number
  /** N, at that moment. */
  pull: number
  /** N, at that moment. */
  side: number
  point: MarginPoint
}

/**
 * Margin against side push: (μ max(0, clamp − relief·pull) + resistance) / side. With no
 * resistance it is the grip of the parting faces alone.
 *
 * @param pull - N, 0 or above
 * @param side - N, 0 or above
 * @returns pure number, 0 or above; Infinity for no side push
 */
export function slipMargin(law: SlipLaw, pull: number, side: number): number {
  if (!(side > 0)) return Number.POSITIVE_INFINITY
  const residual = Math.max(0, law.clamp - (law.relief ?? 1) * pull)
  return (law.friction * residual + (law.resistance ?? 0)) / side
}

/**
 * The moment at which pull and side push together bring the cap nearest to slipping.
 *
 * @param points - margin points of one main or of all; at least one
 * @param law - what holds the cap
 * @param gasScale - factor on gas loads, within the points' range
 * @param inertiaScale - factor on inertia loads, within the points' range
 * @throws {DomainError} if there are no points or the law is out of range
 */
export function worstSlip(
  points: readonly MarginPoint[],
  law: SlipLaw,
  gasScale = 1,
  inertiaScale = 1,
): WorstSlip {
  requireWithin('clamp', law.clamp, 0, 1e8, 'N')
  requireWithin('friction', law.friction, 0, 1)
  requireWithin('relief', law.relief ?? 1, 0, 1)
  requireWithin('resistance', law.resistance ?? 0, 0, 1e8, 'N')
  let worst: WorstSlip | undefined
  for (const point of points) {
    const { pull, side } = capShare(
      gasScale * point.gasX + inertiaScale * point.inertiaX,
      gasScale * point.gasY + inertiaScale * point.inertiaY,
    )
    const margin = slipMargin(law, pull, side)
    if (!worst || margin < worst.margin) worst = { margin, pull, side, point }
  }
  if (!worst) throw new DomainError('points.length', 0, 'at least 1')
  return worst
}
