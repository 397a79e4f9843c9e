import { DomainError } from './domain-error.ts'
import { CYCLE, type MainLoads } from './main-loads.ts'

/**
 * Points of a main's polar load diagram: the tip of the load's arrow over the cycle, thinned.
 *
 * @param loads - one engine at one speed
 * @param main - index of the main, 0 at the front
 * @param step - degrees between points; a whole number that divides 720
 * @param gasScale - factor on the gas load; default 1
 * @param inertiaScale - factor on the inertia load; default 1
 * @returns x₀, y₀, x₁, y₁ … in N, 720/step pairs; the curve closes on its first point
 * @throws {DomainError} if the main does not exist or the step does not divide the cycle
 */
export function polarLoad(
  loads: MainLoads,
  main: number,
  step = 4,
  gasScale = 1,
  inertiaScale = 1,
): Float64Array {
  if (!(Number.isInteger(main) && main >= 0 && main < loads.mains)) {
    throw new DomainError('main', main, `a whole number from 0 to ${loads.mains - 1}`)
  }
  if (!(Number.isInteger(step) && step >= 1 && CYCLE % step === 0)) {
    throw new DomainError('step', step, 'a whole number of degrees that divides 720')
  }
  const points = new Float64Array((2 * CYCLE) / step)
  for (let index = 0, at = 0; index < CYCLE; index += step, at += 2) {
    points[at] = gasScale * loads.gasX[main]![index]! + inertiaScale * loads.inertiaX[main]![index]!
    points[at + 1] =
      gasScale * loads.gasY[main]![index]! + inertiaScale * loads.inertiaY[main]![index]!
  }
  return points
}
