import { requireWithin } from './domain-error.ts'

/**
 * Chance that a standard normal variable is at most z.
 *
 * @param z - any finite number
 * @returns 0 to 1; absolute error below 1e-15, relative error below 1e-13 in the lower tail
 * @throws {DomainError} if z is not finite
 *
 * @see Marsaglia, "Evaluating the normal distribution", J. Stat. Softw. 11(4), 2004 (series)
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions, 26.2.14 (tail, continued fraction)
 */
export function normalChance(z: number): number {
  requireWithin('z', z, -Number.MAX_VALUE, Number.MAX_VALUE)
  if (z > 3) return 1 - lowerTail(z)
  if (z < -3) return lowerTail(-z)
  let term = z
  let sum = z
  for (let odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum); odd += 2) {
    term *= (z * z) / odd
    sum += term
  }
  return 0.5 + sum * normalDensity(z)
}

/** Density of the standard normal distribution, (2π)^−½ exp(−z²/2). */
function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)
}

/**
 * The z below which a standard normal variable falls with a given chance.
 *
 * A rational starting value (error below 4.5e-4) is corrected twice by Halley's
 * method on the exact distribution, so accuracy rests on `normalChance` and not
 * on long tables of coefficients.
 *
 * @param chance - strictly between 0 and 1, from 1e-300 up to 1 − 1e-16
 * @returns z; relative error below 1e-12 for a chance at or below one half
 * @throws {DomainError} if the chance does not fit
 *
 * @see Abramowitz & Stegun, Handbook of Mathematical Functions, 26.2.23 (starting value)
 */
export function normalQuantile(chance: number): number {
  requireWithin('chance', chance, 1e-300, 1 - 1e-16)
  if (chance === 0.5) return 0
  // The lower tail keeps its relative accuracy; the upper is its mirror image.
  const tail = chance < 0.5 ? chance : 1 - chance
  let z = -startingDistance(tail)
  for (let step = 0; step < 3; step++) {
    const error = (normalChance(z) - tail) / normalDensity(z)
    z -= error / (1 + 0.5 * z * error)
  }
  return chance < 0.5 ? z : -z
}

/** A & S 26.2.23: distance from the mean with the given tail beyond it, ± 4.5e-4. */
function startingDistance(tail: number): number {
  const t = Math.sqrt(-2 * Math.log(tail))
  const numerator = 2.515517 + t * (0.802853 + t * 0.010328)
  return t - numerator / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)))
}

/** Chance beyond z > 0, by the continued fraction φ(z)/(z + 1/(z + 2/(z + 3/(z + …)))). */
function lowerTail(z: number): number {
  if (z > 40) return 0
  let fraction = z
  for (let level = 120; level >= 1; level--) fraction = z + level / fraction
  return normalDensity(z) / fraction
}
