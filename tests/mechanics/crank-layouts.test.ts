import { describe, expect, it } from 'vitest'
import { CRANK_LAYOUTS, type CrankLayout } from '../../src/mechanics/crank-layouts.ts'

const TURN = 2 * Math.PI
const LAYOUTS = Object.values(CRANK_LAYOUTS)

/** Distance of an angle from a whole number of turns. */
function offTurn(angle: number): number {
  const rest = ((angle % TURN) + TURN) % TURN
  return Math.min(rest, TURN - rest)
}

const cylinderCount: Record<string, number> = {
  'inline-3': 3,
  'inline-4': 4,
  'inline-5': 5,
  'inline-6': 6,
  'v6-60': 6,
  'v6-90': 6,
  'v8-cross-plane': 8,
  'v8-flat-plane': 8,
  'v10-90': 10,
  'v12-60': 12,
  'flat-4': 4,
  'flat-6': 6,
}

// Common arrangements: one throw a cylinder in line and flat, one for two cylinders in a V, a main
// on each side of every throw.
const mainCount: Record<string, number> = {
  'inline-3': 4,
  'inline-4': 5,
  'inline-5': 6,
  'inline-6': 7,
  'v6-60': 4,
  'v6-90': 4,
  'v8-cross-plane': 5,
  'v8-flat-plane': 5,
  'v10-90': 6,
  'v12-60': 7,
  'flat-4': 5,
  'flat-6': 7,
}

const pinSplit = (layout: CrankLayout, on: number): number => {
  const offsets = layout.cylinders.filter((one) => one.throw === on).map((one) => one.pinOffset)
  return ((Math.max(...offsets) - Math.min(...offsets)) * 180) / Math.PI
}

describe('CRANK_LAYOUTS', () => {
  it('knows every layout of the facts, with its cylinders and mains', () => {
    expect(Object.keys(CRANK_LAYOUTS).sort()).toEqual(Object.keys(cylinderCount).sort())
    for (const layout of LAYOUTS) {
      expect(layout.cylinders.length).toBe(cylinderCount[layout.id])
      expect(layout.mains).toBe(mainCount[layout.id])
      expect(layout.mains).toBe(layout.throws.length + 1)
    }
  })

  it.each(LAYOUTS)('$id: every cylinder is at top dead centre when it fires', (layout) => {
    for (const cylinder of layout.cylinders) {
      const pin = layout.throws[cylinder.throw]!.angle + cylinder.pinOffset + cylinder.firingAngle
      expect(offTurn(pin - cylinder.bankAngle)).toBeLessThan(1e-12)
    }
  })

  it.each(LAYOUTS)('$id: fires evenly, the first listed cylinder at zero', (layout) => {
    expect(layout.cylinders[0]!.firingAngle).toBe(0)
    const firing = layout.cylinders.map((one) => one.firingAngle).sort((a, b) => a - b)
    firing.forEach((angle, index) => {
      expect(angle).toBeCloseTo((index * 2 * TURN) / firing.length, 12)
    })
    expect(layout.firingInterval).toBeCloseTo((2 * TURN) / firing.length, 12)
  })

  it.each(LAYOUTS)('$id: counts in whole degrees, as the sampled loads need', (layout) => {
    for (const angle of [
      ...layout.throws.map((one) => one.angle),
      ...layout.cylinders.map((one) => one.firingAngle),
    ]) {
      const degrees = (angle * 180) / Math.PI
      expect(Math.abs(degrees - Math.round(degrees))).toBeLessThan(1e-9)
      expect(degrees).toBeGreaterThanOrEqual(0)
    }
  })

  it.each(LAYOUTS)('$id: has its banks as far apart as it says', (layout) => {
    const banks = layout.cylinders.map((one) => one.bankAngle)
    expect(Math.max(...banks) - Math.min(...banks)).toBeCloseTo(layout.bankSpread, 12)
  })

  it.each(LAYOUTS)('$id: has the same number of cylinders on each throw', (layout) => {
    for (let on = 0; on < layout.throws.length; on++) {
      const count = layout.cylinders.filter((one) => one.throw === on).length
      expect(count).toBe(layout.cylinders.length / layout.throws.length)
    }
  })

  // Even firing of a V whose banks do not match its number of cylinders asks for pins split by
  // the difference between firing interval and bank angle (common practice): 120 − 90 = 30°,
  // 90 − 72 = 18°, 120 − 60 = 60°.
  it.each([
    ['v6-90', 30],
    ['v6-60', 60],
    ['v10-90', 18],
    ['v8-cross-plane', 0],
    ['v8-flat-plane', 0],
    ['v12-60', 0],
  ] as const)('%s: pins of a throw are %d° apart', (id, split) => {
    const layout = CRANK_LAYOUTS[id]
    for (let on = 0; on < layout.throws.length; on++) {
      expect(pinSplit(layout, on)).toBeCloseTo(split, 9)
    }
  })

  it('has throws at right angles in a cross-plane V8 and in one plane in a flat-plane', () => {
    const planes = (layout: CrankLayout): number =>
      new Set(layout.throws.map((one) => Math.round((one.angle * 180) / Math.PI) % 180)).size
    expect(planes(CRANK_LAYOUTS['v8-cross-plane'])).toBe(2)
    expect(planes(CRANK_LAYOUTS['v8-flat-plane'])).toBe(1)
    expect(planes(CRANK_LAYOUTS['inline-4'])).toBe(1)
  })

  it.each(['flat-4', 'flat-6'] as const)('%s: is a split case of opposed pairs', (id) => {
    const layout = CRANK_LAYOUTS[id]
    expect(layout.splitCase).toBe(true)
    for (let on = 0; on < layout.throws.length; on += 2) {
      // Both pistons of a pair move outward together: neighbours half a turn apart.
      const between = layout.throws[on + 1]!.angle - layout.throws[on]!.angle
      expect(offTurn(between - Math.PI)).toBeLessThan(1e-12)
    }
  })

  it('holds every other layout by caps', () => {
    const split = LAYOUTS.filter((layout) => layout.splitCase).map((layout) => layout.id)
    expect(split.sort()).toEqual(['flat-4', 'flat-6'])
  })
})
