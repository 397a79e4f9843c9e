import type { ClosedCycleInput } from './closed-cycle.ts'
import { travelTable } from './cylinder-volume.ts'
import { WOSCHNI } from './wall-heat.ts'

/** Terms of Woschni's correlation that do not change over the cycle. */
export interface WallTerms {
  readonly factor: number
  readonly baseArea: number
  readonly linerPerVolume: number
  readonly gasSpeed: number
  readonly burnSpeed: number
  readonly temperature: number
  /** Step from which the burn stirs the gas. */
  readonly burnStep: number
  readonly startPressure: number
  /** Motored pressure / start pressure at the middle of each step. */
  readonly motored: Float64Array
}

/** Piston crown and head together, in bore circles: flat crown, head one fifth larger. Assumption. */
const END_AREAS = 2.2

/**
 * Prepare Woschni's correlation for one cycle.
 *
 * @param input - the cycle
 * @param swept - m³
 * @param clearance - m³
 * @returns the terms, or null when the cycle has no such wall heat
 */
export function wallTerms(
  input: ClosedCycleInput,
  swept: number,
  clearance: number,
): WallTerms | null {
  const { wallHeat, bore, speed, stepsPerDegree } = input
  if (wallHeat.kind !== 'woschni') return null
  const startEnergy = input.startPressure * (swept + clearance)
  const steps = 360 * stepsPerDegree
  return {
    factor: (wallHeat.scale * WOSCHNI.factor * bore ** -0.2) / speed,
    baseArea: END_AREAS * (Math.PI / 4) * bore * bore - (4 * clearance) / bore,
    linerPerVolume: 4 / bore,
    gasSpeed: (WOSCHNI.pistonSpeedFactor * speed * input.stroke) / Math.PI,
    burnSpeed: (WOSCHNI.burnFactor * swept * input.startTemperature) / startEnergy,
    temperature: wallHeat.wallTemperature,
    burnStep: input.addedHeat > 0 ? steps * (0.5 + input.burn.start / (2 * Math.PI)) : steps,
    startPressure: input.startPressure,
    motored: motoredTable(input.rodRatio, input.compressionRatio, stepsPerDegree),
  }
}

/**
 * Heat to the walls at one step, J/rad. p^0.8 T^−0.53 w^0.8 is taken as one exponential.
 *
 * @param wall - prepared terms
 * @param p - pressure at the middle of the step, Pa
 * @param v - volume there, m³
 * @param perEnergy - T/(p V), K/J
 * @param i - step
 */
export function wallRate(
  wall: WallTerms,
  p: number,
  v: number,
  perEnergy: number,
  i: number,
): number {
  const t = p * v * perEnergy
  let w = wall.gasSpeed
  if (i >= wall.burnStep) {
    const rise = p - wall.startPressure * wall.motored[i]!
    if (rise > 0) w += wall.burnSpeed * rise
  }
  const power =
    WOSCHNI.pressureExponent * Math.log(p * w) + WOSCHNI.temperatureExponent * Math.log(t)
  const area = wall.baseArea + wall.linerPerVolume * v
  return wall.factor * Math.exp(power) * area * (t - wall.temperature)
}

const KEPT = 24
const motoredTables = new Map<string, Float64Array>()

/** (V1/V)^1.32 at the middle of each step; kept, as the same engine is asked for again. */
function motoredTable(rodRatio: number, ratio: number, stepsPerDegree: number): Float64Array {
  const key = `${rodRatio}/${ratio}/${stepsPerDegree}`
  const kept = motoredTables.get(key)
  if (kept) return kept
  const { travel } = travelTable(rodRatio, stepsPerDegree)
  const table = new Float64Array(360 * stepsPerDegree)
  for (let i = 0; i < table.length; i++) {
    const volume = (1 + (ratio - 1) * travel[2 * i + 1]!) / ratio
    table[i] = volume ** -WOSCHNI.motoredExponent
  }
  if (motoredTables.size >= KEPT) motoredTables.delete(motoredTables.keys().next().value as string)
  motoredTables.set(key, table)
  return table
}
