import { type ClosedCycleInput, closedCycle } from './closed-cycle.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { exchangeStrokes } from './exchange-strokes.ts'
import { AIR_GAS_CONSTANT, constantGamma, GAMMA_FITS, type GammaFitId } from './gas-properties.ts'
import type { WallHeat } from './wall-heat.ts'
import { WIEBE_COMPLETENESS, WIEBE_FORM } from './wiebe.ts'

/** One cylinder over one four-stroke cycle. SI units. */
export interface GasCycleInput {
  /** m, 0.02 to 0.5 */
  readonly bore: number
  /** m, 0.02 to 0.5 */
  readonly stroke: number
  /** Rod length between centres, m, above 0.55 of the stroke, up to 2; null for an infinitely long rod. */
  readonly rodLength: number | null
  /** 2 to 30 */
  readonly compressionRatio: number
  /** Crank speed, rad/s, 10 to 2000; only wall heat by Woschni depends on it. */
  readonly speed: number
  /** Cylinder gas at bottom dead centre before compression: Pa absolute and K. */
  readonly startPressure: number
  readonly startTemperature: number
  /** Heat of the fuel in the cylinder, J; the burn frees 1 − e^−a of it. 0 for a motored cycle. */
  readonly addedHeat: number
  /** Wiebe burn: start (rad after firing top dead centre), duration (rad), a and n. */
  readonly burnStart: number
  readonly burnDuration: number
  /** a, default 5; 1 to 12 */
  readonly burnCompleteness?: number
  /** n, default 3; 1 to 10 */
  readonly burnForm?: number
  /** A constant, or a fit by name. Default `linear`. */
  readonly gamma?: number | GammaFitId
  /** Default none. */
  readonly wallHeat?: WallHeat
  /** Pa absolute; default the start pressure. */
  readonly intakePressure?: number
  /** Pa absolute; default the start pressure. */
  readonly exhaustPressure?: number
  /** Crank angle at which the exhaust valve opens, rad after firing TDC; default π (at BDC). */
  readonly exhaustOpens?: number
  /** Integration steps in a degree, 1 to 200; default 1. */
  readonly stepsPerDegree?: number
}

/** The cycle. Mean effective pressures are over the swept volume. */
export interface GasCycle {
  /** Pa absolute; index 0 = firing top dead centre, one value a degree, 720 values. */
  readonly pressure: Float64Array
  /** Pa absolute. */
  readonly peakPressure: number
  /** rad after firing top dead centre. */
  readonly peakAngle: number
  /** Compression and expansion strokes only, Pa. */
  readonly imepGross: number
  /** All four strokes, Pa. */
  readonly imepNet: number
  /** imepGross − imepNet, Pa; negative when boost exceeds back pressure. */
  readonly pumping: number
  /** Heat to the walls, J a cycle. */
  readonly wallLoss: number
  /** Greatest mean gas temperature, K. */
  readonly peakTemperature: number
  /** Gas mass at the start by the ideal gas law with the constant of air, kg. */
  readonly mass: number
}

/**
 * Cylinder pressure over a four-stroke cycle by a single-zone model: first law, Wiebe burn, exact
 * slider-crank volume, wall heat as asked for.
 *
 * dp/dθ = −γ (p/V) dV/dθ + (γ − 1)/V · (dQ_burn − dQ_wall)/dθ from bottom dead centre to bottom
 * dead centre; the exchange strokes follow the given manifold pressures.
 *
 * @throws {DomainError} if an input does not fit its range
 * @see Ferguson & Kirkpatrick, Internal Combustion Engines: Applied Thermosciences, 3rd ed.,
 *   finite heat release, eq. 2.34 form
 * @see Heywood, Internal Combustion Engine Fundamentals, 1988, section 9.2.2
 */
