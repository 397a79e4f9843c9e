/**
 * A number outside the range that an equation is valid for. Data first: which
 * argument, what was found, what would fit; the message is made from these.
 */
export class DomainError extends RangeError {
  readonly argument: string
  readonly found: unknown
  readonly fits: string

  constructor(argument: string, found: unknown, fits: string) {
    super(`${argument} is ${String(found)}; it must be ${fits}`)
    this.name = 'DomainError'
    this.argument = argument
    this.found = found
    this.fits = fits
  }
}

/**
 * Refuse a number that is not finite or not within [low, high].
 *
 * @param argument - name shown in the error
 * @param found - the number to check; NaN and infinities are refused
 * @param low - least value that fits, in the argument's SI unit
 * @param high - greatest value that fits
 * @param unit - SI unit named in the error; empty for a pure number
 * @throws {DomainError} if the number does not fit
 */
export function requireWithin(
  argument: string,
  found: number,
  low: number,
  high: number,
  unit = '',
): void {
  // Written so that NaN fails the comparison.
  if (!(found >= low && found <= high)) {
    throw new DomainError(argument, found, `from ${low} to ${high}${unit && ` ${unit}`}`)
  }
}

/**
 * Refuse limits of which one is out of the range of both, or which are the wrong way round.
 * The upper is looked at first, so that the range said of the lower has something in it.
 *
 * @param argument - name shown in the error, with `.low` or `.high`
 * @throws {DomainError} if one does not fit
 */
export function requireLimits(
  argument: string,
  { low, high }: { readonly low: number; readonly high: number },
  least: number,
  most: number,
  unit = '',
): void {
  requireWithin(`${argument}.high`, high, least, most, unit)
  requireWithin(`${argument}.low`, low, least, high, unit)
}
