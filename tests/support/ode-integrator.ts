import { createRequire } from 'node:module'

/** dy/dx at x and y. */
export type Slope = (x: number, y: number[]) => number[]

/** What is used of the package odex (Hairer's extrapolation method, ODEX). */
interface Solver {
  absoluteTolerance: number
  relativeTolerance: number
  denseOutput: boolean
  grid(step: number, out: (x: number, y: number[]) => void): unknown
  solve(slope: Slope, from: number, y: number[], to: number, each?: unknown): { y: number[] }
}

// Loaded at run time: the package ships its TypeScript source, which the strict check would read.
const odex = createRequire(import.meta.url)('odex') as { Solver: new (count: number) => Solver }

/**
 * Integrate with an adaptive method that shares nothing with the project.
 *
 * @param slope - dy/dx
 * @param from - start of x
 * @param state - y there
 * @param to - end of x
 * @param options - tolerance (default 1e-9), and for dense output a step and what to do at each
 * @returns y at the end
 */
export function integrate(
  slope: Slope,
  from: number,
  state: number[],
  to: number,
  options: { tolerance?: number; every?: number; each?: (x: number, y: number[]) => void } = {},
): number[] {
  const solver = new odex.Solver(state.length)
  solver.absoluteTolerance = solver.relativeTolerance = options.tolerance ?? 1e-9
  const { every, each } = options
  if (every === undefined || each === undefined) return solver.solve(slope, from, state, to).y
  solver.denseOutput = true
  return solver.solve(slope, from, state, to, solver.grid(every, each)).y
}
