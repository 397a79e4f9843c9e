import type { CrankLayout } from './crank-layouts.ts'
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
  /** The bank of each of its cylinders, and where on it the cylinder's gas begins, degrees. */
  cylinders: { bank: BankLoads; start: number }[]
}

/** Everything that the main loads of a layout need to hold, made once and used for many calls. */
export interface MainLoadsWorkspace {
  layout: CrankLayout
  /** Degrees from one sample of the throws' and mains' loads to the next. */
  every: number
  /** Where on a bank the samples of its cylinders begin, below `every`: only those are filled. */
  firstDegrees: number[]
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
 * @param every - degrees from one sample to the next; divides 360
 * @returns about 0.3 MB for eight cylinders
 */
export function mainLoadsWorkspace(layout: CrankLayout, every = 1): MainLoadsWorkspace {
  const throws = layout.throws.length
  const angles = [...new Set(layout.cylinders.map((cylinder) => cylinder.bankAngle))]
  const banks = angles.map(emptyBank)
  const starts = layout.cylinders.map(({ firingAngle }) => startOf(firingAngle))
  return {
    layout,
    every,
    firstDegrees: [...new Set(starts.map((start) => start % every))],
    shape: emptyCrankShape(),
    banks,
    throws: layout.throws.map(({ angle }, index) => {
      const on = layout.cylinders.filter((cylinder) => cylinder.throw === index)
      const cylinders = on.map((cylinder) => ({
        bank: banks[angles.indexOf(cylinder.bankAngle)]!,
        start: startOf(cylinder.firingAngle),
      }))
      return {
        degrees: wholeDegrees(angle) % 360,
        facing: on.reduce((sum, cylinder) => sum + Math.cos(cylinder.pinOffset), 0),
        cylinders,
        gas: cylinders.map(({ bank, start }) => windowOn(bank.gas, start)),
        inertia: cylinders.map(({ bank, start }) => windowOn(bank.inertia, start)),
      }
    }),
    throwLoads: {
      gasX: arrays(throws, 720 / every),
      gasY: arrays(throws, 720 / every),
      inertiaX: arrays(throws, 360),
      inertiaY: arrays(throws, 360),
    },
    unitInertia: {
      x: arrays(layout.mains, 360),
      y: arrays(layout.mains, 360),
      of: new Float64Array(INERTIA_FIGURES).fill(Number.NaN),
    },
    result: emptyMainLoads(layout, every),
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

/** The period of a bank's force that begins at a degree of two turns, 1 to 720. */
function windowOn(bank: ForceArrays, start: number): ForceArrays {
  const period = bank.x.length / 2
  const from = ((start - 1) % period) + 1
  return { x: bank.x.subarray(from, from + period), y: bank.y.subarray(from, from + period) }
}

/** Result arrays, zero, with a sample every so many degrees. */
export function emptyMainLoads(layout: CrankLayout, every = 1): MainLoads {
  const samples = 720 / every
  return {
    mains: layout.mains,
    speed: 0,
    every,
    splitCase: layout.splitCase,
    gasX: arrays(layout.mains, samples),
    gasY: arrays(layout.mains, samples),
    inertiaX: arrays(layout.mains, samples),
    inertiaY: arrays(layout.mains, samples),
  }
}

/** Where on its bank a cylinder's gas begins, degrees, 1 to 720. */
function startOf(firingAngle: number): number {
  return 720 - (wholeDegrees(firingAngle) % 720)
}

const wholeDegrees = (angle: number): number => Math.round((angle * 180) / Math.PI)
