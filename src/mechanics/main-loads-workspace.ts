import type { CrankLayout } from './crank-layouts.ts'
import { type CrankShape, emptyCrankShape } from './crank-train.ts'
import type { MainLoads } from './main-loads.ts'

/** Four components, one array for each throw. */
export interface ThrowLoads {
  gasX: Float64Array[]
  gasY: Float64Array[]
  /** One turn only: inertia repeats with the crank. */
  inertiaX: Float64Array[]
  inertiaY: Float64Array[]
}

/** A layout's cylinder, ready for the loops: whole degrees, sine and cosine of its bank. */
export interface WorkspaceCylinder {
  throw: number
  firing: number
  sine: number
  cosine: number
}

/** Everything that the main loads of a layout need to hold, made once and used for many calls. */
export interface MainLoadsWorkspace {
  layout: CrankLayout
  shape: CrankShape
  /** Pin force of one cylinder along its bore, outward, and across it, with the turning. */
  gasAlong: Float64Array
  gasAcross: Float64Array
  inertiaAlong: Float64Array
  inertiaAcross: Float64Array
  throws: { degrees: number; cylinders: number }[]
  cylinders: WorkspaceCylinder[]
  throwLoads: ThrowLoads
  result: MainLoads
}

const arrays = (count: number, length: number): Float64Array[] =>
  Array.from({ length: count }, () => new Float64Array(length))

/**
 * Make the arrays for a layout's main loads.
 *
 * @param layout - whose throws and cylinders they fit
 * @returns about 0.2 MB for eight cylinders
 */
export function mainLoadsWorkspace(layout: CrankLayout): MainLoadsWorkspace {
  const throws = layout.throws.length
  return {
    layout,
    shape: emptyCrankShape(),
    gasAlong: new Float64Array(720),
    gasAcross: new Float64Array(720),
    inertiaAlong: new Float64Array(360),
    inertiaAcross: new Float64Array(360),
    throws: layout.throws.map(({ angle }, index) => ({
      degrees: wholeDegrees(angle) % 360,
      cylinders: layout.cylinders.filter((cylinder) => cylinder.throw === index).length,
    })),
    cylinders: layout.cylinders.map((cylinder) => ({
      throw: cylinder.throw,
      firing: wholeDegrees(cylinder.firingAngle),
      sine: Math.sin(cylinder.bankAngle),
      cosine: Math.cos(cylinder.bankAngle),
    })),
    throwLoads: {
      gasX: arrays(throws, 720),
      gasY: arrays(throws, 720),
      inertiaX: arrays(throws, 360),
      inertiaY: arrays(throws, 360),
    },
    result: emptyMainLoads(layout),
  }
}

/** Result arrays, zero. */
export function emptyMainLoads(layout: CrankLayout): MainLoads {
  return {
    mains: layout.mains,
    speed: 0,
    splitCase: layout.splitCase,
    gasX: arrays(layout.mains, 720),
    gasY: arrays(layout.mains, 720),
    inertiaX: arrays(layout.mains, 720),
    inertiaY: arrays(layout.mains, 720),
  }
}

const wholeDegrees = (angle: number): number => Math.round((angle * 180) / Math.PI)
