import { describe, expect, it } from 'vitest'
import { CRANK_LAYOUTS, type LayoutId } from '../../src/mechanics/crank-layouts.ts'
import { layoutBalance, orderBalance } from '../support/crank-balance.ts'

const most = ({ forward, backward }: { forward: number; backward: number }): number =>
  forward + backward

// Textbook facts of balance: C. F. Taylor, The Internal-Combustion Engine in Theory and Practice,
// vol. 2, ch. 8, and R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 22 (from memory). They
// follow from symmetry, so perfect balance is held to rounding.
const ZERO = 1e-12

describe('layoutBalance', () => {
  it.each(['inline-6', 'v12-60'] as const)('%s balances fully', (id) => {
    const { first, second } = layoutBalance(CRANK_LAYOUTS[id])
    for (const shaking of [first.force, first.couple, second.force, second.couple]) {
      expect(most(shaking)).toBeLessThan(ZERO)
    }
  })

  it('has no second-order force or couple in a cross-plane V8, and a couple that turns', () => {
    const { first, second } = layoutBalance(CRANK_LAYOUTS['v8-cross-plane'])
    expect(most(second.force)).toBeLessThan(ZERO)
    expect(most(second.couple)).toBeLessThan(ZERO)
    expect(most(first.force)).toBeLessThan(ZERO)
    // Turns with the crank only, so that counterweights of half the reciprocating mass remove it.
    expect(first.couple.backward).toBeLessThan(ZERO)
    expect(first.couple.forward).toBeGreaterThan(1)
  })

  it('has √10 throw spacings of turning couple in a cross-plane V8', () => {
    // Each V pair turns as one unit: arms −1.5, −0.5, 0.5, 1.5 at 0, 90, 270, 180°:
    // |3, 1| = √10 (Taylor's example, recomputed).
    const { first } = layoutBalance(CRANK_LAYOUTS['v8-cross-plane'])
    expect(first.couple.forward).toBeCloseTo(Math.sqrt(10), 12)
  })

  it('has four units of second-order force in an in-line four and nothing else', () => {
    const { first, second } = layoutBalance(CRANK_LAYOUTS['inline-4'])
    expect(most(first.force)).toBeLessThan(ZERO)
    expect(most(first.couple)).toBeLessThan(ZERO)
    expect(most(second.force)).toBeCloseTo(4, 12)
    expect(most(second.couple)).toBeLessThan(ZERO)
  })

  it('shakes sideways only in a flat-plane V8: 4√2 units of the second order', () => {
    const { first, second } = layoutBalance(CRANK_LAYOUTS['v8-flat-plane'])
    expect(most(first.force)).toBeLessThan(ZERO)
    expect(most(first.couple)).toBeLessThan(ZERO)
    expect(most(second.force)).toBeCloseTo(4 * Math.SQRT2, 12)
    // Equal halves both ways round make a force along one line.
    expect(second.force.forward).toBeCloseTo(second.force.backward, 12)
  })

  it.each(['inline-3', 'inline-5', 'v6-60', 'v6-90', 'v10-90'] as const)(
    '%s balances its forces and is left with couples',
    (id) => {
      const { first, second } = layoutBalance(CRANK_LAYOUTS[id])
      expect(most(first.force)).toBeLessThan(ZERO)
      expect(most(second.force)).toBeLessThan(ZERO)
      expect(most(first.couple) + most(second.couple)).toBeGreaterThan(0.1)
    },
  )

  it('has a √3 couple in an in-line three', () => {
    // Arms −1, 0, 1 at 120°: |1 − e^{i120°}| = √3.
    const { first, second } = layoutBalance(CRANK_LAYOUTS['inline-3'])
    expect(most(first.couple)).toBeCloseTo(Math.sqrt(3), 12)
    expect(most(second.couple)).toBeCloseTo(Math.sqrt(3), 12)
  })

  it.each(['flat-4', 'flat-6'] as const)('%s balances its forces', (id) => {
    const { first, second } = layoutBalance(CRANK_LAYOUTS[id])
    expect(most(first.force)).toBeLessThan(ZERO)
    expect(most(second.force)).toBeLessThan(ZERO)
  })

  it('has a turning first-order couple wherever a right-angled V shares its pins', () => {
    for (const id of ['v8-cross-plane', 'v8-flat-plane'] as LayoutId[]) {
      expect(layoutBalance(CRANK_LAYOUTS[id]).first.couple.backward).toBeLessThan(ZERO)
    }
  })
})

describe('orderBalance', () => {
  it('is one piston: equal halves turning both ways', () => {
    const { force } = orderBalance([{ bankAngle: 0, firingAngle: 0, position: 0 }], 1)
    expect(force.forward).toBeCloseTo(0.5, 15)
    expect(force.backward).toBeCloseTo(0.5, 15)
  })
})
