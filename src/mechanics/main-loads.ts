import { STANDARD_PRESSURE } from './atmosphere.ts'
import type { CounterweightShare } from './counterweights.ts'
import type { CrankLayout } from './crank-layouts.ts'
import { fillCrankShape } from './crank-train.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { fillUnitInertia } from './main-inertia.ts'
import { type MainLoadsWorkspace, mainLoadsWorkspace } from './main-loads-workspace.ts'
import { boreArea, rodRatio } from './slider-crank.ts'
import { addWindow, shareOut } from './throw-sums.ts'

/** Samples of a four-stroke cycle: one for each degree of two turns. */
export const CYCLE = 720
const TURN = 360

/** One engine at one speed. SI units. */
export interface MainLoadsInput {
  layout: CrankLayout
  /** m, 0.01 to 1. */
  bore: number
  /** m, 0.002 to 4. */
  stroke: number
  /** m, at least 0.525 strokes; Infinity allowed. */
  rodLength: number
  /** Of each cylinder, kg, 0 to 1000. */
  reciprocatingMass: number
  /** Lower part of each rod, turning with the pin, kg, 0 to 1000. */
  bigEndMass: number
  /**
   * Of each throw, kg at the crank radius: the crank's own pin and webs as far as they are off
   * centre. Default 0: their pull and their counterweight's are taken to cancel.
   */
  pinMass?: number
  /** Default: the layout's usual share. */
  counterweightShare?: CounterweightShare
  /** ω, rad/s, 0 to 3000. */
  speed: number
  /** Absolute, Pa, one sample a degree from firing top dead centre; 720 long. */
  pressure: Float64Array
  /** Absolute, Pa; default 101 325. */
  crankcasePressure?: number
  /** Part of each throw's load that its front main takes, 0 to 1; default one half. */
  frontShare?: number
  /** Scratch and result arrays for repeated calls; the next call with it overwrites the result. */
  workspace?: MainLoadsWorkspace
  /** Result arrays of the layout to write into instead of the workspace's. */
  result?: MainLoads
}

/**
 * Force of the crank on each main bearing, N, in the frame of the layout; index of a sample is the
 * crank angle in degrees from firing top dead centre of the first cylinder. Gas and inertia are
 * apart: any load with gas scaled by g and masses by m is g·gas + m·inertia.
 */
export interface MainLoads {
  /** How many. */
  mains: number
  /** rad/s. */
  speed: number
  /** Degrees from one sample to the next; 1 unless the workspace was made for fewer samples. */
  every: number
  /** Whether two case halves hold the crank; see the layouts. */
  splitCase: boolean
  gasX: Float64Array[]
  gasY: Float64Array[]
  inertiaX: Float64Array[]
  inertiaY: Float64Array[]
}

/**
 * Load on every main bearing over the cycle, by the statically determinate method: each throw,
 * with its pin forces and its counterweights, is a beam on the two mains beside it, and a main
 * carries the sum of what its two neighbours hand to it. A continuous crank on a block that gives
 * shares loads otherwise, as do oil film and bending; they are outside this method. The crank's
 * weight, the timing drive and the flywheel are left out.
 *
 * One cylinder is computed once; the others are the same, shifted by their firing angle and turned
 * by their bank. Gas force is on the piston's area with the crankcase pressure behind it.
 *
 * @returns arrays of 720 samples for each main; those given as `result` or of the workspace if any
 * @throws {DomainError} if an input is outside its range or the pressure has another length
 *
 * @see C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 2, ch. 8 (from
 *   memory); R. S. Khurmi & J. K. Gupta, A Textbook of Machine Design, ch. 32: the shaft is taken
 *   as supported at the centres of its bearings
 */
