import { pertShapes, type Spread } from './distributions.ts'

const CELLS = 64

/** Quantiles at the nodes, on the unit interval: crowded at both ends, where densities have kinks. */
const NODES = Float64Array.from(
  { length: CELLS + 1 },
  (_, node) => Math.sin((Math.PI * node) / (2 * CELLS)) ** 2,
)

/** Four-point Gauss–Legendre rule on −1 … 1 (Abramowitz & Stegun, table 25.4). */
const GAUSS: readonly (readonly [number, number])[] = [
  [-0.861136311594053, 0.347854845137454],
  [-0.339981043584856, 0.652145154862546],
  [0.339981043584856, 0.652145154862546],
  [0.861136311594053, 0.347854845137454],
]

/**
 * A quick quantile of one PERT distribution, for drawing many samples: the
 * distribution is integrated once, then read back by cubic interpolation.
 *
 * Differs from `pertQuantile` by less than 2e-4 of high − low at any chance, and
 * by less than 2e-5 of it for a chance from 0.001 to 0.999.
 *
 * @returns a function from a chance, 0 to 1, to the figure in the unit of the spread
 * @throws {DomainError} unless low ≤ likely ≤ high
 */
export function pertSampler(spread: Spread): (chance: number) => number {
  const { low, likely, high } = spread
  if (low === high && likely === low) return () => low
  const { alpha, beta } = pertShapes(spread)
  const { lower, upper } = halfTables(alpha, beta)
  const width = high - low
  return (chance) =>
    chance <= 0.5 ? low + width * lookUp(lower, chance) : high - width * lookUp(upper, 1 - chance)
}

/**
 * Nodes of the lower tail. A quantile runs as chance^(1/α) near its end; over
 * the fourth root of the chance it is smooth enough for cubics.
 */
interface HalfTable {
  /** Fourth root of the chance at each node, rising from 0. */
  roots: Float64Array
  /** Slope of quantile over root at each node. */
  slopes: Float64Array
}

function halfTables(alpha: number, beta: number): { lower: HalfTable; upper: HalfTable } {
  const density = (x: number) => x ** (alpha - 1) * (1 - x) ** (beta - 1)
  const areas = new Float64Array(CELLS)
  const densities = NODES.map(density)
  for (let cell = 0; cell < CELLS; cell++) {
    const middle = (NODES[cell]! + NODES[cell + 1]!) / 2
    const half = (NODES[cell + 1]! - NODES[cell]!) / 2
    let area = 0
    for (const [place, weight] of GAUSS) area += weight * density(middle + half * place)
    areas[cell] = half * area
  }
  // The nodes are their own mirror image, so the upper tail is the lower of the mirrored beta.
  return {
    lower: halfTable(areas, densities),
    upper: halfTable(areas.toReversed(), densities.toReversed()),
  }
}

function halfTable(areas: Float64Array, densities: Float64Array): HalfTable {
  const roots = new Float64Array(CELLS + 1)
  areas.forEach((area, cell) => {
    roots[cell + 1] = roots[cell]! + area
  })
  const total = roots[CELLS]!
  const slopes = new Float64Array(CELLS + 1)
  for (let node = 1; node <= CELLS; node++) {
    const root = Math.sqrt(Math.sqrt(roots[node]! / total))
    roots[node] = root
    slopes[node] = (4 * root ** 3 * total) / densities[node]!
  }
  // The end slope is zero, finite or infinite by shape; a chord stands in for it.
  slopes[0] = NODES[1]! / roots[1]!
  return { roots, slopes }
}

function lookUp({ roots, slopes }: HalfTable, chance: number): number {
  const root = Math.sqrt(Math.sqrt(chance))
  let low = 0
  let high = CELLS
  while (high - low > 1) {
    const middle = (low + high) >>> 1
    if (roots[middle]! <= root) low = middle
    else high = middle
  }
  const width = roots[high]! - roots[low]!
  const t = (root - roots[low]!) / width
  const s = 1 - t
  return (
    NODES[low]! * s * s * (1 + 2 * t) +
    NODES[high]! * t * t * (1 + 2 * s) +
    width * s * t * (slopes[low]! * s - slopes[high]! * t)
  )
}
