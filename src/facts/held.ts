import { registerCapacity } from '../mechanics/register.ts'
import type { JointModel } from './joint-model.ts'
import { remembered } from './memory.ts'

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
    of.get(name) ?? allAlike(count, otherwise)
  const preload = product(drawn('preload', 1), drawn('fastenerTorque', 1))
  const clamp = clamps(model, preload, drawn('embedding', 0))
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

const alike = new Map<string, Float64Array>()

/** So many times the same; kept, since most joints lack some draw. */
function allAlike(count: number, value: number): Float64Array {
  return remembered(alike, `${count}/${value}`, () => new Float64Array(count).fill(value))
}

function product(one: Float64Array, other: Float64Array): Float64Array {
  const values = new Float64Array(one.length)
  for (let row = 0; row < values.length; row++) values[row] = one[row]! * other[row]!
  return values
}

function clamps(
  { clamp, lossPerEmbedding }: JointModel,
  preload: Float64Array,
  embedding: Float64Array,
): Float64Array {
  const values = new Float64Array(preload.length)
  for (let row = 0; row < values.length; row++) {
    values[row] = Math.max(0, clamp * preload[row]! - embedding[row]! * MM * lossPerEmbedding)
  }
  return values
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
  // One register for all cases: one for each would be garbage at once.
  const one = { height: 0, length: 0, interference: 0, allowablePressure: model.registerPressure }
  for (let row = 0; row < count; row++) {
    one.height = model.registerHeight * height[row]!
    one.length = model.registerLength * width[row]!
    one.interference = fit[row]! * MM
    capacity[row] = registerCapacity(one)
  }
  return capacity
}

/** Endurable pull: a product of powers of the drawn sizes, taken as a sum of logarithms. */
function endurable(model: JointModel, of: Draws, strength: Float64Array): Float64Array {
  const pulls = new Float64Array(strength.length)
  for (const [key, exponent] of model.strengthExponents) {
    const values = of.get(key)
    if (!values) continue
    const logs = logsOf(values)
    for (let row = 0; row < pulls.length; row++) pulls[row] = pulls[row]! + exponent * logs[row]!
  }
  for (let row = 0; row < pulls.length; row++) {
    pulls[row] = model.endurablePull * strength[row]! * Math.exp(pulls[row]!)
  }
  return pulls
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
