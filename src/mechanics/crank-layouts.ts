import type { CounterweightShare } from './counterweights.ts'

/**
 * How the cylinders of an engine sit on its crankshaft.
 *
 * Frame, seen from the front of the engine: y up from the crank axis along the bisector of the
 * banks, x to the right; the crank turns clockwise, from +y toward +x, and every angle is measured
 * that way. A bank at angle β has its bore along (sin β, cos β). A throw's pin is at
 * R (sin ψ, cos ψ), ψ = throw angle + pin offset + θ, where θ is the crank angle from firing top
 * dead centre of the cylinder listed first. Throws and mains are counted from the front.
 *
 * Flat engines: the parting face of a split case is the plane through the crank axis square to the
 * cylinders, so the frame is turned by 90°: y points along one bank (β = 0), the other bank is at
 * β = π, and the parting face is y = 0 as everywhere else. Neither case half is a cap: a load
 * toward +y pushes the upper half off the lower one just as a load toward −y does the reverse.
 *
 * The firing orders are one common arrangement of each layout (common practice, no published
 * source); the tests prove that every order is evenly spaced and fits its crank, and that the
 * textbook balance of each layout follows from its throws.
 */

/** The layouts that the facts know. */
export type LayoutId =
  | 'inline-3'
  | 'inline-4'
  | 'inline-5'
  | 'inline-6'
  | 'v6-60'
  | 'v6-90'
  | 'v8-cross-plane'
  | 'v8-flat-plane'
  | 'v10-90'
  | 'v12-60'
  | 'flat-4'
  | 'flat-6'

/** One cylinder: angles in rad. */
export interface LayoutCylinder {
  /** Index of its throw, 0 at the front. */
  readonly throw: number
  /** β, of the bore from +y toward +x, −π/2 to π. */
  readonly bankAngle: number
  /** θ at its firing top dead centre, 0 to below 4π; a whole number of degrees. */
  readonly firingAngle: number
  /** Of its pin ahead of the throw's angle; zero where the pin is shared. */
  readonly pinOffset: number
}

/** A layout: cylinders from the front, throws, and what holds them. */
export interface CrankLayout {
  readonly id: LayoutId
  readonly cylinders: readonly LayoutCylinder[]
  /** Angle ψ of each throw at θ = 0, rad; of split pins the middle. */
  readonly throws: readonly { readonly angle: number }[]
  /** Main bearings: one on each side of every throw. */
  readonly mains: number
  /** Whether two case halves hold the crank, instead of caps. */
  readonly splitCase: boolean
  /** Included angle between banks, rad; 0 inline, π flat. */
  readonly bankSpread: number
  /** θ between one firing and the next, rad; the same all through the cycle. */
  readonly firingInterval: number
  /** Usual share of the moving mass that counterweights balance; common practice. */
  readonly counterweightShare: CounterweightShare
}

/** In degrees: throw index, bank, firing angle, pin offset. */
type CylinderRow = readonly [number, number, number, number?]

interface LayoutRow {
  /** Whole degrees. */
  readonly throws: readonly number[]
  readonly cylinders: readonly CylinderRow[]
  readonly bankSpread: number
  /** Part of the reciprocating mass: usual, least and most met. */
  readonly reciprocating: readonly [number, number, number]
  readonly splitCase?: boolean
}

const IN_LINE = (firing: readonly number[]): CylinderRow[] =>
  firing.map((angle, index) => [index, 0, angle])

/**
 * Every layout in degrees. The usual reciprocating share is 0.5 for V engines, because two pistons
 * at right angles on one pin shake like one piston's mass turning with the pin; in-line and flat
 * cranks run from 0 to 0.5.
 */
