import { describe, expect, it } from 'vitest'
import { counterweightMass } from '../../src/mechanics/counterweights.ts'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { mainLoads } from '../../src/mechanics/main-loads.ts'
import { engine } from '../support/layout-loads.ts'

const mass = { cylinders: 2, reciprocatingMass: 0.9, bigEndMass: 0.6, pinMass: 0.8 }

describe('counterweightMass', () => {
  it('without the pin is the bob weight: rotating ×2 plus half of reciprocating ×2', () => {
    const share = { rotating: 1, reciprocating: 0.5 }
    expect(counterweightMass({ ...mass, pinMass: 0 }, share)).toBeCloseTo(2.1, 12)
    expect(counterweightMass(mass, share)).toBeCloseTo(2.9, 12)
    expect(counterweightMass(mass, { rotating: 0, reciprocating: 0 })).toBe(0)
  })

  it('refuses shares that no crank has', () => {
    expect(() => counterweightMass(mass, { rotating: 1, reciprocating: 1.3 })).toThrow(DomainError)
    expect(() => counterweightMass(mass, { rotating: Number.NaN, reciprocating: 0 })).toThrow(
      /rotating is NaN/,
    )
  })

  it.each(Object.values(CRANK_LAYOUTS))(
    '$id: a full share takes the whole rotating load off the mains',
    (layout) => {
      const loads = mainLoads(
        engine(layout, {
          reciprocatingMass: 0,
          pinMass: 0.8,
          counterweightShare: { rotating: 1, reciprocating: 0 },
        }),
      )
      const left = [...loads.inertiaX, ...loads.inertiaY].flatMap((array) => [...array])
      // Forces taken off are about 1e4 N.
      expect(Math.max(...left.map(Math.abs))).toBeLessThan(1e-9)
    },
  )
})

describe('usual share of each layout', () => {
  it.each(Object.values(CRANK_LAYOUTS))('$id: usual share lies in its own range', (layout) => {
    const { rotating, reciprocating, low, high } = layout.counterweightShare
    expect(rotating).toBe(1)
    expect(reciprocating).toBeGreaterThanOrEqual(low!)
    expect(reciprocating).toBeLessThanOrEqual(high!)
  })

  it('balances half of the reciprocating mass in a right-angled V', () => {
    // Published balancing practice, read: V8 cranks are almost always balanced to 100 % of the
    // rotating and 50 % of the reciprocating weight.
    for (const id of ['v8-cross-plane', 'v8-flat-plane', 'v10-90'] as const) {
      expect(CRANK_LAYOUTS[id].counterweightShare.reciprocating).toBe(0.5)
    }
  })

  it.each(Object.values(CRANK_LAYOUTS))(
    '$id: lightens the inner mains against no counterweights at all',
    (layout) => {
      const bare = { rotating: 0, reciprocating: 0 }
      const greatest = (change: object): number => {
        const loads = mainLoads(engine(layout, { speed: 700, ...change }))
        return Math.max(
          ...loads.inertiaX.flatMap((xs, main) =>
            [...xs].map((x, at) => Math.hypot(x, loads.inertiaY[main]![at]!)),
          ),
        )
      }
      expect(greatest({})).toBeLessThan(greatest({ counterweightShare: bare }))
    },
  )
})
