import type { ClosedCycleInput } from './closed-cycle.ts'
import type { VolumeTable } from './cylinder-volume.ts'
import { WOSCHNI } from './wall-heat.ts'

/**
 * Terms of Woschni's correlation that do not change over the cycle. Pressure is in start
 * pressures p1, volume in start volumes V1, heat in p1 V1.
 */
export interface WallTerms {
  readonly factor: number
  readonly baseArea: number
  readonly linerArea: number
  readonly gasSpeed: number
  readonly burnSpeed: number
  readonly startTemperature: number
  readonly wallTemperature: number
  /** Step from which the burn stirs the gas. */
  readonly burnStep: number
  readonly motored: Float64Array
  /**
   * Pressure at the start of the burn / motored table there; infinite before. Set as the march passes,
   * so that the burn's stirring begins from nothing.
   */
  reference: number
}

/** Piston crown and head together, in bore circles: flat crown, head one fifth larger. Assumption. */
const END_AREAS = 2.2

/**
 * Prepare Woschni's correlation for one cycle.
 *
 * @param input - the cycle
 * @param swept - m³
 * @param table - volumes of the cycle
 * @returns the terms, or null when the cycle has no such wall heat
 */
export function wallTerms(
  input: ClosedCycleInput,
  swept: number,
  table: VolumeTable,
): WallTerms | null {
  const { wallHeat, bore, speed, startPressure, startTemperature, compressionRatio } = input
  if (wallHeat.kind !== 'woschni') return null
  const startVolume = (swept * compressionRatio) / (compressionRatio - 1)
  const clearance = startVolume - swept
  const coefficient =
    WOSCHNI.factor *
    bore ** -0.2 *
    startPressure ** WOSCHNI.pressureExponent *
    startTemperature ** WOSCHNI.temperatureExponent
  const steps = 360 * input.stepsPerDegree
  return {
    factor: (wallHeat.scale * coefficient) / (speed * startPressure * startVolume),
    baseArea: END_AREAS * (Math.PI / 4) * bore * bore - (4 * clearance) / bore,
    linerArea: (4 * startVolume) / bore,
    gasSpeed: (WOSCHNI.pistonSpeedFactor * speed * input.stroke) / Math.PI,
    burnSpeed: (WOSCHNI.burnFactor * swept * startTemperature) / startVolume,
    startTemperature,
    wallTemperature: wallHeat.wallTemperature,
    burnStep: input.addedHeat > 0 ? steps * (0.5 + input.burn.start / (2 * Math.PI)) : steps,
    motored: table.motored,
    reference: Number.POSITIVE_INFINITY,
  }
}

/**
 * Heat to the walls at one half step, in p1 V1 a radian.
 * p^0.8 T^−0.53 w^0.8 is taken as one exponential.
 *
 * @param wall - prepared terms
 * @param p - pressure there, p1
 * @param v - volume there, V1
 * @param half - half step
 */
export function wallRate(wall: WallTerms, p: number, v: number, half: number): number {
  const t = p * v
  let w = wall.gasSpeed
  if (half >= 2 * wall.burnStep) {
    if (wall.reference === Number.POSITIVE_INFINITY) wall.reference = p / wall.motored[half]!
    const rise = p - wall.reference * wall.motored[half]!
    if (rise > 0) w += wall.burnSpeed * rise
  }
  const power =
    WOSCHNI.pressureExponent * Math.log(p * w) + WOSCHNI.temperatureExponent * Math.log(t)
  const area = wall.baseArea + wall.linerArea * v
  return wall.factor * Math.exp(power) * area * (t * wall.startTemperature - wall.wallTemperature)
}
