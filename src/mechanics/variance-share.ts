import { DomainError, requireWithin } from './domain-error.ts'

/** What one uncertain input does to the result, read from a sample already run. */
export interface VarianceShare {
  /** Column of the input in the sample. */
  input: number
  /** Share of the variance of the result's ranks that the input accounts for, 0 to 1. */
  share: number
  /** Standardised regression coefficient on ranks, −1 to 1: its sign says which way it pushes. */
  slope: number
  /**
   * Share of the result's own variance explained by this input alone, however
   * curved its effect (first-order effect by slices, corrected for chance), 0 to 1.
   * Worked out when it is read.
   */
  readonly firstOrder: number
}

/** One input over a sample, with its ranks: they take a sort, so keep it for the next result. */
export interface RankedInput {
  readonly values: Float64Array
  /** Mean 0, sum of squares 1. */
  readonly ranks: Float64Array
}

/**
 * An input made ready for {@link varianceShares}.
 *
 * @param values - the input in each case of the sample, or the chance it was drawn with
 * @throws {DomainError} if one is not finite
 */
export function rankedInput(values: Float64Array): RankedInput {
  requireFinite('values', values)
  return { values, ranks: standardise(ranks(values)) }
}

export interface VarianceShares {
  /** One entry an input, greatest share first; equal shares by column. */
  shares: VarianceShare[]
  /** Share of the rank variance that all inputs together explain, 0 to 1: how far to trust it. */
  explained: number
}

/**
 * Rank uncertain inputs by how much of the result's spread each causes,
 * without running the model again.
 *
 * Ranks replace values, so any steadily rising or falling effect counts in
 * full; the ranks are regressed on all inputs together, and the squared
 * standardised coefficient is the input's share. With evenly filled, unrelated
 * columns these shares add up to `explained`. Where `explained` is low, effects
 * turn back or depend on each other; then `firstOrder` is the better guide.
 *
 * @param inputs - d of them, 1 to 200, each over the same n cases; n must exceed d + 2
 * @param results - n results; non-finite ones are refused
 * @throws {DomainError} if the sizes do not fit or a result is not finite
 *
 * @see Saltelli, Chan & Scott (eds), Sensitivity Analysis (2000), chapter 2: standardised rank
 *   regression coefficients, correlation ratio
 */
export function varianceShares(
  inputs: readonly RankedInput[],
  results: Float64Array,
): VarianceShares {
  const count = results.length
  requireWithin('inputs', inputs.length, 1, 200)
  requireWithin('results', count, inputs.length + 3, Number.MAX_SAFE_INTEGER)
  for (const { values } of inputs) {
    if (values.length !== count) throw new DomainError('inputs', values.length, `${count} cases`)
  }
  requireFinite('results', results)
  const columns = inputs.map((input) => input.ranks)
  const target = standardise(ranks(results))
  const toTarget = columns.map((column) => dot(column, target))
  const slopes = solveSymmetric(
    // The solver reads the lower triangle only.
    columns.map((one, row) => columns.slice(0, row + 1).map((other) => dot(one, other))),
    toTarget,
  )
  const explained = slopes.reduce((sum, slope, column) => sum + slope * toTarget[column]!, 0)
  const shares = slopes.map((slope, input) => ({
    input,
    share: Math.min(1, slope * slope),
    slope,
    get firstOrder() {
      return firstOrderEffect(inputs[input]!.values, results)
    },
  }))
  shares.sort((one, other) => other.share - one.share || one.input - other.input)
  return { shares, explained: Math.min(1, Math.max(0, explained)) }
}

/**
 * Correlation ratio of a result with one input: sort by the input, cut into
 * equal slices, compare the variance between slice means with the whole, and
 * take off what chance alone would give.
 *
 * @param input - n values
 * @param results - n values; all finite
 * @param slices - number of slices; about √n when not given
 * @returns 0 to 1; 0 for a result that does not vary
 * @see Kelley, "An unbiased correlation ratio measure", PNAS 21 (1935) 554–559
 */
