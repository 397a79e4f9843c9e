import { STANDARD_PRESSURE } from './atmosphere.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { chenFlynnFriction, meanPistonSpeed } from './friction.ts'
import { FUELS } from './fuels.ts'
import { type FullLoadCharge, fullLoadCharge } from './full-load-charge.ts'
import { checkFullLoadInput, type FullLoadInput } from './full-load-input.ts'
import { type GasCycle, gasCycle } from './gas-cycle.ts'
import { knockLimit } from './knock.ts'
import { displacementOf, mepOfTorque, torqueOfMep } from './mean-effective-pressure.ts'
import { nitrousDose, nitrousHeat } from './nitrous.ts'
import { BEST_TORQUE_HALF_BURNT } from './phasing.ts'
import { burnDuration, halfBurntShare, WIEBE_COMPLETENESS, WIEBE_FORM } from './wiebe.ts'

/** One engine at one speed at full load: what the crank train and the books need. */
export interface FullLoad {
  readonly cycle: GasCycle
  /** Mean effective pressures at the crank and of friction, Pa. */
  readonly bmep: number
  readonly fmep: number
  /** Whole engine, N m and W. */
  readonly torque: number
  readonly power: number
  /** Pa absolute */
  readonly manifoldPressure: number
  /** In the manifold, K. */
  readonly chargeTemperature: number
  readonly knockLimited: boolean
  /** Burn later than at best torque, rad. */
  readonly sparkRetard: number
  /** Volumetric efficiency of manifold air. */
  readonly breathing: number
  readonly charge: FullLoadCharge
}

/** Mean over head, piston and liner, K. Chosen within the range of textbooks, from memory. */
const WALL_TEMPERATURE = 450
/** The exhaust valve opens 50° before bottom dead centre. Common practice. */
const EXHAUST_OPENS = (130 * Math.PI) / 180

/**
 * Gas cycle, torque and power of an engine at full load.
 *
 * Charge by breathing, boost and fuel; burn at best-torque phasing, later where knock limits it;
 * wall heat by Woschni; friction by Chen & Flynn; a mechanically driven compressor's power is
 * taken off.
 *
 * @throws {DomainError} if an input does not fit its range
 */
export function fullLoad(input: FullLoadInput): FullLoad {
  checkFullLoadInput(input)
  const base = runWith(input, 0)
  const power = input.nitrousPower ?? 0
  if (power === 0) return base
  if (input.induction !== 'nitrous') {
    throw new DomainError('nitrousPower', power, `0 for ${input.induction}`)
  }
  const fuel = FUELS[input.fuel]
  const heat = nitrousHeat(fuel, base.charge.lambda) * (input.heatScale ?? 1)
  const swept = (Math.PI / 4) * input.bore * input.bore * input.stroke
  const efficiency = (base.cycle.imepGross * swept) / base.charge.addedHeat
  const dose = nitrousDose(power, input.speed, input.cylinders, efficiency, heat)
  const first = runWith(input, dose)
  // The first dose assumes the base engine's efficiency; its gain corrects the second.
  const gain = first.power - base.power
  const correction = Math.min(1.5, Math.max(0.67, power / Math.max(gain, power / 2)))
  return runWith(input, dose * correction)
}

function runWith(input: FullLoadInput, nitrousMass: number): FullLoad {
  const charge = fullLoadCharge(input, nitrousMass)
  const fuel = FUELS[input.fuel]
  const knock = knockLimit({
    knockNumber: input.knockNumber ?? fuel.knockNumber,
    compressionRatio: input.compressionRatio,
    startPressure: charge.startPressure,
    startTemperature: charge.startTemperature,
    speed: input.speed,
  })
  const duration = burnDuration(input.speed, fuel, charge.lambda)
  const half = halfBurntShare(WIEBE_COMPLETENESS, WIEBE_FORM) * duration
  const cycle = gasCycle({
    ...geometry(input),
    startPressure: charge.startPressure,
    startTemperature: charge.startTemperature,
    addedHeat: charge.addedHeat,
    burnStart: BEST_TORQUE_HALF_BURNT + knock.retard - half,
    burnDuration: duration,
    wallHeat: wallOf(input),
    intakePressure: charge.manifoldPressure,
    exhaustPressure: charge.exhaustPressure,
    exhaustOpens: EXHAUST_OPENS,
  })
  return {
    cycle,
    ...output(input, cycle, charge.compressorPower),
    manifoldPressure: charge.manifoldPressure,
    chargeTemperature: charge.chargeTemperature,
    knockLimited: knock.limited,
    sparkRetard: knock.retard,
    breathing: charge.breathing,
    charge,
  }
}

/** Friction, brake mean effective pressure, torque (bmep V/4π) and power. */
function output(input: FullLoadInput, cycle: GasCycle, drivePower: number) {
  const displacement = displacementOf(input.bore, input.stroke, input.cylinders)
  const pistonSpeed = meanPistonSpeed(input.stroke, input.speed)
  const fmep = chenFlynnFriction(cycle.peakPressure, pistonSpeed)
  const driveMep = mepOfTorque(drivePower / input.speed, displacement)
  const bmep = cycle.imepNet - fmep - driveMep
  const torque = torqueOfMep(bmep, displacement)
  return { bmep, fmep, torque, power: torque * input.speed }
}

function geometry(input: FullLoadInput) {
  const { bore, stroke, rodLength, compressionRatio, speed } = input
  return { bore, stroke, rodLength, compressionRatio, speed }
}

function wallOf(input: FullLoadInput) {
  const wallTemperature = input.wallTemperature ?? WALL_TEMPERATURE
  return { kind: 'woschni', wallTemperature, scale: input.wallHeatScale ?? 1 } as const
}

/** Manifold pressure behind a shut throttle, Pa absolute. Common practice: about 0.3 bar. */
const CLOSED_THROTTLE_PRESSURE = 3e4

/** Charge at the start of compression behind a shut throttle, K. Chosen, no published source. */
const CLOSED_THROTTLE_TEMPERATURE = 330

/**
 * The motored cycle with the throttle shut, for the load that inertia makes with little gas
 * pressure against it.
 *
 * @param input - engine and speed
 * @param manifoldPressure - Pa absolute, 1e4 to 1e5; default 30 kPa
 * @throws {DomainError} if an input does not fit its range
 */
export function closedThrottle(
  input: FullLoadInput,
  manifoldPressure = CLOSED_THROTTLE_PRESSURE,
): GasCycle {
  checkFullLoadInput(input)
  requireWithin('manifoldPressure', manifoldPressure, 1e4, 1e5, 'Pa')
  return gasCycle({
    ...geometry(input),
    startPressure: manifoldPressure,
    startTemperature: CLOSED_THROTTLE_TEMPERATURE,
    addedHeat: 0,
    burnStart: 0,
    burnDuration: 1,
    wallHeat: wallOf(input),
    exhaustPressure: input.ambientPressure ?? STANDARD_PRESSURE,
    exhaustOpens: EXHAUST_OPENS,
  })
}
