import type { Build } from '../build/build.ts'
import { type RatioRange, SCALE_RANGE } from '../mechanics/ratio-range.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { doubt, drawn, scattered } from './draws.ts'

/** Facts whose doubt moves the gas force (exponent given) or the inertia force. */
const GAS_EXPONENT: Readonly<Record<string, number>> = { bore: 2 }
const INERTIA_EXPONENT: Readonly<Record<string, number>> = {
  stroke: 1,
  peakRpm: 2,
  reciprocatingMass: 0.6,
  bigEndMass: 0.4,
}

/** By how much gas and inertia forces differ from the likely ones in each sampled case. */
export interface LoadScales {
  readonly gas: Float64Array
  readonly inertia: Float64Array
  /** Of gas over inertia. */
  readonly range: RatioRange
  /** What was drawn, by scatter id and fact key. */
  readonly of: ReadonlyMap<string, Float64Array>
}

/**
 * Scales of gas and inertia force over the sampled cases, the likely one first.
 *
 * @param peakExponents - d ln(peak pressure) for each d ln of what is assumed, by fact key
 */
export function loadScales(
  build: Build,
  peakExponents: ReadonlyMap<string, number>,
  rulebook: Rulebook,
): LoadScales {
  const of = new Map<string, Float64Array>()
  const scale = (base: string, exponents: Readonly<Record<string, number>>): Float64Array => {
    const item = rulebook.scatter.find(({ id }) => id === base)
    const first =
      (item && scattered(item, build, rulebook)) ??
      drawn(base, { low: 1, likely: 1, high: 1 }, rulebook)
    of.set(base, first)
    const product = first.slice()
    for (const [key, exponent] of Object.entries(exponents)) {
      const ends = doubt(build, key)
      if (!ends) continue
      const values = drawn(key, ends, rulebook)
      of.set(key, values)
      if (exponent !== 0) multiply(product, values, exponent)
    }
    // The margin points are proved for this range only.
    const { low, high } = SCALE_RANGE
    for (let row = 0; row < product.length; row++) {
      product[row] = Math.min(high, Math.max(low, product[row]!))
    }
    return product
  }
  const gas = scale('gasForce', { ...GAS_EXPONENT, ...Object.fromEntries(peakExponents) })
  const inertia = scale('inertiaForce', INERTIA_EXPONENT)
  return { gas, inertia, range: rangeOf(gas, inertia), of }
}

function multiply(product: Float64Array, values: Float64Array, exponent: number): void {
  for (let row = 0; row < product.length; row++) {
    product[row] = product[row]! * (exponent === 1 ? values[row]! : values[row]! ** exponent)
  }
}

function rangeOf(gas: Float64Array, inertia: Float64Array): RatioRange {
  let [low, high] = [Number.POSITIVE_INFINITY, 0]
  for (let row = 0; row < gas.length; row++) {
    const ratio = gas[row]! / inertia[row]!
    if (ratio < low) low = ratio
    if (ratio > high) high = ratio
  }
  return { low, high }
}
