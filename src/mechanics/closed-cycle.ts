import { fillBurnHeat } from './burn-heat.ts'
import { type VolumeTable, volumeTable } from './cylinder-volume.ts'
import type { GammaFit } from './gas-properties.ts'
import type { WallHeat } from './wall-heat.ts'
import { type WallTerms, wallRate, wallTerms } from './wall-terms.ts'
import type { Burn } from './wiebe.ts'

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
 * fourth-order Runge–Kutta method. Wall heat changes slowly, so it is taken once a step from
 * 60° before to 90° after top dead centre and once for two steps elsewhere, at their middle, from
 * the pressure carried forward; the burn's heat is exact over each step.
 */
export function closedCycle(input: ClosedCycleInput): ClosedCycle {
  const { stepsPerDegree, startPressure, compressionRatio } = input
  const steps = 360 * stepsPerDegree
  const startVolume = (sweptVolume(input) * compressionRatio) / (compressionRatio - 1)
  const unit = startPressure * startVolume
  const { fine, heat } = scratchFor(steps)
  const table = volumeTable(input.rodRatio, compressionRatio, stepsPerDegree)
  fillHeat(input, unit, heat)
  const sums = march(input, table, heat, fine)
  const pressure = new Float64Array(361)
  for (let i = 0; i <= 360; i++) pressure[i] = startPressure * fine[i * stepsPerDegree]!
  const top = summit(fine, table)
  const peak = refinePeak(fine, top.index)
  return {
    pressure,
    peakPressure: startPressure * peak.value,
    peakAngle: ((peak.index - steps / 2) * Math.PI) / (steps / 2),
    work: unit * sums.work,
    wallLoss: unit * sums.wallLoss,
    peakTemperature: input.startTemperature * top.temperature,
  }
}

/** A fall of more than this share from one step to the next is a corner. */
const CORNER = 0.02

/** The top of the parabola through the highest step and its neighbours. */
function refinePeak(values: Float64Array, index: number): { value: number; index: number } {
  const here = values[index]!
  if (index === 0 || index === values.length - 1) return { value: here, index }
  const left = values[index - 1]!
  const right = values[index + 1]!
  const bend = left - 2 * here + right
  // A burn shorter than a few steps ends in a corner, which no parabola fits.
  if (!(bend < 0) || here - Math.min(left, right) > CORNER * here) return { value: here, index }
  const shift = (0.5 * (left - right)) / bend
  return { value: here - 0.25 * (left - right) * shift, index: index + shift }
}

/** Heat kept in the gas, in `unit` J a radian; a stated wall share is taken off at once. */
function fillHeat(
  { wallHeat, burn, addedHeat }: ClosedCycleInput,
  unit: number,
  into: Float64Array,
) {
  const kept = wallHeat.kind === 'share' ? 1 - wallHeat.share : 1
  fillBurnHeat(burn, (addedHeat * kept) / unit, into)
}

/** Arrays that one cycle fills and leaves, kept for the next: new ones are dear to collect. */
interface Scratch {
  readonly fine: Float64Array
  readonly heat: Float64Array
}

let scratch: Scratch = { fine: new Float64Array(0), heat: new Float64Array(0) }

function scratchFor(steps: number): Scratch {
  if (scratch.fine.length !== steps + 1) {
    scratch = { fine: new Float64Array(steps + 1), heat: new Float64Array(3 * steps) }
  }
  return scratch
}

interface Sums {
  work: number
  wallLoss: number
}

/**
 * One pass over the cycle: fills `out` with the pressure at each step, allocates nothing in it.
 * Pressure is in start pressures, volume in start volumes, heat and work in p1 V1.
 */
function march(
  input: ClosedCycleInput,
  table: VolumeTable,
  heat: Float64Array,
  out: Float64Array,
): Sums {
  const steps = out.length - 1
  const step = (2 * Math.PI) / steps
  const { volume, inverse, logSlope } = table
  const fit = fitInStartTemperatures(input)
  const wall = wallTerms(input, sweptVolume(input), table)
  const sums = { work: 0, wallLoss: 0 }
  let before = 1
  let loss = 0
  let p = 1
  out[0] = 1
  for (let i = 0; i < steps; i++) {
    const j = 2 * i
    const v = volume[j]!
    const vMid = volume[j + 1]!
    const vEnd = volume[j + 2]!
    const slopeMid = logSlope[j + 1]!
    if (wall !== null) loss = lossInStep(wall, i, steps, p, p - before, vMid, vEnd, loss)
    const qMid = (heat[3 * i + 1]! - loss) * inverse[j + 1]!
    const k1 = rise(fit, p, v, logSlope[j]!, (heat[3 * i]! - loss) * inverse[j]!)
    const k2 = rise(fit, p + 0.5 * step * k1, vMid, slopeMid, qMid)
    const pMid = p + 0.5 * step * k2
    const k3 = rise(fit, pMid, vMid, slopeMid, qMid)
    const qEnd = (heat[3 * i + 2]! - loss) * inverse[j + 2]!
    const k4 = rise(fit, p + step * k3, vEnd, logSlope[j + 2]!, qEnd)
    before = p
    p += (step / 6) * (k1 + 2 * (k2 + k3) + k4)
    // Simpson's rule for ∫ p V d(ln V).
    const pv = before * v * logSlope[j]! + 4 * pMid * vMid * slopeMid
    sums.work += (step / 6) * (pv + p * vEnd * logSlope[j + 2]!)
    sums.wallLoss += loss * step
    out[i + 1] = p
  }
  return sums
}

/** Wall heat of a step: anew from 60° before to 90° after top dead centre, else every second. */
function lossInStep(
  wall: WallTerms,
  i: number,
  steps: number,
  p: number,
  climb: number,
  vMid: number,
  vEnd: number,
  last: number,
): number {
  if (3 * i >= steps && 4 * i < 3 * steps) return wallRate(wall, p + 0.5 * climb, vMid, 2 * i + 1)
  return i % 2 === 0 ? wallRate(wall, p + climb, vEnd, 2 * i + 2) : last
}

/** The highest pressure's index, and the highest p V, which is T/T1. */
function summit(pressure: Float64Array, { volume }: VolumeTable) {
  let index = 0
  let temperature = 1
  for (let i = 1; i < pressure.length; i++) {
    if (pressure[i]! > pressure[index]!) index = i
    const t = pressure[i]! * volume[2 * i]!
    if (t > temperature) temperature = t
  }
  return { index, temperature }
}

/** dp/dθ = −γ p d(ln V)/dθ + (γ − 1) (dQ/dθ)/V; the mass is constant, so T = p V. */
function rise(fit: Fit, p: number, v: number, logSlope: number, heat: number): number {
  const pv = p * v
  const t = Math.min(pv, fit.highest)
  const g = fit.constant + t * (fit.linear + t * fit.quadratic)
  return (g - 1) * heat - g * p * logSlope
}

type Fit = Pick<GammaFit, 'constant' | 'linear' | 'quadratic' | 'highest'>

/** γ as a polynomial of T/T1. */
function fitInStartTemperatures({ gamma, startTemperature: t }: ClosedCycleInput): Fit {
  const { constant, linear, quadratic, highest } = gamma
  return { constant, linear: linear * t, quadratic: quadratic * t * t, highest: highest / t }
}

function sweptVolume({ bore, stroke }: ClosedCycleInput): number {
  return (Math.PI / 4) * bore * bore * stroke
}
