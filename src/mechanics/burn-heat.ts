import type { Burn } from './wiebe.ts'

/** A burn shorter than this many steps is spread evenly over each. */
const SHORT = 6

/**
 * Heat of a Wiebe burn for the integration: dQ/dθ at the start, middle and end of each step,
 * three values a step.
 *
 * The middle one is set so that Simpson's rule gives each step exactly the heat that Wiebe's
 * function frees in it, so no heat is lost to the step's size. A burn too short for the steps is
 * spread evenly over each; the limit is burning at constant volume.
 *
 * @param burn - start and duration (rad), a and n
 * @param heat - of the whole burn; the unit of the result per radian
 * @param rates - filled: three values a step, from −180° to +180°
 */
export function fillBurnHeat(burn: Burn, heat: number, rates: Float64Array): void {
  const steps = rates.length / 3
  rates.fill(0)
  if (heat === 0) return
  const { start, duration, completeness: a, form: n } = burn
  const step = (2 * Math.PI) / steps
  const short = duration < SHORT * step
  const first = Math.max(0, Math.floor((start + Math.PI) / step))
  const last = Math.min(steps, Math.ceil((start + duration + Math.PI) / step))
  let unburnt = 1
  let left = 0
  for (let i = first; i < last; i++) {
    const y = Math.max(0, ((i + 1) * step - Math.PI - start) / duration)
    const form = y >= 1 ? 1 : power(y, n - 1)
    const next = Math.exp(-a * form * Math.min(1, y))
    const mean = (heat * (unburnt - next)) / step
    let right = y > 1 ? 0 : (heat * a * n * form * next) / duration
    if (short) left = right = mean
    rates[3 * i] = left
    rates[3 * i + 1] = (6 * mean - left - right) / 4
    rates[3 * i + 2] = right
    unburnt = next
    left = right
  }
}

/** y^m; the usual m = 2 without the cost of a power. */
function power(y: number, m: number): number {
  return m === 2 ? y * y : y ** m
}
