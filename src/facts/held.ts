import { registerCapacity } from '../mechanics/register.ts'
import type { JointModel } from './joint-model.ts'

/** What holds the cap in each sampled case, whatever the crank does. */
export interface Held {
  readonly count: number
  /** Of the nominal preload. */
  readonly preload: Float64Array
  /** N */
  readonly clamp: Float64Array
  /** Friction of the parting faces. */
  readonly friction: Float64Array
  /** N */
  readonly register: Float64Array
  /** Pull that the crown endures, N. */
  readonly endurable: Float64Array
  /** Strength of the block's thread against the handbook's. */
  readonly thread: Float64Array
}

/** Drawn values by scatter id and fact key, one for each case. */
export type Draws = ReadonlyMap<string, Float64Array>

/** rules/scatter.json gives fits and settling in mm. */
const MM = 1e-3

/** Preload, clamp, friction, register and strength of a joint over the sampled cases. */
export function heldBy(model: JointModel, of: Draws, count: number): Held {
  const drawn = (name: string, otherwise: number): Float64Array =>
    of.get(name) ?? new Float64Array(count).fill(otherwise)
  const scatter = drawn('preload', 1)
  const torque = drawn('fastenerTorque', 1)
  const embedding = drawn('embedding', 0)
  const preload = new Float64Array(count)
  const clamp = new Float64Array(count)
  for (let row = 0; row < count; row++) {
    const factor = scatter[row]! * torque[row]!
    preload[row] = factor
    clamp[row] = Math.max(0, model.clamp * factor - embedding[row]! * MM * model.lossPerEmbedding)
  }
  return {
    count,
    preload,
    clamp,
    friction: drawn('faceFriction', 0),
    register: registers(model, drawn, count),
    endurable: endurable(model, of, drawn('capStrength', 1)),
    thread: drawn('threadStrength', 1),
  }
}

function registers(
  model: JointModel,
  drawn: (name: string, otherwise: number) => Float64Array,
  count: number,
): Float64Array {
  const capacity = new Float64Array(count)
  if (model.registerHeight <= 0) return capacity
  const height = drawn('registerHeight', 1)
  const width = drawn('capWidth', 1)
  const fit = drawn('registerInterference', 0)
  for (let row = 0; row < count; row++) {
    capacity[row] = registerCapacity({
      height: model.registerHeight * height[row]!,
      length: model.registerLength * width[row]!,
      interference: fit[row]! * MM,
      allowablePressure: model.registerPressure,
    })
  }
  return capacity
}

/** Endurable pull: a product of powers of the drawn sizes, taken as a sum of logarithms. */
function endurable(model: JointModel, of: Draws, strength: Float64Array): Float64Array {
  const sums = new Float64Array(strength.length)
  for (const [key, exponent] of model.strengthExponents) {
    const values = of.get(key)
    if (!values) continue
    const logs = logsOf(values)
    for (let row = 0; row < sums.length; row++) sums[row] = sums[row]! + exponent * logs[row]!
  }
  return strength.map((one, row) => model.endurablePull * one * Math.exp(sums[row]!))
}

const logs = new WeakMap<Float64Array, Float64Array>()

/** Logarithms of drawn values, which never change once they are drawn. */
function logsOf(values: Float64Array): Float64Array {
  let found = logs.get(values)
  if (!found) {
    found = values.map(Math.log)
    logs.set(values, found)
  }
  return found
}
