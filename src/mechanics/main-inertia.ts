import { type CounterweightShare, counterweightMass } from './counterweights.ts'
import { COSINE, SINE } from './crank-train.ts'
import type { MainLoadsInput } from './main-loads.ts'
import type { MainLoadsWorkspace } from './main-loads-workspace.ts'
import { addWindow, shareOut } from './throw-sums.ts'

const TURN = 360

/** Inertia of every main at 1 rad/s, unless the workspace holds that of the same figures. */
export function fillUnitInertia(input: MainLoadsInput, workspace: MainLoadsWorkspace): void {
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

/** Inertia on the pin of one cylinder of each bank, at 1 rad/s; along and across the bore as for gas. */
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
    for (const window of one.inertia) addWindow(inertiaX[index]!, inertiaY[index]!, window, 1)
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
