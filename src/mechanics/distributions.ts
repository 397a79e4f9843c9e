import { DomainError, requireWithin } from './domain-error.ts'
import { betaQuantile } from './incomplete-beta.ts'

/** What may be said of an uncertain figure: at least, most likely, at most (any one unit). */
export interface Spread {
  low: number
  likely: number
  high: number
}

/**
 * Shapes of the PERT distribution: a beta stretched over low … high,
 * α = 1 + 4 (m − a)/(b − a) and β = 6 − α, whose mean is (a + 4 m + b)/6.
 *
 * @throws {DomainError} unless low ≤ likely ≤ high and low < high
 * @see Malcolm, Roseboom, Clark & Fazar, Operations Research 7 (1959) 646–669
 */
export function pertShapes(spread: Spread): { alpha: number; beta: number } {
  requireSpread(spread)
  const share = (spread.likely - spread.low) / (spread.high - spread.low)
  return { alpha: 1 + 4 * share, beta: 5 - 4 * share }
}

/**
 * Mean and standard deviation of the PERT distribution. The deviation is that
 * of the beta itself, not the (b − a)/6 often quoted for it. A spread of no
 * width is a certain figure: deviation 0.
 *
 * @throws {DomainError} unless low ≤ likely ≤ high
 */
export function pertMoments(spread: Spread): { mean: number; deviation: number } {
  const { low, likely, high } = spread
  if (low === high && likely === low) return { mean: low, deviation: 0 }
  requireSpread(spread)
  const mean = (low + 4 * likely + high) / 6
  // Variance of a beta with α + β = 6 is μ(1 − μ)/7 on the unit interval.
  // The mean may round to just outside a spread that is next to nothing.
  const product = Math.max(0, mean - low) * Math.max(0, high - mean)
  return { mean, deviation: Math.sqrt(product / 7) }
}

/**
 * Quantile of the PERT distribution.
 *
 * @param chance - 0 to 1
 * @returns the figure not exceeded with that chance, in the unit of the spread
 * @throws {DomainError} unless low ≤ likely ≤ high and the chance fits
 */
export function pertQuantile(chance: number, spread: Spread): number {
  requireWithin('chance', chance, 0, 1)
  if (isCertain(spread)) return spread.low
  const { alpha, beta } = pertShapes(spread)
  return spread.low + (spread.high - spread.low) * betaQuantile(chance, alpha, beta)
}

/**
 * Quantile of the triangular distribution, in closed form.
 *
 * @param chance - 0 to 1
 * @throws {DomainError} unless low ≤ likely ≤ high and the chance fits
 * @see Kotz & van Dorp, Beyond Beta (2004), chapter 1
 */
export function triangularQuantile(chance: number, spread: Spread): number {
  requireWithin('chance', chance, 0, 1)
  if (isCertain(spread)) return spread.low
  requireSpread(spread)
  const { low, likely, high } = spread
  const width = high - low
  if (chance * width <= likely - low) return low + Math.sqrt(chance * width * (likely - low))
  return high - Math.sqrt((1 - chance) * width * (high - likely))
}

function isCertain({ low, likely, high }: Spread): boolean {
  return low === likely && likely === high && Number.isFinite(low)
}

function requireSpread({ low, likely, high }: Spread): void {
  if (!(Number.isFinite(low) && Number.isFinite(high) && low < high)) {
    throw new DomainError('low', low, `a finite number below high, ${high}`)
  }
  requireWithin('likely', likely, low, high)
}
