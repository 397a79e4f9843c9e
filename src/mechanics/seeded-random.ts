import { requireWithin } from './domain-error.ts'

/**
 * Scramble 32 bits so that every input bit can change every output bit.
 * Whole-number arithmetic only, hence the same on every machine.
 *
 * @param value - any integer; its low 32 bits count
 * @returns an unsigned 32-bit integer; a bijection of the low 32 bits
 *
 * @see Appleby, MurmurHash3 (2011), 32-bit finalizer (constants from memory)
 */
export function mixBits(value: number): number {
  let bits = value >>> 0
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b)
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35)
  return (bits ^ (bits >>> 16)) >>> 0
}

/** A stream of whole numbers that depends on its seed alone. */
export interface RandomStream {
  /** The next unsigned 32-bit integer. */
  next(): number
  /** The next whole number from 0 to bound − 1, each equally likely; bound from 1 to 2³². */
  below(bound: number): number
  /** The next fraction strictly between 0 and 1, a multiple of 2⁻³² plus half a step. */
  fraction(): number
}

/**
 * A reproducible stream of random whole numbers: a counter stepped by the odd
 * constant nearest 2³²/φ, each count mixed. Good for shuffles and jitter in a
 * sample of thousands; its period is 2³².
 *
 * @param seed - any whole number from 0 to 2³² − 1
 * @throws {DomainError} if the seed is not such a number
 *
 * @see Steele, Lea & Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014
 *   (the counter-and-mix construction, here with 32 bits)
 */
export function randomStream(seed: number): RandomStream {
  requireSeed(seed)
  let counter = mixBits(seed ^ 0x9e3779b9)
  const next = () => {
    counter = (counter + 0x9e3779b9) >>> 0
    return mixBits(counter)
  }
  const below = (bound: number) => {
    // Draws at or above the last whole multiple of the bound would favour small remainders.
    const fair = 4294967296 - (4294967296 % bound)
    let draw = next()
    while (draw >= fair) draw = next()
    return draw % bound
  }
  return { next, below, fraction: () => (next() + 0.5) / 4294967296 }
}

/** @throws {DomainError} if the seed is not a whole number from 0 to 2³² − 1 */
export function requireSeed(seed: number): void {
  requireWithin('seed', Number.isInteger(seed) ? seed : Number.NaN, 0, 4294967295)
}

/** @throws {DomainError} if a count is not a whole number from low to high */
export function requireCount(argument: string, count: number, low: number, high: number): void {
  requireWithin(argument, Number.isInteger(count) ? count : Number.NaN, low, high)
}
