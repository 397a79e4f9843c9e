import { trappedCharge, volumetricEfficiency } from './breathing.ts'
import { airDensity, airPressureShare, compressorPower, evaporativeCooling } from './charge.ts'
import { CHEN_FLYNN, meanPistonSpeed } from './friction.ts'
import { FUELS, heatPerAir } from './fuels.ts'
import type { FullLoadInput } from './full-load-input.ts'
import { AIR_GAS_CONSTANT } from './gas-properties.ts'
import { backPressure, intakePath } from './intake-path.ts'
import { displacementOf } from './mean-effective-pressure.ts'
import { nitrousFuel, nitrousHeat } from './nitrous.ts'

/** The charge of one cylinder at the start of compression. */
export interface FullLoadCharge {
  readonly manifoldPressure: number
  /** In the manifold, fuel evaporated in part, K. */
  readonly chargeTemperature: number
  readonly breathing: number
  readonly startPressure: number
  readonly startTemperature: number
  readonly exhaustPressure: number
  readonly residualShare: number
  /** J a cycle. */
  readonly addedHeat: number
  /** kg a cycle. */
  readonly airMass: number
  readonly fuelMass: number
  readonly nitrousMass: number
  readonly lambda: number
  /** Shaft power a mechanically driven compressor takes from the whole engine, W. */
  readonly compressorPower: number
}

/** Mechanical efficiency of a supercharger's drive: common practice, no published source. */
const DRIVE_EFFICIENCY = 0.95
/** The start temperature is not let below this, K. */
const COLDEST = 220
/** A charge colder than this no longer evaporates fuel, K. Chosen, no published source. */
const COLDEST_EVAPORATED = 270

/**
 * From ambient air to what is trapped in one cylinder: compressor, intercooler, evaporating fuel,
 * breathing, residual gas, added nitrous oxide.
 *
 * @param input - engine and speed
 * @param nitrousMass - kg a cycle and cylinder, 0 for none
 * @throws {DomainError} if an input does not fit its range
 */
export function fullLoadCharge(input: FullLoadInput, nitrousMass = 0): FullLoadCharge {
  const fuel = FUELS[input.fuel]
  const lambda = input.lambda ?? fuel.fullLoadLambda
  const path = intakePath(input)
  const chargeTemperature = evaporated(path.temperature, evaporativeCooling(fuel, lambda))
  const breathing = breathingOf(input)
  const swept = displacementOf(input.bore, input.stroke, 1)
  const airPressure = path.pressure * airPressureShare(fuel, lambda)
  const airMass = breathing * swept * airDensity(airPressure, chargeTemperature)
  const airFuel = airMass / (fuel.stoichiometricRatio * lambda)
  const nitrousFuelMass = nitrousMass * nitrousFuel(fuel, lambda)
  const exhaustPressure = input.exhaustPressure ?? backPressure(input)
  const trapped = trappedCharge(
    airMass + airFuel,
    chargeTemperature,
    exhaustPressure,
    swept,
    input.compressionRatio,
    AIR_GAS_CONSTANT,
  )
  const start = withNitrous(trapped, nitrousMass + nitrousFuelMass)
  const heat = airMass * heatPerAir(fuel, lambda) + nitrousMass * nitrousHeat(fuel, lambda)
  return {
    manifoldPressure: path.pressure,
    chargeTemperature,
    breathing,
    startPressure: start.pressure,
    startTemperature: start.temperature,
    exhaustPressure,
    residualShare: trapped.residualShare,
    addedHeat: (input.heatScale ?? 1) * heat,
    airMass,
    fuelMass: airFuel + nitrousFuelMass,
    nitrousMass,
    lambda,
    compressorPower: drivePower(input, airMass, path.compressorRise),
  }
}

/** Shaft power of a mechanically driven compressor for the whole engine, W. */
function drivePower(input: FullLoadInput, airMass: number, rise: number): number {
  if (input.induction !== 'supercharged') return 0
  const cycles = (input.speed / (4 * Math.PI)) * input.cylinders
  return compressorPower(airMass * cycles, rise, DRIVE_EFFICIENCY)
}

/** Charge temperature once its fuel has evaporated as far as it will, K. */
function evaporated(temperature: number, cooling: number): number {
  return Math.min(temperature, Math.max(COLDEST_EVAPORATED, temperature - cooling))
}

/** Usual indicated mean effective pressure at the torque peak, Pa; only tilts the breathing. */
const USUAL_IMEP = {
  'naturally-aspirated': 1.4e6,
  nitrous: 1.4e6,
  turbocharged: 2.3e6,
  supercharged: 1.8e6,
} as const
/** d(ln imep)/d(ln speed) as wall heat has less time at higher speed. Found with this model. */
const HEAT_GAIN = 0.03

/** Volumetric efficiency; it still rises at the torque peak, to make up for friction's growth. */
function breathingOf(input: FullLoadInput): number {
  const { speed, torquePeakSpeed, stroke, induction, breathingScale } = input
  const growth = CHEN_FLYNN.perPistonSpeed * meanPistonSpeed(stroke, torquePeakSpeed)
  const tilt = growth / USUAL_IMEP[induction] - HEAT_GAIN
  return volumetricEfficiency(speed, torquePeakSpeed, tilt, breathingScale)
}

/**
 * Nitrous oxide boils as it goes in: taken to cool the charge just so far that the added mass
 * fits in at the same pressure (about 50 K for a seventh of the mass), down to 220 K.
 */
function withNitrous(
  trapped: { pressure: number; temperature: number; mass: number },
  added: number,
): { pressure: number; temperature: number } {
  if (added <= 0) return trapped
  const growth = (trapped.mass + added) / trapped.mass
  const temperature = Math.max(COLDEST, trapped.temperature / growth)
  return { temperature, pressure: (trapped.pressure * growth * temperature) / trapped.temperature }
}
