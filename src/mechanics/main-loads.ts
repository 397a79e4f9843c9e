import { type CounterweightShare, counterweightMass } from './counterweights.ts'
import type { CrankLayout } from './crank-layouts.ts'
import { COSINE, fillCrankShape, SINE } from './crank-train.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import {
  type ForceArrays,
  type MainLoadsWorkspace,
  mainLoadsWorkspace,
} from './main-loads-workspace.ts'
import { boreArea, rodRatio } from './slider-crank.ts'

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
 * @returns arrays of 720 samples for each main; those of the workspace if one is given
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
  fillCrankShape(workspace.shape, rodRatio(input.stroke / 2, input.rodLength))
  fillBanks(input, workspace)
  sumThrows(input, workspace)
  const front = input.frontShare ?? 0.5
  const { throwLoads, result } = workspace
  shareOut(throwLoads.gasX, result.gasX, front)
  shareOut(throwLoads.gasY, result.gasY, front)
  shareOut(throwLoads.inertiaX, result.inertiaX, front)
  shareOut(throwLoads.inertiaY, result.inertiaY, front)
  result.speed = input.speed
  return result
}

function checkInput(input: MainLoadsInput): void {
  requireWithin('bore', input.bore, 0.01, 1, 'm')
  requireWithin('reciprocatingMass', input.reciprocatingMass, 0, 1000, 'kg')
  requireWithin('bigEndMass', input.bigEndMass, 0, 1000, 'kg')
  requireWithin('pinMass', input.pinMass ?? 0, 0, 1000, 'kg')
  requireWithin('speed', input.speed, 0, 3000, 'rad/s')
  requireWithin('crankcasePressure', input.crankcasePressure ?? 101_325, 0, 1e6, 'Pa')
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
 * Pin forces of one cylinder on each bank. Along the bore, outward, the pin feels u and across it,
 * with the turning, v; a bank at angle β turns them to (u sin β + v cos β, u cos β − v sin β).
 */
function fillBanks(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const { rodTangent, acceleration } = workspace.shape
  const area = boreArea(input.bore)
  const crankcase = input.crankcasePressure ?? 101_325
  const unit = (input.stroke / 2) * input.speed * input.speed
  const reciprocating = input.reciprocatingMass * unit
  const bigEnd = input.bigEndMass * unit
  for (const { sine, cosine, gas, inertia } of workspace.banks) {
    for (let index = 0; index < CYCLE; index++) {
      const u = (crankcase - input.pressure[index]!) * area
      const v = -u * rodTangent[index < TURN ? index : index - TURN]!
      gas.x[index] = u * sine + v * cosine
      gas.y[index] = u * cosine - v * sine
    }
    for (let index = 0; index < TURN; index++) {
      const pull = reciprocating * acceleration[index]!
      const u = pull + bigEnd * COSINE[index]!
      const v = bigEnd * SINE[index]! - pull * rodTangent[index]!
      inertia.x[index] = u * sine + v * cosine
      inertia.y[index] = u * cosine - v * sine
    }
    for (const force of [gas.x, gas.y, inertia.x, inertia.y]) {
      force.copyWithin(force.length / 2, 0, force.length / 2)
    }
  }
}

/** Loads of every throw: its cylinders, each later by its firing angle, and its counterweights. */
function sumThrows(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const { gasX, gasY, inertiaX, inertiaY } = workspace.throwLoads
  const unit = (input.stroke / 2) * input.speed * input.speed
  const share = input.counterweightShare ?? input.layout.counterweightShare
  const pinMass = input.pinMass ?? 0
  workspace.throws.forEach((one, index) => {
    gasX[index]!.set(one.gas[0]!.x)
    gasY[index]!.set(one.gas[0]!.y)
    for (const window of one.gas.slice(1)) add(gasX[index]!, gasY[index]!, window)
    const against = counterweightMass({ ...input, pinMass, cylinders: one.facing }, share)
    fillTurning(inertiaX[index]!, inertiaY[index]!, (pinMass - against) * unit, one.degrees)
    for (const window of one.inertia) add(inertiaX[index]!, inertiaY[index]!, window)
  })
}

/** A force of constant size that turns with the crank, outward if positive. */
function fillTurning(x: Float64Array, y: Float64Array, force: number, degrees: number): void {
  let at = degrees
  for (let index = 0; index < TURN; index++) {
    x[index] = force * SINE[at]!
    y[index] = force * COSINE[at]!
    at = at + 1 === TURN ? 0 : at + 1
  }
}

function add(x: Float64Array, y: Float64Array, window: ForceArrays): void {
  const { x: moreX, y: moreY } = window
  for (let index = 0; index < x.length; index++) {
    x[index] = x[index]! + moreX[index]!
    y[index] = y[index]! + moreY[index]!
  }
}

/** Hand each throw's load to the mains beside it. Throw arrays may hold one turn only. */
function shareOut(throws: Float64Array[], mains: Float64Array[], front: number): void {
  const rear = 1 - front
  const last = throws.length
  const length = throws[0]!.length
  for (let main = 0; main <= last; main++) {
    const into = mains[main]!
    const before = throws[main - 1]
    const after = throws[main]
    if (before && after) {
      for (let index = 0; index < length; index++) {
        into[index] = rear * before[index]! + front * after[index]!
      }
    } else {
      const only = (after ?? before)!
      const part = after ? front : rear
      for (let index = 0; index < length; index++) into[index] = part * only[index]!
    }
    if (length < CYCLE) into.copyWithin(length, 0, length)
  }
}
