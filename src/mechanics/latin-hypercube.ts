import { randomStream, requireCount } from './seeded-random.ts'

/**
 * A Latin hypercube: each column is cut into n equal slices and every slice
 * holds one point, the order shuffled column by column. Plainer than a Sobol
 * set and free in n; a second opinion on anything sampled.
 *
 * @param count - n, number of points, 1 to 2²⁰
 * @param dimensions - d, columns, 1 to 1000
 * @param seed - whole number, 0 to 2³² − 1
 * @param place - where in its slice a point lies: anywhere (`random`) or at its `middle`
 * @returns n × d numbers, row after row, each strictly between 0 and 1
 * @throws {DomainError} if an argument does not fit
 *
 * @see McKay, Beckman & Conover, "A comparison of three methods for selecting values of
 *   input variables", Technometrics 21 (1979) 239–245
 */
export function latinHypercube(
  count: number,
  dimensions: number,
  seed: number,
  place: 'random' | 'middle' = 'random',
): Float64Array {
  requireCount('count', count, 1, 1048576)
  requireCount('dimensions', dimensions, 1, 1000)
  const stream = randomStream(seed)
  const points = new Float64Array(count * dimensions)
  const slices = new Uint32Array(count)
  for (let column = 0; column < dimensions; column++) {
    shuffle(slices, stream.below)
    for (let row = 0; row < count; row++) {
      const within = place === 'middle' ? 0.5 : stream.fraction()
      points[row * dimensions + column] = (slices[row]! + within) / count
    }
  }
  return points
}

/** Fill with 0 … n − 1 in random order (Fisher–Yates, every order equally likely). */
function shuffle(slices: Uint32Array, below: (bound: number) => number): void {
  for (let index = 0; index < slices.length; index++) {
    const other = below(index + 1)
    slices[index] = slices[other]!
    slices[other] = index
  }
}
