import type { Build } from '../build/build.ts'
import { triangularQuantile } from '../mechanics/distributions.ts'
import { lowDiscrepancy } from '../mechanics/low-discrepancy.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { SCATTER_IDS } from '../rulebook/schema-tables.ts'
import { remembered } from './memory.ts'

/** Every name has a column of its own, whatever else is drawn, so that draws never shift. */
const COLUMNS = [
  ...SCATTER_IDS,
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
  return remembered(cubes, `${count}/${seed}`, () => lowDiscrepancy(count, COLUMNS.length, seed))
}

/** Low, likely and high of something drawn. */
export interface Ends {
  readonly low: number
  readonly likely: number
  readonly high: number
}

/** Drawn last, by all that they rest on: most spreads are those of the rulebook, for every build. */
const kept = new Map<string, Float64Array>()
const MOST_KEPT = 256

/**
 * The values of one uncertain figure over the sampled cases, the likely one first. Drawn once,
 * then remembered: none may be changed.
 *
 * @throws {RangeError} if the name has no column among the sampled figures
 */
export function drawn(name: string, ends: Ends, rulebook: Rulebook): Float64Array {
  const { low, likely, high } = ends
  const { samples, seed } = rulebook.loadCases
  if (kept.size > MOST_KEPT) kept.clear()
  const key = `${name}/${low}/${likely}/${high}/${samples}/${seed}`
  return remembered(kept, key, () => draw(name, ends, rulebook))
}

function draw(name: string, ends: Ends, { loadCases }: Rulebook): Float64Array {
  const { samples: count, seed } = loadCases
  const column = (COLUMNS as readonly string[]).indexOf(name)
  if (column < 0) throw new RangeError(`"${name}" has no column among the sampled figures`)
  const uniform = cube(count, seed)
  const certain = ends.low === ends.high
  const values = new Float64Array(count + 1)
  values[0] = ends.likely
  for (let row = 0; row < count; row++) {
    const chance = uniform[row * COLUMNS.length + column]!
    values[row + 1] = certain ? ends.likely : triangularQuantile(chance, ends)
  }
  return values
}

/** What was drawn of each spread of rules/scatter.json, and for which load cases. */
const scatter = new WeakMap<Ends, { of: Rulebook['loadCases']; values: Float64Array }>()

/** The values of an item of rules/scatter.json for a build; undefined where it has no spread. */
export function scattered(
  { id, take }: Rulebook['scatter'][number],
  build: Build,
  rulebook: Rulebook,
): Float64Array | undefined {
  const spread =
    'by' in take ? take.cases[String(build.facts[take.by as keyof Build['facts']].value)] : take
  if (!spread) return undefined
  const known = scatter.get(spread)
  if (known?.of === rulebook.loadCases) return known.values
  const values = drawn(id, spread, rulebook)
  scatter.set(spread, { of: rulebook.loadCases, values })
  return values
}

/** An assumed figure's ends over its likely value. A said one scatters only as far as its own low and high. */
export function doubt(build: Build, key: string): Ends | undefined {
  const fact = build.facts[key as keyof Build['facts']]
  if (typeof fact.value !== 'number' || fact.value <= 0) return undefined
  const { value, low = value, high = value } = fact
  if (low === value && high === value) return undefined
  return { low: low / value, likely: 1, high: high / value }
}
