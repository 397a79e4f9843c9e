import { STANDARD_PRESSURE } from './atmosphere.ts'
import type { MainLoads, MainLoadsInput } from './main-loads.ts'
import type { MainLoadsWorkspace, WorkspaceThrow } from './main-loads-workspace.ts'
import { boreArea } from './slider-crank.ts'

/** Gas and inertia force on one main at one moment, N, as in {@link MainLoads}. */
export interface LoadOnMain {
  gasX: number
  gasY: number
  inertiaX: number
  inertiaY: number
}

/** Writes the load on a main at a whole degree, 0 to 719, of the so-many-th speed. */
export type LoadAt = (speedIndex: number, main: number, degree: number, into: LoadOnMain) => void

/** Loads that are there: degrees must be among their samples. */
export function loadsRead(loads: readonly MainLoads[]): LoadAt {
  return (speedIndex, main, degree, into) => {
    const { every, gasX, gasY, inertiaX, inertiaY } = loads[speedIndex]!
    const index = degree / every
    into.gasX = gasX[main]![index]!
    into.gasY = gasY[main]![index]!
    into.inertiaX = inertiaX[main]![index]!
    into.inertiaY = inertiaY[main]![index]!
  }
}

/**
 * The same figures as `mainLoads` gives, to the last bit, worked out for single moments. Of loads
 * at every few degrees it gives those between.
 *
 * @param inputs - one for each speed, of one engine, after `mainLoads` has filled their workspace
 */
export function loadsBetween(
  inputs: readonly MainLoadsInput[],
  workspace: MainLoadsWorkspace,
): LoadAt {
  const { throws, unitInertia } = workspace
  const gas = { x: 0, y: 0 }
  return (speedIndex, main, degree, into) => {
    const input = inputs[speedIndex]!
    const front = input.frontShare ?? 0.5
    const before = throws[main - 1]
    const after = throws[main]
    into.gasX = into.gasY = 0
    if (before) {
      onThrow(before, input, workspace, degree, gas)
      into.gasX = (1 - front) * gas.x
      into.gasY = (1 - front) * gas.y
    }
    if (after) {
      onThrow(after, input, workspace, degree, gas)
      into.gasX += front * gas.x
      into.gasY += front * gas.y
    }
    const squared = input.speed * input.speed
    into.inertiaX = squared * unitInertia.x[main]![degree % 360]!
    into.inertiaY = squared * unitInertia.y[main]![degree % 360]!
  }
}

/** Gas force of one throw at one degree. */
function onThrow(
  { cylinders }: WorkspaceThrow,
  input: MainLoadsInput,
  { shape }: MainLoadsWorkspace,
  degree: number,
  into: { x: number; y: number },
): void {
  const area = boreArea(input.bore)
  const crankcase = input.crankcasePressure ?? STANDARD_PRESSURE
  into.x = 0
  into.y = 0
  for (const { bank, start } of cylinders) {
    const index = (degree + start) % 720
    const u = (crankcase - input.pressure[index]!) * area
    const v = -u * shape.rodTangent[index % 360]!
    into.x += u * bank.sine + v * bank.cosine
    into.y += u * bank.cosine - v * bank.sine
  }
}
