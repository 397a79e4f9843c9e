import type { CounterweightShare } from './counterweights.ts'
import { LAYOUT_ROWS, type LayoutRow } from './layout-rows.ts'

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
  Object.entries(LAYOUT_ROWS).map(([id, row]) => [id, layoutFrom(id as LayoutId, row)]),
) as Record<LayoutId, CrankLayout>
