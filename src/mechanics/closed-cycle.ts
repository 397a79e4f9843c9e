import { travelTable } from './cylinder-volume.ts'
import type { GammaFit } from './gas-properties.ts'
import type { WallHeat } from './wall-heat.ts'
import { type WallTerms, wallRate, wallTerms } from './wall-terms.ts'
import { type Burn, burnRate, burntShare } from './wiebe.ts'

/** Everything the integration of one closed cycle (−180° to +180°) needs. SI. */
export interface ClosedCycleInput {
  readonly bore: number
  readonly stroke: number
  /** Crank radius / rod length; 0 for an infinitely long rod. */
  readonly rodRatio: number
  readonly compressionRatio: number
  /** rad/s */
  readonly speed: number
  /** Pa and K at the start, −180°. */
  readonly startPressure: number
  readonly startTemperature: number
  /** J, full heating of the burn; the burn frees 1 − e^−a of it. */
  readonly addedHeat: number
  readonly burn: Burn
  readonly gamma: GammaFit
  readonly wallHeat: WallHeat
  readonly stepsPerDegree: number
}

/** What the integration gives. */
export interface ClosedCycle {
  /** Pa at each whole degree from −180° to +180°, 361 values. */
  readonly pressure: Float64Array
  /** Pa, and rad after firing top dead centre, between the steps. */
  readonly peakPressure: number
  readonly peakAngle: number
  /** ∫ p dV from −180° to +180°, J. */
  readonly work: number
  /** J to the walls. */
  readonly wallLoss: number
  /** Greatest mean gas temperature, K. */
  readonly peakTemperature: number
}

/**
 * Integrate dp/dθ = −γ (p/V) dV/dθ + (γ − 1)/V · d(Q_burn − Q_wall)/dθ by the classical
 * fourth-order Runge–Kutta method. Wall heat changes slowly, so it is taken once a step, at the
 * middle, from the pressure carried forward; the burn's heat is exact over each step.
 */
export function closedCycle(input: ClosedCycleInput): ClosedCycle {
  const { stepsPerDegree } = input
  const steps = 360 * stepsPerDegree
  const fine = new Float64Array(steps + 1)
  const sums = march(input, fine)
  const pressure = new Float64Array(361)
  for (let i = 0; i <= 360; i++) pressure[i] = fine[i * stepsPerDegree]!
  const peak = refinePeak(fine, sums.peakIndex)
  return {
    pressure,
    peakPressure: peak.value,
    peakAngle: ((peak.index - steps / 2) * Math.PI) / (steps / 2),
    work: sums.work,
    wallLoss: sums.wallLoss,
    peakTemperature: sums.peakTemperature,
  }
}

/** The top of the parabola through the highest step and its neighbours. */
function refinePeak(values: Float64Array, index: number): { value: number; index: number } {
  const here = values[index]!
  if (index === 0 || index === values.length - 1) return { value: here, index }
  const left = values[index - 1]!
  const right = values[index + 1]!
  const bend = left - 2 * here + right
  if (!(bend < 0)) return { value: here, index }
  const shift = (0.5 * (left - right)) / bend
  return { value: here - 0.25 * (left - right) * shift, index: index + shift }
}

/**
 * dQ/dθ (J/rad) at the start, middle and end of each step, three values a step. The middle one
 * is set so that Simpson's rule gives each step exactly the heat that Wiebe's function frees in
 * it; a burn too short for the steps is spread evenly over each.
 */
