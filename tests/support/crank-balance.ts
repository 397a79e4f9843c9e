import type { CrankLayout } from '../../src/mechanics/crank-layouts.ts'

/** One cylinder as balance sees it: rad, and a position along the crank in any unit of length. */
export interface BalanceCylinder {
  /** β, of the bore from +y toward +x. */
  bankAngle: number
  /** θ at its top dead centre. */
  firingAngle: number
  /** Along the crank from its middle. */
  position: number
}

/**
 * A shaking force or couple that turns: one part with the crank, one against it, each of constant
 * size. Both turn at the order's multiple of crank speed. Greatest forward + backward, least
 * |forward − backward|. The forward part of the first order is what counterweights can take away.
 */
export interface Shaking {
  forward: number
  backward: number
}

/** Of one order: force in units of m R ω² λ^(order − 1), couple in that times the position's unit. */
export interface OrderBalance {
  force: Shaking
  couple: Shaking
}

/**
 * Shaking force and couple of the reciprocating masses, first order (crank speed) or second (twice
 * crank speed, in units that carry λ = R/l).
 *
 * A cylinder's force of order n is cos n(θ − f) along (sin β, cos β). Written as a complex number
 * with y real, e^{iβ} cos n(θ − f) is half of e^{i(β − nf)} turning forward and half of
 * e^{i(β + nf)} turning backward; the halves are summed over the cylinders.
 *
 * @param cylinders - any arrangement, also radial ones
 * @param order - 1 or 2
 * @returns sizes, zero or above; rounding leaves about 1e-16 where balance is perfect
 *
 * @see C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 2, ch. 8 (memory)
 */
export function orderBalance(cylinders: readonly BalanceCylinder[], order: 1 | 2): OrderBalance {
  return {
    force: shaking(cylinders, order, () => 1),
    couple: shaking(cylinders, order, (cylinder) => cylinder.position),
  }
}

function shaking(
  cylinders: readonly BalanceCylinder[],
  order: number,
  arm: (cylinder: BalanceCylinder) => number,
): Shaking {
  const half = (direction: 1 | -1): number => {
    const angle = ({ bankAngle, firingAngle }: BalanceCylinder): number =>
      bankAngle - direction * order * firingAngle
    const real = cylinders.reduce((sum, one) => sum + arm(one) * Math.cos(angle(one)), 0)
    const imaginary = cylinders.reduce((sum, one) => sum + arm(one) * Math.sin(angle(one)), 0)
    return Math.hypot(real, imaginary) / 2
  }
  return { forward: half(1), backward: half(-1) }
}

/**
 * A layout's balance without counterweights, both orders. Positions are in throw spacings; the two
 * rods of a throw are taken to be in one plane.
 */
export function layoutBalance(layout: CrankLayout): { first: OrderBalance; second: OrderBalance } {
  const middle = (layout.throws.length - 1) / 2
  const cylinders = layout.cylinders.map((cylinder) => ({
    ...cylinder,
    position: cylinder.throw - middle,
  }))
  return { first: orderBalance(cylinders, 1), second: orderBalance(cylinders, 2) }
}
