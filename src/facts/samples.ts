import type { Build } from '../build/build.ts'
import { capShare } from '../mechanics/cap-share.ts'
import { triangularQuantile } from '../mechanics/distributions.ts'
import { lowDiscrepancy } from '../mechanics/low-discrepancy.ts'
import { SCALE_RANGE } from '../mechanics/margin-points.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { EngineLoads } from './engine-loads.ts'
import { STRENGTH_FACTS } from './joint-model.ts'

/**
 * One set of sampled cases: for each, how far everything uncertain lies from its
 * likely value, and what the crank then does to the caps. Case 0 is the likely one.
 */
export interface Samples {
  readonly count: number
  /** Pull and side push, N: case × points + point. */
  readonly pull: Float64Array
  readonly side: Float64Array
  readonly points: number
  /** Greatest pull of each case, N. */
  readonly worstPull: Float64Array
  /** Factors and figures by scatter id and by assumed fact key, one for each case. */
  readonly of: ReadonlyMap<string, Float64Array>
}

/** Facts whose doubt moves the gas force (exponent given) or the inertia force. */
const GAS_EXPONENT: Readonly<Record<string, number>> = { bore: 2 }
const INERTIA_EXPONENT: Readonly<Record<string, number>> = {
  stroke: 1,
  peakRpm: 2,
  reciprocatingMass: 0.6,
  bigEndMass: 0.4,
}

/** Facts of the joint whose doubt is sampled beside the rulebook's scatter. */
const JOINT_FACTS = [...STRENGTH_FACTS, 'fastenerTorque', 'registerHeight'] as const

/**
 * Draw the cases. The same build gives the same cases; builds that differ in one
 * fact share the draws of all others, so that they compare like with like.
 *
 * @param shared - cases of the same build under another route: its loads are the same and are
 *   taken over
 */
export function drawSamples(
  build: Build,
  loads: EngineLoads,
  rulebook: Rulebook,
  shared?: Samples,
): Samples {
  const count = rulebook.loadCases.samples
  const draw = drawer(count, rulebook)
  const of = new Map<string, Float64Array>()
  for (const item of rulebook.scatter) {
    const { take } = item
    const spread =
      'by' in take ? take.cases[String(build.facts[take.by as keyof Build['facts']].value)] : take
    if (spread) of.set(item.id, draw(item.id, spread.low, spread.likely, spread.high))
  }
  for (const key of [...FACTORED, ...JOINT_FACTS, ...loads.peakExponents.keys()]) {
    const factor = doubt(build, key)
    if (factor && !of.has(key)) of.set(key, draw(key, factor.low, 1, factor.high))
  }
  return { ...(shared ?? onCaps(loads, of, count + 1)), count: count + 1, of }
}

const FACTORED = [...Object.keys(GAS_EXPONENT), ...Object.keys(INERTIA_EXPONENT)]

/** An assumed figure's ends over its likely value. A said one scatters only as far as its own low and high. */
function doubt(build: Build, key: string): { low: number; high: number } | undefined {
  const fact = build.facts[key as keyof Build['facts']]
  if (typeof fact.value !== 'number' || fact.value <= 0) return undefined
  const { value, low = value, high = value } = fact
  return low === value && high === value ? undefined : { low: low / value, high: high / value }
}

/** Every name has a column of its own, whatever else is drawn, so that draws never shift. */
const COLUMNS = [
  'gasForce',
  'inertiaForce',
  'preload',
  'faceFriction',
  'registerInterference',
  'embedding',
  'capStrength',
  'threadStrength',
  'bore',
  'stroke',
  'peakRpm',
  'reciprocatingMass',
  'bigEndMass',
  'capBoltSpan',
  'capHeight',
  'capWidth',
  'mainJournalDiameter',
  'fastenerTorque',
  'registerHeight',
  'compressionRatio',
  'boost',
  'nitrousPower',
] as const

const cubes = new Map<string, Float64Array>()

function cube(count: number, seed: number): Float64Array {
  const key = `${count}/${seed}`
  let found = cubes.get(key)
  if (!found) {
    found = lowDiscrepancy(count, COLUMNS.length, seed)
    cubes.set(key, found)
  }
  return found
}

function drawer(count: number, { loadCases }: Rulebook) {
  const uniform = cube(count, loadCases.seed)
  return (name: string, low: number, likely: number, high: number): Float64Array => {
    const column = (COLUMNS as readonly string[]).indexOf(name)
    if (column < 0) throw new RangeError(`"${name}" has no column among the sampled figures`)
    const values = new Float64Array(count + 1)
    values[0] = likely
    for (let row = 0; row < count; row++) {
      const chance = uniform[row * COLUMNS.length + column] as number
      values[row + 1] = low === high ? likely : triangularQuantile(chance, { low, likely, high })
    }
    return values
  }
}

function onCaps(
  loads: EngineLoads,
  of: ReadonlyMap<string, Float64Array>,
  count: number,
): Pick<Samples, 'pull' | 'side' | 'points' | 'worstPull'> {
  const { points } = loads.sweep
  const pull = new Float64Array(count * points.length)
  const side = new Float64Array(count * points.length)
  const worstPull = new Float64Array(count)
  const gas = scale(of, 'gasForce', { ...GAS_EXPONENT, ...Object.fromEntries(loads.peakExponents) })
  const inertia = scale(of, 'inertiaForce', INERTIA_EXPONENT)
  for (let row = 0; row < count; row++) {
    const [g, m] = [gas(row), inertia(row)]
    let worst = 0
    for (let index = 0; index < points.length; index++) {
      const point = points[index] as (typeof points)[number]
      const share = capShare(
        g * point.gasX + m * point.inertiaX,
        g * point.gasY + m * point.inertiaY,
      )
      pull[row * points.length + index] = share.pull
      side[row * points.length + index] = share.side
      if (share.pull > worst) worst = share.pull
    }
    worstPull[row] = worst
  }
  return { pull, side, points: points.length, worstPull }
}

function scale(
  of: ReadonlyMap<string, Float64Array>,
  base: string,
  exponents: Readonly<Record<string, number>>,
): (row: number) => number {
  const parts = Object.entries(exponents).flatMap(([key, exponent]) => {
    const values = of.get(key)
    return values && exponent !== 0 ? [{ values, exponent }] : []
  })
  const first = of.get(base) as Float64Array
  return (row) => {
    let product = first[row] as number
    for (const { values, exponent } of parts) product *= (values[row] as number) ** exponent
    // The margin points are proved for this range only.
    return Math.min(SCALE_RANGE.high, Math.max(SCALE_RANGE.low, product))
  }
}