export function gasCycle(input: GasCycleInput): GasCycle {
  checkGasCycleInput(input)
  const { bore, stroke, rodLength, wallHeat } = input
  const rodRatio = rodLength === null ? 0 : stroke / 2 / rodLength
  const closed = closedCycle(closedInput(input, rodRatio))
  const swept = (Math.PI / 4) * bore * bore * stroke
  const strokes = exchangeStrokes({
    closed: closed.pressure,
    rodRatio,
    intakePressure: input.intakePressure ?? input.startPressure,
    exhaustPressure: input.exhaustPressure ?? input.startPressure,
    exhaustOpens: input.exhaustOpens ?? Math.PI,
  })
  const imepGross = closed.work / swept - strokes.blowdownLoss
  const startVolume = (swept * input.compressionRatio) / (input.compressionRatio - 1)
  return {
    pressure: strokes.pressure,
    peakPressure: closed.peakPressure,
    peakAngle: closed.peakAngle,
    imepGross,
    imepNet: imepGross - strokes.pumping,
    pumping: strokes.pumping,
    wallLoss: wallHeat?.kind === 'share' ? wallHeat.share * input.addedHeat : closed.wallLoss,
    peakTemperature: closed.peakTemperature,
    mass: (input.startPressure * startVolume) / (AIR_GAS_CONSTANT * input.startTemperature),
  }
}

/** The closed cycle's input, defaults filled in. */
function closedInput(input: GasCycleInput, rodRatio: number): ClosedCycleInput {
  const { gamma = 'linear' } = input
  return {
    bore: input.bore,
    stroke: input.stroke,
    rodRatio,
    compressionRatio: input.compressionRatio,
    speed: input.speed,
    startPressure: input.startPressure,
    startTemperature: input.startTemperature,
    addedHeat: input.addedHeat,
    burn: {
      start: input.burnStart,
      duration: input.burnDuration,
      completeness: input.burnCompleteness ?? WIEBE_COMPLETENESS,
      form: input.burnForm ?? WIEBE_FORM,
    },
    gamma: typeof gamma === 'number' ? constantGamma(gamma) : GAMMA_FITS[gamma],
    wallHeat: input.wallHeat ?? { kind: 'none' },
    stepsPerDegree: input.stepsPerDegree ?? 1,
  }
}

/** Refuse what {@link gasCycle} is not valid for. */
function checkGasCycleInput(input: GasCycleInput): void {
  requireWithin('bore', input.bore, 0.02, 0.5, 'm')
  requireWithin('stroke', input.stroke, 0.02, 0.5, 'm')
  if (input.rodLength !== null) {
    requireWithin('rodLength', input.rodLength, 0.55 * input.stroke, 2, 'm')
  }
  requireWithin('compressionRatio', input.compressionRatio, 2, 30)
  requireWithin('speed', input.speed, 10, 2000, 'rad/s')
  requireWithin('startPressure', input.startPressure, 1e3, 3e6, 'Pa')
  requireWithin('startTemperature', input.startTemperature, 200, 1000, 'K')
  requireWithin('addedHeat', input.addedHeat, 0, 1e6, 'J')
  requireWithin('burnStart', input.burnStart, -Math.PI, Math.PI, 'rad')
  requireWithin('burnDuration', input.burnDuration, 1e-6, Math.PI, 'rad')
  requireWithin('burnCompleteness', input.burnCompleteness ?? WIEBE_COMPLETENESS, 1, 12)
  requireWithin('burnForm', input.burnForm ?? WIEBE_FORM, 1, 10)
  requireWithin('intakePressure', input.intakePressure ?? 1e5, 1e3, 3e6, 'Pa')
  requireWithin('exhaustPressure', input.exhaustPressure ?? 1e5, 1e3, 3e6, 'Pa')
  requireWithin('exhaustOpens', input.exhaustOpens ?? Math.PI, Math.PI / 2, Math.PI, 'rad')
  requireWithin('stepsPerDegree', input.stepsPerDegree ?? 1, 1, 200)
  if (!Number.isInteger(input.stepsPerDegree ?? 1)) {
    throw new DomainError('stepsPerDegree', input.stepsPerDegree, 'a whole number')
  }
  const wall = input.wallHeat
  if (wall?.kind === 'share') requireWithin('wallHeat.share', wall.share, 0, 0.6)
  if (wall?.kind === 'woschni') {
    requireWithin('wallHeat.wallTemperature', wall.wallTemperature, 250, 800, 'K')
    requireWithin('wallHeat.scale', wall.scale, 0, 5)
  }
}