export function mainLoads(input: MainLoadsInput): MainLoads {
  checkInput(input)
  const workspace = input.workspace ?? mainLoadsWorkspace(input.layout)
  if (workspace.layout !== input.layout) {
    throw new DomainError('workspace', workspace.layout.id, `made for ${input.layout.id}`)
  }
  const result = input.result ?? workspace.result
  if (result.mains !== input.layout.mains) {
    throw new DomainError('result.mains', result.mains, `${input.layout.mains}`)
  }
  if (result.every !== workspace.every) {
    throw new DomainError('result.every', result.every, `${workspace.every}`)
  }
  fillCrankShape(workspace.shape, rodRatio(input.stroke / 2, input.rodLength))
  fillGas(input, workspace)
  const front = input.frontShare ?? 0.5
  shareOut(workspace.throwLoads.gasX, result.gasX, front)
  shareOut(workspace.throwLoads.gasY, result.gasY, front)
  fillUnitInertia(input, workspace)
  const squared = input.speed * input.speed
  scaleOver(workspace.unitInertia.x, result.inertiaX, squared, workspace.every)
  scaleOver(workspace.unitInertia.y, result.inertiaY, squared, workspace.every)
  result.speed = input.speed
  return result
}

function checkInput(input: MainLoadsInput): void {
  requireWithin('bore', input.bore, 0.01, 1, 'm')
  requireWithin('reciprocatingMass', input.reciprocatingMass, 0, 1000, 'kg')
  requireWithin('bigEndMass', input.bigEndMass, 0, 1000, 'kg')
  requireWithin('pinMass', input.pinMass ?? 0, 0, 1000, 'kg')
  requireWithin('speed', input.speed, 0, 3000, 'rad/s')
  requireWithin('crankcasePressure', input.crankcasePressure ?? STANDARD_PRESSURE, 0, 1e6, 'Pa')
  requireWithin('frontShare', input.frontShare ?? 0.5, 0, 1)
  if (input.pressure.length !== CYCLE) {
    throw new DomainError('pressure.length', input.pressure.length, `${CYCLE}`)
  }
  // One NaN or infinity among the samples makes their sum one.
  let sum = 0
  for (let index = 0; index < CYCLE; index++) sum += input.pressure[index]!
  requireWithin('mean of pressure', sum / CYCLE, 0, 1e8, 'Pa')
}

/**
 * Gas force of every throw. Along the bore, outward, the pin of one cylinder feels u and across
 * it, with the turning, v; a bank at angle β turns them to (u sin β + v cos β, u cos β − v sin β).
 * Each cylinder is the same, later by its firing angle.
 */
function fillGas(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const { rodTangent } = workspace.shape
  const area = boreArea(input.bore)
  const crankcase = input.crankcasePressure ?? STANDARD_PRESSURE
  for (const { sine, cosine, gas } of workspace.banks) {
    const { x, y } = gas
    for (const first of workspace.firstDegrees) {
      for (let index = first; index < CYCLE; index += workspace.every) {
        const u = (crankcase - input.pressure[index]!) * area
        const v = -u * rodTangent[index < TURN ? index : index - TURN]!
        x[index] = x[index + CYCLE] = u * sine + v * cosine
        y[index] = y[index + CYCLE] = u * cosine - v * sine
      }
    }
  }
  const { gasX, gasY } = workspace.throwLoads
  workspace.throws.forEach(({ gas }, index) => {
    gasX[index]!.fill(0)
    gasY[index]!.fill(0)
    for (const window of gas) addWindow(gasX[index]!, gasY[index]!, window, workspace.every)
  })
}

/** One turn at 1 rad/s, scaled, twice over, at every so many degrees. */
function scaleOver(
  unit: Float64Array[],
  mains: Float64Array[],
  squared: number,
  every: number,
): void {
  const turn = TURN / every
  for (let main = 0; main < unit.length; main++) {
    const from = unit[main]!
    const into = mains[main]!
    for (let index = 0, degree = 0; index < turn; index++, degree += every) {
      const force = squared * from[degree]!
      into[index] = force
      into[index + turn] = force
    }
  }
}