function burnHeatTable(input: ClosedCycleInput, steps: number, step: number): Float64Array {
  const { burn, wallHeat } = input
  const rates = new Float64Array(3 * steps)
  const heat = input.addedHeat * (wallHeat.kind === 'share' ? 1 - wallHeat.share : 1)
  if (heat === 0) return rates
  const short = burn.duration < 6 * step
  const first = Math.max(0, Math.floor((burn.start + Math.PI) / step))
  const last = Math.min(steps, Math.ceil((burn.start + burn.duration + Math.PI) / step))
  let burnt = burntShare(first * step - Math.PI, burn)
  for (let i = first; i < last; i++) {
    const angle = i * step - Math.PI
    const next = burntShare(angle + step, burn)
    const mean = (heat * (next - burnt)) / step
    const left = short ? mean : heat * burnRate(angle, burn)
    const right = short ? mean : heat * burnRate(angle + step, burn)
    rates[3 * i] = left
    rates[3 * i + 1] = (6 * mean - left - right) / 4
    rates[3 * i + 2] = right
    burnt = next
  }
  return rates
}

/** What the slope of pressure needs of the gas; the mass is constant, so T = p V · perEnergy. */
interface Gas {
  readonly constant: number
  readonly linear: number
  readonly quadratic: number
  readonly highest: number
  readonly perEnergy: number
}

/** dp/dθ, Pa/rad, from the first law. */
function pressureSlope(gas: Gas, p: number, v: number, dv: number, q: number): number {
  let t = p * v * gas.perEnergy
  if (t > gas.highest) t = gas.highest
  const g = gas.constant + t * (gas.linear + t * gas.quadratic)
  return ((g - 1) * q - g * p * dv) / v
}

interface Sums {
  work: number
  wallLoss: number
  peakIndex: number
  peakTemperature: number
}

/** One pass over the cycle: fills `out` with the pressure at each step, allocates nothing in it. */
function march(input: ClosedCycleInput, out: Float64Array): Sums {
  const steps = out.length - 1
  const step = (2 * Math.PI) / steps
  const { travel, slope } = travelTable(input.rodRatio, input.stepsPerDegree)
  const swept = (Math.PI / 4) * input.bore * input.bore * input.stroke
  const clearance = swept / (input.compressionRatio - 1)
  const perEnergy = input.startTemperature / (input.startPressure * (swept + clearance))
  const gas: Gas = { ...fitOf(input.gamma), perEnergy }
  const heat = burnHeatTable(input, steps, step)
  const wall: WallTerms | null = wallTerms(input, swept, clearance)
  const sums = { work: 0, wallLoss: 0, peakIndex: 0, peakTemperature: input.startTemperature }
  let p = input.startPressure
  let before = p
  out[0] = p
  for (let i = 0; i < steps; i++) {
    const v = clearance + swept * travel[2 * i]!
    const vMid = clearance + swept * travel[2 * i + 1]!
    const vEnd = clearance + swept * travel[2 * i + 2]!
    const dvMid = swept * slope[2 * i + 1]!
    const loss = wall === null ? 0 : wallRate(wall, 1.5 * p - 0.5 * before, vMid, perEnergy, i)
    const k1 = pressureSlope(gas, p, v, swept * slope[2 * i]!, heat[3 * i]! - loss)
    const qMid = heat[3 * i + 1]! - loss
    const k2 = pressureSlope(gas, p + 0.5 * step * k1, vMid, dvMid, qMid)
    const pMid = p + 0.5 * step * k2
    const k3 = pressureSlope(gas, pMid, vMid, dvMid, qMid)
    const dvEnd = swept * slope[2 * i + 2]!
    const k4 = pressureSlope(gas, p + step * k3, vEnd, dvEnd, heat[3 * i + 2]! - loss)
    const pEnd = p + (step / 6) * (k1 + 2 * (k2 + k3) + k4)
    sums.work += (step / 6) * (p * swept * slope[2 * i]! + 4 * pMid * dvMid + pEnd * dvEnd)
    sums.wallLoss += loss * step
    before = p
    p = pEnd
    out[i + 1] = p
    if (p > out[sums.peakIndex]!) sums.peakIndex = i + 1
    const t = p * vEnd * perEnergy
    if (t > sums.peakTemperature) sums.peakTemperature = t
  }
  return sums
}

function fitOf(fit: GammaFit): Omit<Gas, 'perEnergy'> {
  const { constant, linear, quadratic, highest } = fit
  return { constant, linear, quadratic, highest }
}
