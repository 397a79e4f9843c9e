import { requireLimits } from './domain-error.ts'

/** Limits of a measure; m. */
export interface Limits {
  low: number
  high: number
}

export interface ClearanceRange {
  /** Tightest and loosest that parts within their limits can make. */
  low: number
  high: number
  middle: number
  /** Range that independent, centred parts seldom leave: root of the sum of squares. */
  statistical: Limits
  /** What each part adds to high − low: housing, both shells, journal. */
  parts: { housing: number; shells: number; journal: number }
}

/**
 * Range of running clearance from the limits of housing bore, shell wall and
 * journal, before anything is measured: worst case, and statistical.
 *
 * @param wall - limits of one shell at its crown; its two shells count separately
 * @throws {DomainError} if limits are out of order or out of range
 * @see Shigley's Mechanical Engineering Design, 9th ed., section 1–13: absolute and statistical
 *   tolerance systems
 */
export function clearanceRange(input: {
  housing: Limits
  wall: Limits
  journal: Limits
}): ClearanceRange {
  const { housing, wall, journal } = input
  requireLimits('housing', housing, 0.02, 0.3, 'm')
  requireLimits('wall', wall, 0, 0.02, 'm')
  requireLimits('journal', journal, 0.02, 0.2, 'm')
  const low = housing.low - 2 * wall.high - journal.high
  const high = housing.high - 2 * wall.low - journal.low
  const middle = (low + high) / 2
  const half = Math.hypot(width(housing), width(wall), width(wall), width(journal)) / 2
  return {
    low,
    high,
    middle,
    statistical: { low: middle - half, high: middle + half },
    parts: { housing: width(housing), shells: 2 * width(wall), journal: width(journal) },
  }
}

function width({ low, high }: Limits): number {
  return high - low
}