export function firstOrderEffect(
  input: Float64Array,
  results: Float64Array,
  slices = Math.max(2, Math.min(32, Math.round(Math.sqrt(input.length)))),
): number {
  const count = input.length
  requireWithin('slices', slices, 2, Math.floor(count / 2))
  const order = orderOf(input)
  const mean = meanOf(results)
  let total = 0
  for (let place = 0; place < count; place++) total += (results[place]! - mean) ** 2
  if (total <= 1e-24 * count * mean * mean || input[order[0]!] === input[order[count - 1]!])
    return 0
  let between = 0
  for (let slice = 0; slice < slices; slice++) {
    const from = Math.round((slice * count) / slices)
    const to = Math.round(((slice + 1) * count) / slices)
    let sum = 0
    for (let place = from; place < to; place++) sum += results[order[place]!]! - mean
    between += (sum * sum) / (to - from)
  }
  const ratio = between / total
  return Math.max(0, 1 - ((1 - ratio) * (count - 1)) / (count - slices))
}

/** Ranks 1 … n; equal values share the mean of their ranks. */
export function ranks(values: Float64Array): Float64Array {
  const order = orderOf(values)
  const ranked = new Float64Array(values.length)
  let start = 0
  while (start < order.length) {
    let end = start + 1
    while (end < order.length && values[order[end]!] === values[order[start]!]) end++
    for (let place = start; place < end; place++) ranked[order[place]!] = (start + end + 1) / 2
    start = end
  }
  return ranked
}

/** Places of the values from least to greatest, equals in the order they came. */
function orderOf(values: Float64Array): Uint32Array {
  // Sorting plain numbers and looking places up is several times faster than sorting places.
  const sorted = values.toSorted()
  const taken = new Uint32Array(values.length)
  const order = new Uint32Array(values.length)
  values.forEach((value, place) => {
    const first = firstNotBelow(sorted, value)
    order[first + taken[first]!] = place
    taken[first]!++
  })
  return order
}

function firstNotBelow(sorted: Float64Array, value: number): number {
  let low = 0
  let high = sorted.length - 1
  while (low < high) {
    const middle = (low + high) >>> 1
    if (sorted[middle]! < value) low = middle + 1
    else high = middle
  }
  return low
}

function requireFinite(argument: string, values: Float64Array): void {
  const odd = values.findIndex((value) => !Number.isFinite(value))
  if (odd >= 0) throw new DomainError(`${argument}[${odd}]`, values[odd], 'a finite number')
}

/** Mean 0, sum of squares 1; a column that does not vary becomes all zeros. */
function standardise(values: Float64Array): Float64Array {
  const mean = meanOf(values)
  const scaled = new Float64Array(values.length)
  let squares = 0
  for (let place = 0; place < values.length; place++) squares += (values[place]! - mean) ** 2
  const length = Math.sqrt(squares)
  if (length === 0) return scaled
  for (let place = 0; place < values.length; place++) {
    scaled[place] = (values[place]! - mean) / length
  }
  return scaled
}

function meanOf(values: Float64Array): number {
  let sum = 0
  for (let place = 0; place < values.length; place++) sum += values[place]!
  return sum / values.length
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0
  for (let place = 0; place < one.length; place++) sum += one[place]! * other[place]!
  return sum
}

/**
 * Solve A x = b for a correlation matrix A by Cholesky factors. A column that
 * is constant, or that repeats earlier ones, has no pivot left and gets 0.
 */
function solveSymmetric(matrix: number[][], right: number[]): number[] {
  const size = right.length
  const lower = matrix.map(() => new Array<number>(size).fill(0))
  const forward = new Array<number>(size).fill(0)
  for (let row = 0; row < size; row++) {
    const current = lower[row]!
    for (let column = 0; column < row; column++) {
      const pivot = lower[column]![column]!
      current[column] =
        pivot > 0 ? (matrix[row]![column]! - upTo(current, lower[column]!, column)) / pivot : 0
    }
    const left = matrix[row]![row]! - upTo(current, current, row)
    current[row] = left > 1e-10 ? Math.sqrt(left) : 0
    if (current[row]! > 0)
      forward[row] = (right[row]! - upTo(current, forward, row)) / current[row]!
  }
  const solution = new Array<number>(size).fill(0)
  for (let row = size - 1; row >= 0; row--) {
    if (lower[row]![row]! === 0) continue
    let sum = forward[row]!
    for (let later = row + 1; later < size; later++) sum -= lower[later]![row]! * solution[later]!
    solution[row] = sum / lower[row]![row]!
  }
  return solution
}

function upTo(one: number[], other: number[], end: number): number {
  let sum = 0
  for (let place = 0; place < end; place++) sum += one[place]! * other[place]!
  return sum
}
