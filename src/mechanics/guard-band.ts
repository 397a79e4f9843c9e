import { requireWithin } from './domain-error.ts'

/** How a measured value lies to its limits, the gauge's uncertainty taken off on either side. */
export interface GuardBand {
  /** Distance inside the nearer limit; negative outside. */
  inside: number
  /** Distance inside the limits narrowed by the uncertainty: 0 or above, the part conforms. */
  surelyInside: number
  /** Distance outside the limits widened by the uncertainty: above 0, it does not conform. */
  surelyOutside: number
  /** Which limit is nearer. */
  nearer: 'low' | 'high'
}

/**
 * Place a measured value between its limits. Where neither `surelyInside` is 0
 * or more nor `surelyOutside` above 0, the gauge cannot tell.
 *
 * @param value - as measured, in the unit of the limits
 * @param limits - low may be −∞ and high +∞ for a limit on one side only
 * @param uncertainty - expanded uncertainty U of the measurement, 0 or above, same unit
 * @throws {DomainError} if value or uncertainty is not finite, or low exceeds high
 *
 * @see ISO 14253-1, decision rules for verifying conformity with specifications (from memory)
 */
export function guardBand(
  value: number,
  limits: { low: number; high: number },
  uncertainty: number,
): GuardBand {
  requireWithin('value', value, -Number.MAX_VALUE, Number.MAX_VALUE)
  requireWithin('uncertainty', uncertainty, 0, Number.MAX_VALUE)
  requireWithin('limits.low', limits.low, Number.NEGATIVE_INFINITY, limits.high)
  const aboveLow = value - limits.low
  const belowHigh = limits.high - value
  const inside = Math.min(aboveLow, belowHigh)
  return {
    inside,
    surelyInside: inside - uncertainty,
    surelyOutside: -inside - uncertainty,
    nearer: aboveLow < belowHigh ? 'low' : 'high',
  }
}

/**
 * Uncertainty of the mean of several readings of one size with one gauge: how it was set is off
 * by the same in all of them and stays, how it repeats is off anew in each and averages out.
 *
 * @param gauge - expanded uncertainty of one size as read, and the part of it that changes from
 *   reading to reading; m
 * @param readings - how many, 1 or more
 * @throws {DomainError} if a figure does not fit
 * @see JCGM 100:2008 (GUM), 4.2.3 for the mean; 5.2.4 for what readings with one instrument have
 *   in common (from memory)
 */
export function meanUncertainty(
  { size, repeat }: { size: number; repeat: number },
  readings: number,
): number {
  requireWithin('size', size, 0, Number.MAX_VALUE)
  requireWithin('repeat', repeat, 0, Number.MAX_VALUE)
  requireWithin('readings', readings, 1, Number.MAX_VALUE)
  const setting = Math.sqrt(Math.max(0, size ** 2 - repeat ** 2))
  return Math.hypot(setting, repeat / Math.sqrt(readings))
}

/**
 * Uncertainty of a quantity worked out from several independent readings, root
 * of the sum of squares of sensitivity × uncertainty.
 *
 * @param parts - each reading's expanded uncertainty and how many times it counts
 * @see JCGM 100:2008 (GUM), eq. 10
 */
export function combinedUncertainty(
  parts: readonly { uncertainty: number; sensitivity?: number }[],
): number {
  return Math.hypot(...parts.map(({ uncertainty, sensitivity = 1 }) => uncertainty * sensitivity))
}
