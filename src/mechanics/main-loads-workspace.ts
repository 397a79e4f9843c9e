import type { CrankLayout, LayoutCylinder } from './crank-layouts.ts'
import { type CrankShape, emptyCrankShape } from './crank-train.ts'
import type { MainLoads } from './main-loads.ts'

/** Four components, one array for each throw. */
export interface ThrowLoads {
  gasX: Float64Array[]
  gasY: Float64Array[]
  /** One turn only, at 1 rad/s: inertia repeats with the crank and grows with ω². */
  inertiaX: Float64Array[]
  inertiaY: Float64Array[]
}

/** A pair of components of a force over the cycle. */
export interface ForceArrays {
  x: Float64Array
  y: Float64Array
}

/**
 * Pin force of a cylinder on one bank, its firing top dead centre at index 0, written twice over
 * so that any cylinder of the bank is a window on it. `sine` and `cosine` are of the bank's angle.
 */
export interface BankLoads {
  sine: number
  cosine: number
  gas: ForceArrays
  inertia: ForceArrays
}

/** One throw: its angle in whole degrees and the windows of its cylinders. */
export interface WorkspaceThrow {
  degrees: number
  /** Cylinders whose mass the throw's counterweights face: split pins count by their cosine. */
  facing: number
  gas: ForceArrays[]
  inertia: ForceArrays[]
}

/** Everything that the main loads of a layout need to hold, made once and used for many calls. */
export interface MainLoadsWorkspace {
  layout: CrankLayout
  shape: CrankShape
  banks: BankLoads[]
  throws: WorkspaceThrow[]
  throwLoads: ThrowLoads
  /** Inertia on each main, one turn at 1 rad/s, and the figures that it was computed from. */
  unitInertia: { x: Float64Array[]; y: Float64Array[]; of: Float64Array }
  result: MainLoads
}

/** Arrays of one buffer: many of their own are dear to make and to collect. */
function arrays(count: number, length: number): Float64Array[] {
  const all = new Float64Array(count * length)
  return Array.from({ length: count }, (_, index) =>
    all.subarray(index * length, (index + 1) * length),
  )
}

/**
 * Make the arrays for a layout's main loads.
 *
 * @param layout - whose throws and cylinders they fit
 * @returns about 0.3 MB for eight cylinders
 */
export function mainLoadsWorkspace(layout: CrankLayout): MainLoadsWorkspace {
  const throws = layout.throws.length
  const angles = [...new Set(layout.cylinders.map((cylinder) => cylinder.bankAngle))]
  const banks = angles.map(emptyBank)
  return {
    layout,
    shape: emptyCrankShape(),
    banks,
    throws: layout.throws.map(({ angle }, index) => {
      const on = layout.cylinders.filter((cylinder) => cylinder.throw === index)
      return {
        degrees: wholeDegrees(angle) % 360,
        facing: on.reduce((sum, cylinder) => sum + Math.cos(cylinder.pinOffset), 0),
        gas: on.map((cylinder) =>
          windowOn(banks[angles.indexOf(cylinder.bankAngle)]!.gas, cylinder),
        ),
        inertia: on.map((cylinder) =>
          windowOn(banks[angles.indexOf(cylinder.bankAngle)]!.inertia, cylinder),
        ),
      }
    }),
    throwLoads: {
      gasX: arrays(throws, 720),
      gasY: arrays(throws, 720),
      inertiaX: arrays(throws, 360),
      inertiaY: arrays(throws, 360),
    },
    unitInertia: {
      x: arrays(layout.mains, 360),
      y: arrays(layout.mains, 360),
      of: new Float64Array(INERTIA_FIGURES).fill(Number.NaN),
    },
    result: emptyMainLoads(layout),
  }
}

/** Crank radius, rod ratio, three masses, two counterweight shares, front share. */
const INERTIA_FIGURES = 8

function emptyBank(angle: number): BankLoads {
  return {
    sine: Math.sin(angle),
    cosine: Math.cos(angle),
    gas: { x: new Float64Array(1440), y: new Float64Array(1440) },
    inertia: { x: new Float64Array(720), y: new Float64Array(720) },
  }
}

/** The period of a bank's force that starts a cylinder's firing angle earlier. */
function windowOn(bank: ForceArrays, cylinder: LayoutCylinder): ForceArrays {
  const period = bank.x.length / 2
  const start = period - (wholeDegrees(cylinder.firingAngle) % period)
  return { x: bank.x.subarray(start, start + period), y: bank.y.subarray(start, start + period) }
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
