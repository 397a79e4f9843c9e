/** Piston travel from top dead centre over one closed cycle, −180° to +180°, at every half step. */
export interface TravelTable {
  /** x/S, share of the stroke: 720·stepsPerDegree + 1 values. */
  readonly travel: Float64Array
  /** d(x/S)/dθ, 1/rad, at the same angles. */
  readonly slope: Float64Array
}

/** Cylinder volume over one closed cycle, in volumes at bottom dead centre, at every half step. */
export interface VolumeTable {
  /** V/V1: 720·stepsPerDegree + 1 values. */
  readonly volume: Float64Array
  /** V1/V, kept so that the integration need not divide. */
  readonly inverse: Float64Array
  /** d(ln V)/dθ, 1/rad. */
  readonly logSlope: Float64Array
  /** (V1/V)^n, n of the motored pressure in wall heat. */
  readonly motored: Float64Array
}

/** Polytropic exponent of the motored pressure. Common for a cooled charge, no published source. */
const MOTORED_EXPONENT = 1.32

/** A table and the numbers it was built from. */
interface Kept<T> {
  readonly rodRatio: number
  readonly ratio: number
  readonly steps: number
  readonly table: T
}

const KEPT = 24
const travelTables: Kept<TravelTable>[] = []
const volumeTables: Kept<VolumeTable>[] = []

/** The table of these numbers, newest first; a plain search, as text keys would cost more. */
function find<T>(kept: Kept<T>[], rodRatio: number, ratio: number, steps: number): T | null {
  for (let i = kept.length - 1; i >= 0; i--) {
    const entry = kept[i]!
    if (entry.ratio === ratio && entry.rodRatio === rodRatio && entry.steps === steps) {
      return entry.table
    }
  }
  return null
}

function keep<T>(kept: Kept<T>[], entry: Kept<T>): T {
  if (kept.length >= KEPT) kept.shift()
  kept.push(entry)
  return entry.table
}

/**
 * Piston travel and its slope on exact slider-crank motion, at every half step of a closed
 * cycle. Tables are kept, as the same engine is asked for again and again.
 *
 * x/S = (1 − cos θ)/2 + (1 − √(1 − λ² sin² θ))/(2λ), λ = crank radius / rod length.
 *
 * @param rodRatio - λ, crank radius / rod length, 0 (infinitely long rod) to below 1
 * @param stepsPerDegree - whole steps in a degree, 1 or more
 * @returns the table; treat as read-only
 * @see Heywood, Internal Combustion Engine Fundamentals, 1988, eq. 2.4–2.6, from memory
 */
export function travelTable(rodRatio: number, stepsPerDegree: number): TravelTable {
  const found = find(travelTables, rodRatio, 0, stepsPerDegree)
  if (found) return found
  const table = buildTravelTable(rodRatio, stepsPerDegree)
  return keep(travelTables, { rodRatio, ratio: 0, steps: stepsPerDegree, table })
}

/**
 * Cylinder volume on exact slider-crank motion: V/V1 = (1 + (r − 1) x/S)/r.
 *
 * @param rodRatio - λ, crank radius / rod length, 0 to below 1
 * @param compressionRatio - r, above 1
 * @param stepsPerDegree - whole steps in a degree, 1 or more
 * @returns the table; treat as read-only
 */
export function volumeTable(
  rodRatio: number,
  compressionRatio: number,
  stepsPerDegree: number,
): VolumeTable {
  const found = find(volumeTables, rodRatio, compressionRatio, stepsPerDegree)
  if (found) return found
  const table = buildVolumeTable(travelTable(rodRatio, stepsPerDegree), compressionRatio)
  return keep(volumeTables, { rodRatio, ratio: compressionRatio, steps: stepsPerDegree, table })
}

function buildVolumeTable({ travel, slope }: TravelTable, ratio: number): VolumeTable {
  const count = travel.length
  const volume = new Float64Array(count)
  const inverse = new Float64Array(count)
  const logSlope = new Float64Array(count)
  const motored = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    volume[i] = (1 + (ratio - 1) * travel[i]!) / ratio
    inverse[i] = 1 / volume[i]!
    logSlope[i] = ((ratio - 1) / ratio) * slope[i]! * inverse[i]!
    motored[i] = inverse[i]! ** MOTORED_EXPONENT
  }
  return { volume, inverse, logSlope, motored }
}

function buildTravelTable(rodRatio: number, stepsPerDegree: number): TravelTable {
  const count = 720 * stepsPerDegree + 1
  const travel = new Float64Array(count)
  const slope = new Float64Array(count)
  const middle = (count - 1) / 2
  for (let i = 0; i < count; i++) {
    const angle = ((i - middle) * Math.PI) / middle
    travel[i] = pistonTravel(angle, rodRatio)
    slope[i] = pistonTravelSlope(angle, rodRatio)
  }
  return { travel, slope }
}

/** x/S at a crank angle (rad from top dead centre); see {@link travelTable}. */
export function pistonTravel(angle: number, rodRatio: number): number {
  const sin = Math.sin(angle)
  const base = (1 - Math.cos(angle)) / 2
  if (rodRatio === 0) return base
  // (1 − √(1 − q))/λ written without the cancellation at small λ.
  const q = rodRatio * rodRatio * sin * sin
  return base + q / (2 * rodRatio * (1 + Math.sqrt(1 - q)))
}

/** d(x/S)/dθ at a crank angle, 1/rad; see {@link travelTable}. */
export function pistonTravelSlope(angle: number, rodRatio: number): number {
  const sin = Math.sin(angle)
  const root = Math.sqrt(1 - rodRatio * rodRatio * sin * sin)
  return (sin / 2) * (1 + (rodRatio * Math.cos(angle)) / root)
}