const ROWS: Record<LayoutId, LayoutRow> = {
  'inline-3': {
    throws: [0, 240, 120],
    cylinders: IN_LINE([0, 480, 240]),
    bankSpread: 0,
    reciprocating: [0.5, 0, 0.5],
  },
  'inline-4': {
    throws: [0, 180, 180, 0],
    cylinders: IN_LINE([0, 540, 180, 360]),
    bankSpread: 0,
    reciprocating: [0, 0, 0.5],
  },
  'inline-5': {
    throws: [0, 216, 144, 72, 288],
    cylinders: IN_LINE([0, 144, 576, 288, 432]),
    bankSpread: 0,
    reciprocating: [0.25, 0, 0.5],
  },
  'inline-6': {
    throws: [0, 240, 120, 120, 240, 0],
    cylinders: IN_LINE([0, 480, 240, 600, 120, 360]),
    bankSpread: 0,
    reciprocating: [0, 0, 0.5],
  },
  // Each cylinder has its own pin, 60° apart on one throw, for even firing.
  'v6-60': {
    throws: [300, 60, 180],
    cylinders: [
      [0, -30, 0, 30],
      [0, 30, 120, -30],
      [1, -30, 240, 30],
      [1, 30, 360, -30],
      [2, -30, 480, 30],
      [2, 30, 600, -30],
    ],
    bankSpread: 60,
    reciprocating: [0.5, 0.4, 0.5],
  },
  // Pins split by 30° for even firing.
  'v6-90': {
    throws: [60, 300, 180],
    cylinders: [
      [0, 45, 0, -15],
      [0, -45, 600, 15],
      [1, 45, 480, -15],
      [1, -45, 360, 15],
      [2, 45, 240, -15],
      [2, -45, 120, 15],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0.36, 0.5],
  },
  'v8-cross-plane': {
    throws: [45, 135, 315, 225],
    cylinders: [
      [0, 45, 0],
      [0, -45, 630],
      [1, 45, 270],
      [1, -45, 180],
      [2, 45, 450],
      [2, -45, 360],
      [3, 45, 540],
      [3, -45, 90],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0.46, 0.54],
  },
  'v8-flat-plane': {
    throws: [315, 135, 135, 315],
    cylinders: [
      [0, -45, 0],
      [0, 45, 450],
      [1, -45, 540],
      [1, 45, 270],
      [2, -45, 180],
      [2, 45, 630],
      [3, -45, 360],
      [3, 45, 90],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0, 0.5],
  },
  // Pins split by 18° for even firing.
  'v10-90': {
    throws: [36, 252, 180, 108, 324],
    cylinders: [
      [0, 45, 0, 9],
      [0, -45, 648, -9],
      [1, 45, 144, 9],
      [1, -45, 72, -9],
      [2, 45, 576, 9],
      [2, -45, 504, -9],
      [3, 45, 288, 9],
      [3, -45, 216, -9],
      [4, 45, 432, 9],
      [4, -45, 360, -9],
    ],
    bankSpread: 90,
    reciprocating: [0.5, 0.46, 0.54],
  },
  'v12-60': {
    throws: [330, 210, 90, 90, 210, 330],
    cylinders: [
      [0, -30, 0],
      [0, 30, 420],
      [1, -30, 480],
      [1, 30, 180],
      [2, -30, 240],
      [2, 30, 660],
      [3, -30, 600],
      [3, 30, 300],
      [4, -30, 120],
      [4, 30, 540],
      [5, -30, 360],
      [5, 30, 60],
    ],
    bankSpread: 60,
    reciprocating: [0.5, 0, 0.5],
  },
  'flat-4': {
    throws: [0, 180, 180, 0],
    cylinders: [
      [0, 0, 0],
      [1, 180, 360],
      [2, 0, 180],
      [3, 180, 540],
    ],
    bankSpread: 180,
    reciprocating: [0, 0, 0.5],
    splitCase: true,
  },
  'flat-6': {
    throws: [0, 180, 120, 300, 240, 60],
    cylinders: [
      [0, 0, 0],
      [1, 180, 360],
      [2, 0, 240],
      [3, 180, 600],
      [4, 0, 480],
      [5, 180, 120],
    ],
    bankSpread: 180,
    reciprocating: [0, 0, 0.5],
    splitCase: true,
  },
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180

function layoutFrom(id: LayoutId, row: LayoutRow): CrankLayout {
  const [reciprocating, low, high] = row.reciprocating
  return {
    id,
    cylinders: row.cylinders.map(([on, bank, firing, offset = 0]) => ({
      throw: on,
      bankAngle: radians(bank),
      firingAngle: radians(firing),
      pinOffset: radians(offset),
    })),
    throws: row.throws.map((degrees) => ({ angle: radians(degrees) })),
    mains: row.throws.length + 1,
    splitCase: row.splitCase ?? false,
    bankSpread: radians(row.bankSpread),
    firingInterval: radians(720 / row.cylinders.length),
    counterweightShare: { rotating: 1, reciprocating, low, high },
  }
}

/** Every layout by its id. */
export const CRANK_LAYOUTS = Object.fromEntries(
  Object.entries(ROWS).map(([id, row]) => [id, layoutFrom(id as LayoutId, row)]),
) as Record<LayoutId, CrankLayout>
