/** Least and greatest factor by which gas and inertia loads are scaled in sampling. */
export const SCALE_RANGE = { low: 0.6, high: 1.6 } as const

/** Between which values the scale of gas over that of inertia lies. */
export interface RatioRange {
  readonly low: number
  readonly high: number
}

/** All ratios that the scale range allows. */
export const WHOLE_RANGE: RatioRange = {
  low: SCALE_RANGE.low / SCALE_RANGE.high,
  high: SCALE_RANGE.high / SCALE_RANGE.low,
}

/**
 * Ratios over a range, both ends among them, evenly spaced in the logarithm.
 *
 * @param step - greatest ratio of one to the one before, above 1
 */
export function ratiosOver({ low, high }: RatioRange, step: number): number[] {
  const steps = Math.ceil(Math.log(high / low) / Math.log(step) - 1e-9)
  if (!(steps > 0)) return [low]
  return Array.from({ length: steps + 1 }, (_, index) => low * (high / low) ** (index / steps))
}
