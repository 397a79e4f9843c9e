/** Piston travel from top dead centre, as a share of the stroke, over one closed cycle. */
export interface TravelTable {
  /** Half steps from −180° to +180°: 720·stepsPerDegree + 1 values, share of the stroke. */
  readonly travel: Float64Array
  /** d(travel)/dθ, 1/rad, at the same angles. */
  readonly slope: Float64Array
}

const KEPT = 24
const tables = new Map<string, TravelTable>()

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
  const key = `${rodRatio}/${stepsPerDegree}`
  const kept = tables.get(key)
  if (kept) return kept
  const table = buildTravelTable(rodRatio, stepsPerDegree)
  if (tables.size >= KEPT) tables.delete(tables.keys().next().value as string)
  tables.set(key, table)
  return table
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
