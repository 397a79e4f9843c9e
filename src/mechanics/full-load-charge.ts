import { STANDARD_PRESSURE } from './atmosphere.ts'
import { trappedCharge, volumetricEfficiency } from './breathing.ts'
import {
  airDensity,
  airPressureShare,
  compressorOutlet,
  compressorPower,
  evaporativeCooling,
  intercoolerOutlet,
} from './charge.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { CHEN_FLYNN, meanPistonSpeed } from './friction.ts'
import { FUELS, type FuelId, heatPerAir } from './fuels.ts'
import { AIR_GAS_CONSTANT } from './gas-properties.ts'
import { nitrousFuel, nitrousHeat } from './nitrous.ts'

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

/** Usual indicated mean effective pressure at the torque peak, Pa; only tilts the breathing. */
const USUAL_IMEP = {
  'naturally-aspirated': 1.4e6,
  nitrous: 1.4e6,
  turbocharged: 2.3e6,
  supercharged: 1.8e6,
} as const
/** d(ln imep)/d(ln speed) as wall heat has less time at higher speed. Found with this model. */
const HEAT_GAIN = 0.03

const DEFAULT_TEMPERATURE = 298
/** Isentropic compressor efficiencies: common practice, no published source. */
const COMPRESSOR_EFFICIENCY = { turbocharged: 0.72, supercharged: 0.6 } as const
/** Mechanical efficiency of a supercharger's drive: common practice, no published source. */
const DRIVE_EFFICIENCY = 0.95
/** Exhaust back pressure: 10 kPa at 20 m/s mean piston speed, by the square. Assumption. */
const BACK_PRESSURE = { rise: 1e4, pistonSpeed: 20 }
/** Turbine inlet gauge pressure / boost. Common practice, no published source. */
const TURBINE_SHARE = 1.2
/** The start temperature is not let below this, K. */
const COLDEST = 220

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
  const swept = (Math.PI / 4) * input.bore * input.bore * input.stroke
  const breathing = volumetricEfficiency(
    input.speed,
    input.torquePeakSpeed,
    breathingTilt(input),
    input.breathingScale,
  )
  const airPressure = path.pressure * airPressureShare(fuel, lambda)
  const airMass = breathing * swept * airDensity(airPressure, chargeTemperature)
  const fuelMass =
    airMass / (fuel.stoichiometricRatio * lambda) + nitrousMass * nitrousFuel(fuel, lambda)
  const exhaustPressure = input.exhaustPressure ?? backPressure(input)
  const freshMass = airMass / (fuel.stoichiometricRatio * lambda) + airMass
  const trapped = trappedCharge(
    freshMass,
    chargeTemperature,
    exhaustPressure,
    swept,
    input.compressionRatio,
    AIR_GAS_CONSTANT,
  )
  const start = withNitrous(trapped, nitrousMass + fuelMass + airMass - freshMass)
  const cycles = (input.speed / (4 * Math.PI)) * input.cylinders
  return {
    manifoldPressure: path.pressure,
    chargeTemperature,
    breathing,
    startPressure: start.pressure,
    startTemperature: start.temperature,
    exhaustPressure,
    residualShare: trapped.residualShare,
    addedHeat:
      (input.heatScale ?? 1) *
      (airMass * heatPerAir(fuel, lambda) + nitrousMass * nitrousHeat(fuel, lambda)),
    airMass,
    fuelMass,
    nitrousMass,
    lambda,
    compressorPower:
      input.induction === 'supercharged'
        ? compressorPower(airMass * cycles, path.compressorRise, DRIVE_EFFICIENCY)
        : 0,
  }
}

/** A charge colder than this no longer evaporates fuel, K. Chosen, no published source. */
const COLDEST_EVAPORATED = 270

/** Charge temperature once its fuel has evaporated as far as it will, K. */
function evaporated(temperature: number, cooling: number): number {
  return Math.min(temperature, Math.max(COLDEST_EVAPORATED, temperature - cooling))
}

/** How fast breathing must still rise at the torque peak to make up for friction's growth. */
function breathingTilt(input: FullLoadInput): number {
  const growth = CHEN_FLYNN.perPistonSpeed * meanPistonSpeed(input.stroke, input.torquePeakSpeed)
  return growth / USUAL_IMEP[input.induction] - HEAT_GAIN
}

/** Pressure and temperature in the manifold, before fuel. */
function intakePath(input: FullLoadInput) {
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
function backPressure(input: FullLoadInput): number {
  const relative = meanPistonSpeed(input.stroke, input.speed) / BACK_PRESSURE.pistonSpeed
  const turbine = input.induction === 'turbocharged' ? TURBINE_SHARE * input.boost : 0
  const ambient = input.ambientPressure ?? STANDARD_PRESSURE
  return ambient + BACK_PRESSURE.rise * relative * relative + turbine
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
