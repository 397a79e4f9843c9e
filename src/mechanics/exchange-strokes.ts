import { travelTable } from './cylinder-volume.ts'

/** Crank angle over which the pressure falls to the back pressure once the valve opens, degrees. */
const BLOWDOWN = 70
/** Crank angle over which the pressure goes from exhaust to intake pressure at overlap, degrees. */
const OVERLAP = 20
/** Crank angle before bottom dead centre over which the intake stroke meets the start, degrees. */
const INTAKE_END = 60

export interface ExchangeInput {
  /** Pressure of the closed cycle, −180° to +180°, 361 values, Pa. */
  readonly closed: Float64Array
  readonly rodRatio: number
  readonly intakePressure: number
  readonly exhaustPressure: number
  /** rad after firing top dead centre, π/2 to π. */
  readonly exhaustOpens: number
}

export interface ExchangeStrokes {
  /** The whole cycle, index 0 = firing top dead centre, 720 values, Pa. */
  readonly pressure: Float64Array
  /** Work of the exchange strokes taken from the crank, over the swept volume, Pa. */
  readonly pumping: number
  /** Expansion work lost as the valve opens before bottom dead centre, over swept volume, Pa. */
  readonly blowdownLoss: number
}

/**
 * Put the closed cycle and the exchange strokes together.
 *
 * After the exhaust valve opens the pressure falls to the back pressure along half a cosine over
 * 70°, crosses to the intake pressure over 20° around top dead centre, and meets the start of
 * compression over the last 60° of the intake stroke. An assumption with the right shape: the
 * gas force there is small beside combustion and beside inertia. With the valve opening at bottom
 * dead centre the fall is instant, as in textbook cycles.
 */
export function exchangeStrokes(input: ExchangeInput): ExchangeStrokes {
  const { closed, intakePressure, exhaustPressure } = input
  const pressure = new Float64Array(720)
  for (let d = 0; d < 180; d++) {
    pressure[540 + d] = closed[d]!
    pressure[d] = closed[180 + d]!
  }
  const release = closed[360]!
  const opens = (input.exhaustOpens * 180) / Math.PI
  const instant = opens > 179.999
  pressure[180] = instant ? release : 0
  for (let d = instant ? 181 : Math.ceil(opens); d < 350; d++) {
    const left = instant ? 0 : 1 - smooth((d - opens) / BLOWDOWN)
    const without = d < 180 ? closed[180 + d]! : release
    pressure[d] = exhaustPressure + (without - exhaustPressure) * left
  }
  for (let d = 350; d < 540; d++) {
    const crossed = smooth((d - 350) / OVERLAP)
    const met = smooth((d - (540 - INTAKE_END)) / INTAKE_END)
    const base = exhaustPressure + (intakePressure - exhaustPressure) * crossed
    pressure[d] = base + (closed[0]! - base) * met
  }
  return { pressure, ...exchangeWork(pressure, closed, input.rodRatio, instant) }
}

/** Half a cosine from 0 to 1. */
function smooth(x: number): number {
  if (x <= 0) return 0
  return x >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * x)
}

/** Trapezoid sums of p·d(travel): mean effective pressures. */
function exchangeWork(
  pressure: Float64Array,
  closed: Float64Array,
  rodRatio: number,
  instant: boolean,
): { pumping: number; blowdownLoss: number } {
  const { travel } = travelTable(rodRatio, 1)
  let blowdownLoss = 0
  for (let d = 90; d < 180; d++) {
    const step = travel[2 * (181 + d)]! - travel[2 * (180 + d)]!
    const lost = closed[180 + d]! - pressure[d]! + closed[181 + d]! - pressure[d + 1]!
    blowdownLoss += 0.5 * lost * step
  }
  let pumping = 0
  for (let d = 180; d < 540; d++) {
    const step = travel[2 * (d - 180 + 1)]! - travel[2 * (d - 180)]!
    const from = d === 180 && instant ? pressure[181]! : pressure[d]!
    pumping -= 0.5 * (from + pressure[d + 1]!) * step
  }
  return { pumping, blowdownLoss }
}
