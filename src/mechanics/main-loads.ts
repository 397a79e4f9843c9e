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
  fillCrankShape(workspace.shape, rodRatio(input.stroke / 2, input.rodLength))
  fillGas(input, workspace)
  const front = input.frontShare ?? 0.5
  shareOut(workspace.throwLoads.gasX, result.gasX, front)
  shareOut(workspace.throwLoads.gasY, result.gasY, front)
  fillUnitInertia(input, workspace)
  const squared = input.speed * input.speed
  scaleOver(workspace.unitInertia.x, result.inertiaX, squared)
  scaleOver(workspace.unitInertia.y, result.inertiaY, squared)
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
 * Gas force of every throw. Along the bore, outward, the pin of one cylinder feels u and across
 * it, with the turning, v; a bank at angle β turns them to (u sin β + v cos β, u cos β − v sin β).
 * Each cylinder is the same, later by its firing angle.
 */
function fillGas(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const { rodTangent } = workspace.shape
  const area = boreArea(input.bore)
  const crankcase = input.crankcasePressure ?? 101_325
  for (const { sine, cosine, gas } of workspace.banks) {
    const { x, y } = gas
    for (let index = 0; index < CYCLE; index++) {
      const u = (crankcase - input.pressure[index]!) * area
      const v = -u * rodTangent[index < TURN ? index : index - TURN]!
      x[index] = u * sine + v * cosine
      y[index] = u * cosine - v * sine
    }
    x.copyWithin(CYCLE, 0, CYCLE)
    y.copyWithin(CYCLE, 0, CYCLE)
  }
  const { gasX, gasY } = workspace.throwLoads
  workspace.throws.forEach(({ gas }, index) => {
    gasX[index]!.set(gas[0]!.x)
    gasY[index]!.set(gas[0]!.y)
    for (let other = 1; other < gas.length; other++) add(gasX[index]!, gasY[index]!, gas[other]!)
  })
}

/** Inertia of every main at 1 rad/s, unless the workspace holds that of the same figures. */
function fillUnitInertia(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const share = input.counterweightShare ?? input.layout.counterweightShare
  const front = input.frontShare ?? 0.5
  const figures = [
    input.stroke / 2,
    workspace.shape.ratio,
    input.reciprocatingMass,
    input.bigEndMass,
    input.pinMass ?? 0,
    share.rotating,
    share.reciprocating,
    front,
  ]
  const { of, x, y } = workspace.unitInertia
  if (figures.every((figure, index) => figure === of[index])) return
  fillBankInertia(input, workspace)
  sumThrowInertia(input, workspace, share)
  shareOut(workspace.throwLoads.inertiaX, x, front)
  shareOut(workspace.throwLoads.inertiaY, y, front)
  of.set(figures)
}

/** Inertia on the pin of one cylinder of each bank, at 1 rad/s; see {@link fillGas} for u and v. */
function fillBankInertia(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
  const { rodTangent, acceleration } = workspace.shape
  const reciprocating = (input.reciprocatingMass * input.stroke) / 2
  const bigEnd = (input.bigEndMass * input.stroke) / 2
  for (const { sine, cosine, inertia } of workspace.banks) {
    const { x, y } = inertia
    for (let index = 0; index < TURN; index++) {
      const pull = reciprocating * acceleration[index]!
      const u = pull + bigEnd * COSINE[index]!
      const v = bigEnd * SINE[index]! - pull * rodTangent[index]!
      x[index] = u * sine + v * cosine
      y[index] = u * cosine - v * sine
    }
    x.copyWithin(TURN, 0, TURN)
    y.copyWithin(TURN, 0, TURN)
  }
}

/** Inertia of every throw at 1 rad/s: its cylinders and its counterweights. */
function sumThrowInertia(
  input: MainLoadsInput,
  workspace: MainLoadsWorkspace,
  share: CounterweightShare,
): void {
  const { inertiaX, inertiaY } = workspace.throwLoads
  const pinMass = input.pinMass ?? 0
  workspace.throws.forEach((one, index) => {
    const against = counterweightMass({ ...input, pinMass, cylinders: one.facing }, share)
    const turning = ((pinMass - against) * input.stroke) / 2
    fillTurning(inertiaX[index]!, inertiaY[index]!, turning, one.degrees)
    for (const window of one.inertia) add(inertiaX[index]!, inertiaY[index]!, window)
  })
}

/** One turn at 1 rad/s, scaled, twice over. */
function scaleOver(unit: Float64Array[], mains: Float64Array[], squared: number): void {
  for (let main = 0; main < unit.length; main++) {
    const from = unit[main]!
    const into = mains[main]!
    for (let index = 0; index < TURN; index++) {
      const force = squared * from[index]!
      into[index] = force
      into[index + TURN] = force
    }
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

function add(x: Float64Array, y: Float64Array, window: ForceArrays): void {
  const { x: moreX, y: moreY } = window
  for (let index = 0; index < x.length; index++) {
    x[index] = x[index]! + moreX[index]!
    y[index] = y[index]! + moreY[index]!
  }
}

/** Hand each throw's load to the mains beside it. */
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
  }
}
