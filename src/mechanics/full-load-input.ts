import { requireWithin } from './domain-error.ts'
import type { FuelId } from './fuels.ts'

export type Induction = 'naturally-aspirated' | 'turbocharged' | 'supercharged' | 'nitrous'

/** One engine at one speed at full load. SI units; ranges are refused outside. */
export interface FullLoadInput {
  /** m */
  readonly bore: number
  readonly stroke: number
  readonly rodLength: number
  /** 6 to 18 */
  readonly compressionRatio: number
  /** 1 to 16 */
  readonly cylinders: number
  /** Crank speed, rad/s, 500 to 12000 r/min. */
  readonly speed: number
  /** rad/s */
  readonly torquePeakSpeed: number
  /** rad/s; kept with the engine, does not change the result at `speed`. */
  readonly highestSpeed: number
  readonly fuel: FuelId
  readonly induction: Induction
  /** Pa gauge, 0 to 4e5; must be 0 for natural aspiration and nitrous. */
  readonly boost: number
  /** 0 (none) to 1 */
  readonly intercoolerEffectiveness: number
  /** Isentropic, 0.5 to 1; default 0.72 turbocharged, 0.60 supercharged (common practice). */
  readonly compressorEfficiency?: number
  /** Gain at the crank of the whole engine from nitrous oxide, W. */
  readonly nitrousPower?: number
  /** Pa; default the standard atmosphere's. */
  readonly ambientPressure?: number
  /** K; default 298. */
  readonly ambientTemperature?: number
  /** Multiplies the breathing curve, default 1, 0.3 to 2. */
  readonly breathingScale?: number
  /** Multiplies the heat of the burn, default 1, 0.3 to 2. */
  readonly heatScale?: number
  /** Air ratio; default that of the fuel. */
  readonly lambda?: number
  /** Pressure in the exhaust, Pa absolute; default from induction, boost and piston speed. */
  readonly exhaustPressure?: number
  /** Mean wall temperature, K, default 450; scale of the wall heat, default 1. */
  readonly wallTemperature?: number
  readonly wallHeatScale?: number
  /** Octane-like number; default that of the fuel. */
  readonly knockNumber?: number
}

/** Refuse engines outside the model's range. */
export function checkFullLoadInput(input: FullLoadInput): void {
  requireWithin('bore', input.bore, 0.04, 0.2, 'm')
  requireWithin('stroke', input.stroke, 0.03, 0.25, 'm')
  requireWithin('compressionRatio', input.compressionRatio, 6, 18)
  requireWithin('cylinders', input.cylinders, 1, 16)
  requireWithin('speed', input.speed, 50, 1400, 'rad/s')
  requireWithin('torquePeakSpeed', input.torquePeakSpeed, 50, 1400, 'rad/s')
  requireWithin('highestSpeed', input.highestSpeed, 50, 1400, 'rad/s')
  requireWithin('boost', input.boost, 0, 4e5, 'Pa')
  requireWithin('compressorEfficiency', input.compressorEfficiency ?? 0.7, 0.5, 1)
  requireWithin('ambientPressure', input.ambientPressure ?? 1e5, 5e4, 1.1e5, 'Pa')
  requireWithin('ambientTemperature', input.ambientTemperature ?? 298, 230, 330, 'K')
  requireWithin('breathingScale', input.breathingScale ?? 1, 0.3, 2)
  requireWithin('heatScale', input.heatScale ?? 1, 0.3, 2)
  requireWithin('nitrousPower', input.nitrousPower ?? 0, 0, 2e6, 'W')
}
