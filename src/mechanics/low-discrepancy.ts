import { mixBits, requireCount, requireSeed } from './seeded-random.ts'

/** Most columns that the table of direction numbers below can serve. */
export const MOST_DIMENSIONS = 25

/**
 * Degree s, inner coefficients a of the primitive polynomial, and the first odd
 * numbers m_1 … m_s, for the second column onward.
 *
 * @see Joe & Kuo, "Constructing Sobol sequences with better two-dimensional projections",
 *   SIAM J. Sci. Comput. 30 (2008) 2635–2654, table new-joe-kuo-6 (read from reprints)
 */
const POLYNOMIALS: readonly (readonly [number, number, readonly number[]])[] = [
  [1, 0, [1]],
  [2, 1, [1, 3]],
  [3, 1, [1, 3, 1]],
  [3, 2, [1, 1, 1]],
  [4, 1, [1, 1, 3, 3]],
  [4, 4, [1, 3, 5, 13]],
  [5, 2, [1, 1, 5, 5, 17]],
  [5, 4, [1, 1, 5, 5, 5]],
  [5, 7, [1, 1, 7, 11, 19]],
  [5, 11, [1, 1, 5, 1, 1]],
  [5, 13, [1, 1, 1, 3, 11]],
  [5, 14, [1, 3, 5, 5, 31]],
  [6, 1, [1, 3, 3, 9, 7, 49]],
  [6, 13, [1, 1, 1, 15, 21, 21]],
  [6, 16, [1, 3, 1, 13, 27, 49]],
  [6, 19, [1, 1, 1, 15, 7, 5]],
  [6, 22, [1, 3, 1, 15, 13, 25]],
  [6, 25, [1, 1, 5, 5, 19, 61]],
  [7, 1, [1, 3, 7, 11, 23, 15, 103]],
  [7, 4, [1, 3, 7, 13, 13, 15, 69]],
  [7, 7, [1, 1, 3, 13, 7, 35, 63]],
  [7, 8, [1, 3, 5, 9, 1, 25, 53]],
  [7, 14, [1, 3, 1, 13, 9, 35, 107]],
  [7, 19, [1, 3, 1, 5, 27, 61, 31]],
]

/**
 * Points that fill the unit cube evenly: the Sobol sequence, its digits
 * scrambled by the seed (nested, in the manner of Owen), so that every seed
 * gives another set, each as even as the first. In every column exactly one of
 * any 2^k leading points falls in each interval of width 2^−k.
 *
 * @param count - n, number of points, 1 to 2²⁰; a power of two is evenest
 * @param dimensions - d, columns, 1 to 25
 * @param seed - whole number, 0 to 2³² − 1
 * @returns n × d numbers, row after row, each strictly between 0 and 1
 * @throws {DomainError} if an argument does not fit
 *
 * @see Joe & Kuo 2008, as above
 * @see Burley, "Practical Hash-based Owen Scrambling", J. Comput. Graph. Tech. 9(4), 2020
 *   (the scramble on reversed bits; hash constants from memory)
 */
export function lowDiscrepancy(count: number, dimensions: number, seed: number): Float64Array {
  requireCount('count', count, 1, 1048576)
  requireCount('dimensions', dimensions, 1, MOST_DIMENSIONS)
  requireSeed(seed)
  const points = new Float64Array(count * dimensions)
  for (let column = 0; column < dimensions; column++) {
    const key = mixBits(seed ^ mixBits(column + 1))
    sobolColumn(column, count, (bits, row) => {
      points[row * dimensions + column] = (scramble(bits, key) + 0.5) / 4294967296
    })
  }
  return points
}

/**
 * The Sobol sequence itself, unscrambled, its first point the origin; for
 * checking against published points. Arguments and shape as `lowDiscrepancy`.
 *
 * @returns n × d multiples of 2⁻³², each from 0 up to but not including 1
 * @throws {DomainError} if an argument does not fit
 */
export function plainSobol(count: number, dimensions: number): Float64Array {
  requireCount('count', count, 1, 1048576)
  requireCount('dimensions', dimensions, 1, MOST_DIMENSIONS)
  const points = new Float64Array(count * dimensions)
  for (let column = 0; column < dimensions; column++) {
    sobolColumn(column, count, (bits, row) => {
      points[row * dimensions + column] = bits / 4294967296
    })
  }
  return points
}

/** Visit one column's points in Gray-code order: point n differs from n − 1 by one direction. */
function sobolColumn(
  column: number,
  count: number,
  visit: (bits: number, row: number) => void,
): void {
  const directions = directionNumbers(column)
  let bits = 0
  visit(bits, 0)
  for (let row = 1; row < count; row++) {
    const lowestSetBit = 31 - Math.clz32(row & -row)
    bits = (bits ^ directions[lowestSetBit]!) >>> 0
    visit(bits, row)
  }
}

/** The 32 direction numbers of a column, by the recurrence of its primitive polynomial. */
function directionNumbers(column: number): Uint32Array {
  const directions = new Uint32Array(32)
  if (column === 0) return directions.map((_, bit) => 1 << (31 - bit))
  const [degree, inner, start] = POLYNOMIALS[column - 1]!
  for (let bit = 0; bit < 32; bit++) {
    if (bit < degree) {
      directions[bit] = start[bit]! << (31 - bit)
      continue
    }
    let value = directions[bit - degree]! ^ (directions[bit - degree]! >>> degree)
    for (let term = 1; term < degree; term++) {
      if ((inner >>> (degree - 1 - term)) & 1) value ^= directions[bit - term]!
    }
    directions[bit] = value
  }
  return directions
}

/**
 * A nested scramble: each digit is flipped or not by a hash of the digits
 * before it, which is a hash whose bits depend only on lower bits, run on the
 * reversed word.
 */
function scramble(bits: number, key: number): number {
  let word = reverseBits(bits)
  word = (word + key) >>> 0
  word ^= Math.imul(word, 0x6c50b47c)
  word ^= Math.imul(word, 0xb82f1e52)
  word ^= Math.imul(word, 0xc7afe638)
  word ^= Math.imul(word, 0x8d22f6e6)
  return reverseBits(word)
}

function reverseBits(bits: number): number {
  let word = bits
  word = ((word >>> 1) & 0x55555555) | ((word & 0x55555555) << 1)
  word = ((word >>> 2) & 0x33333333) | ((word & 0x33333333) << 2)
  word = ((word >>> 4) & 0x0f0f0f0f) | ((word & 0x0f0f0f0f) << 4)
  word = ((word >>> 8) & 0x00ff00ff) | ((word & 0x00ff00ff) << 8)
  return ((word >>> 16) | (word << 16)) >>> 0
}
