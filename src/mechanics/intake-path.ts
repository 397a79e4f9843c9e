import { STANDARD_PRESSURE } from './atmosphere.ts'
import { compressorOutlet, intercoolerOutlet } from './charge.ts'
import { DomainError } from './domain-error.ts'
import { meanPistonSpeed } from './friction.ts'
import type { FullLoadInput } from './full-load-input.ts'

const DEFAULT_TEMPERATURE = 298
/** Isentropic compressor efficiencies: common practice, no published source. */
const COMPRESSOR_EFFICIENCY = { turbocharged: 0.72, supercharged: 0.6 } as const
/** Exhaust back pressure: 10 kPa at 20 m/s mean piston speed, by the square. Assumption. */
const BACK_PRESSURE = { rise: 1e4, pistonSpeed: 20 }
/** Turbine inlet gauge pressure / boost. Common practice, no published source. */
const TURBINE_SHARE = 1.2

/** Air in the manifold before fuel, and the compressor's temperature rise: Pa absolute, K, K. */
export interface IntakePath {
  readonly pressure: number
  readonly temperature: number
  readonly compressorRise: number
}

/**
 * Ambient air through compressor and intercooler.
 *
 * @param input - engine and speed
 * @throws {DomainError} if an engine without a compressor is given boost
 */
export function intakePath(input: FullLoadInput): IntakePath {
  const ambient = input.ambientPressure ?? STANDARD_PRESSURE
  const inlet = input.ambientTemperature ?? DEFAULT_TEMPERATURE
  const pressure = ambient + input.boost
  if (input.boost === 0) return { pressure, temperature: inlet, compressorRise: 0 }
  if (input.induction !== 'turbocharged' && input.induction !== 'supercharged') {
    throw new DomainError('boost', input.boost, `0 for ${input.induction}`)
  }
  const efficiency = input.compressorEfficiency ?? COMPRESSOR_EFFICIENCY[input.induction]
  const outlet = compressorOutlet(inlet, pressure / ambient, efficiency)
  const temperature = intercoolerOutlet(outlet, inlet, input.intercoolerEffectiveness)
  return { pressure, temperature, compressorRise: outlet - inlet }
}

/** Exhaust pressure, Pa absolute: by piston speed, and by boost behind a turbine. */
export function backPressure(input: FullLoadInput): number {
  const relative = meanPistonSpeed(input.stroke, input.speed) / BACK_PRESSURE.pistonSpeed
  const turbine = input.induction === 'turbocharged' ? TURBINE_SHARE * input.boost : 0
  const ambient = input.ambientPressure ?? STANDARD_PRESSURE
  return ambient + BACK_PRESSURE.rise * relative * relative + turbine
}
