import { type CounterweightShare, counterweightMass } from './counterweights.ts'
import type { CrankLayout } from './crank-layouts.ts'
import { COSINE, fillCrankShape, SINE } from './crank-train.ts'
import { DomainError, requireWithin } from './domain-error.ts'
import { type MainLoadsWorkspace, mainLoadsWorkspace } from './main-loads-workspace.ts'
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
  fillCylinder(input, workspace)
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
}

/** Pin forces of one cylinder whose firing top dead centre is at index 0, along and across it. */
function fillCylinder(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const { pressure, speed } = input
  const { gasAlong, gasAcross, inertiaAlong, inertiaAcross, shape } = workspace
  const area = boreArea(input.bore)
  const crankcase = input.crankcasePressure ?? 101_325
  const { rodTangent, acceleration } = shape
  for (let index = 0; index < CYCLE; index++) {
    const push = (pressure[index]! - crankcase) * area
    gasAlong[index] = -push
    gasAcross[index] = push * rodTangent[index < TURN ? index : index - TURN]!
  }
  const unit = (input.stroke / 2) * speed * speed
  const reciprocating = input.reciprocatingMass * unit
  const bigEnd = input.bigEndMass * unit
  for (let index = 0; index < TURN; index++) {
    const pull = reciprocating * acceleration[index]!
    inertiaAlong[index] = pull + bigEnd * COSINE[index]!
    inertiaAcross[index] = bigEnd * SINE[index]! - pull * rodTangent[index]!
  }
}

/** Loads of every throw: its cylinders, shifted and turned, and its counterweights. */
function sumThrows(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const { throwLoads, cylinders } = workspace
  const unit = (input.stroke / 2) * input.speed * input.speed
  const share = input.counterweightShare ?? input.layout.counterweightShare
  const pinMass = input.pinMass ?? 0
  for (let index = 0; index < workspace.throws.length; index++) {
    const { degrees, cylinders: count } = workspace.throws[index]!
    const against = counterweightMass({ ...input, pinMass, cylinders: count }, share)
    fillTurning(
      throwLoads.inertiaX[index]!,
      throwLoads.inertiaY[index]!,
      (pinMass - against) * unit,
      degrees,
    )
    throwLoads.gasX[index]!.fill(0)
    throwLoads.gasY[index]!.fill(0)
  }
  const { gasAlong, gasAcross, inertiaAlong, inertiaAcross } = workspace
  for (const { throw: on, firing, sine, cosine } of cylinders) {
    const { gasX, gasY, inertiaX, inertiaY } = throwLoads
    addTurned(gasX[on]!, gasY[on]!, gasAlong, gasAcross, firing, sine, cosine)
    addTurned(inertiaX[on]!, inertiaY[on]!, inertiaAlong, inertiaAcross, firing, sine, cosine)
  }
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

/** Add one cylinder's force: later by `firing` samples, its bore turned to its bank. */
function addTurned(
  x: Float64Array,
  y: Float64Array,
  along: Float64Array,
  across: Float64Array,
  firing: number,
  sine: number,
  cosine: number,
): void {
  const length = along.length
  const shift = firing % length
  for (let index = 0; index < shift; index++) {
    const from = index - shift + length
    x[index] = x[index]! + along[from]! * sine + across[from]! * cosine
    y[index] = y[index]! + along[from]! * cosine - across[from]! * sine
  }
  for (let index = shift; index < length; index++) {
    const from = index - shift
    x[index] = x[index]! + along[from]! * sine + across[from]! * cosine
    y[index] = y[index]! + along[from]! * cosine - across[from]! * sine
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
