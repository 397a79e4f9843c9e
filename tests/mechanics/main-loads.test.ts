import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  CRANK_LAYOUTS,
  type CrankLayout,
  type LayoutId,
} from '../../src/mechanics/crank-layouts.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { type MainLoads, mainLoads } from '../../src/mechanics/main-loads.ts'
import { mainLoadsWorkspace } from '../../src/mechanics/main-loads-workspace.ts'
import { engine, throwForce } from '../support/layout-loads.ts'
import { pressureTrace } from '../support/pressure-trace.ts'

const LAYOUTS = Object.values(CRANK_LAYOUTS)
const V8 = CRANK_LAYOUTS['v8-cross-plane']

/** Sum over the mains of gas and inertia at a degree. */
function sumOfMains(loads: MainLoads, degree: number): [number, number] {
  const sum = (arrays: Float64Array[]): number =>
    arrays.reduce((total, array) => total + array[degree]!, 0)
  return [sum(loads.gasX) + sum(loads.inertiaX), sum(loads.gasY) + sum(loads.inertiaY)]
}

function everyNumber(loads: MainLoads): number[] {
  return [loads.gasX, loads.gasY, loads.inertiaX, loads.inertiaY].flatMap((component) =>
    component.flatMap((array) => [...array]),
  )
}

describe('mainLoads', () => {
  it.each(LAYOUTS)('$id: mains together carry pin and counterweight forces', (layout) => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 719 }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (degree, speed, frontShare, reciprocating, pinMass) => {
          const input = engine(layout, {
            speed,
            frontShare,
            pinMass,
            counterweightShare: { rotating: 0.9, reciprocating },
          })
          const [x, y] = sumOfMains(mainLoads(input), degree)
          const throws = layout.throws.map((_, on) => throwForce(input, on, degree))
          const expected = throws.reduce((sum, one) => [sum[0] + one[0], sum[1] + one[1]])
          const scale = throws.reduce((sum, one) => sum + Math.hypot(...one), 1)
          expect(Math.abs(x - expected[0])).toBeLessThan(1e-10 * scale)
          expect(Math.abs(y - expected[1])).toBeLessThan(1e-10 * scale)
        },
      ),
      { numRuns: 40 },
    )
  })

  it.each(LAYOUTS)('$id: each main carries its neighbours by the lever rule', (layout) => {
    const input = engine(layout, { frontShare: 0.4 })
    const loads = mainLoads(input)
    for (let degree = 0; degree < 720; degree += 61) {
      for (let main = 0; main < layout.mains; main++) {
        const before = main > 0 ? throwForce(input, main - 1, degree) : [0, 0]
        const after = main < layout.throws.length ? throwForce(input, main, degree) : [0, 0]
        const x = loads.gasX[main]![degree]! + loads.inertiaX[main]![degree]!
        const y = loads.gasY[main]![degree]! + loads.inertiaY[main]![degree]!
        expect(x).toBeCloseTo(0.6 * before[0]! + 0.4 * after[0]!, 6)
        expect(y).toBeCloseTo(0.6 * before[1]! + 0.4 * after[1]!, 6)
      }
    }
  })

  it.each(LAYOUTS)('$id: one firing interval later the cylinders have the same loads', (layout) => {
    const pull = (degree: number): number[] =>
      layout.cylinders
        .map((_, index) => {
          // Without counterweights, which face the middle of split pins and not each cylinder.
          const counterweightShare = { rotating: 0, reciprocating: 0 }
          const loads = mainLoads(engine(onlyCylinder(layout, index), { counterweightShare }))
          const [x, y] = sumOfMains(loads, degree)
          return Math.hypot(x, y)
        })
        .sort((a, b) => a - b)
    const interval = Math.round((layout.firingInterval * 180) / Math.PI)
    const now = pull(13)
    const later = pull((13 + interval) % 720)
    now.forEach((size, index) => {
      expect(Math.abs(later[index]! / size - 1)).toBeLessThan(1e-9)
    })
  })

  it.each([
    ['inline-4', 180],
    ['inline-6', 120],
  ] as const)('%s: summed load of all mains repeats every %d°', (id, interval) => {
    const loads = mainLoads(engine(CRANK_LAYOUTS[id]))
    for (let degree = 0; degree < 720; degree += 17) {
      const now = sumOfMains(loads, degree)
      const later = sumOfMains(loads, (degree + interval) % 720)
      expect(later[0]).toBeCloseTo(now[0], 5)
      expect(later[1]).toBeCloseTo(now[1], 5)
    }
  })

  it('mirrors front to back in an in-line four: half a cycle later the ends swap', () => {
    const loads = mainLoads(engine(CRANK_LAYOUTS['inline-4']))
    for (let degree = 0; degree < 720; degree++) {
      const later = (degree + 360) % 720
      for (let main = 0; main < 5; main++) {
        expect(loads.gasY[4 - main]![later]).toBeCloseTo(loads.gasY[main]![degree]!, 6)
        expect(loads.inertiaX[4 - main]![later]).toBeCloseTo(loads.inertiaX[main]![degree]!, 6)
      }
    }
  })

  it('scales gas with bore squared and inertia with speed squared, mass and stroke', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LAYOUTS),
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (layout, scale) => {
          const one = mainLoads(engine(layout))
          const fast = mainLoads(engine(layout, { speed: 500 * scale }))
          const wide = mainLoads(engine(layout, { bore: 0.1 * scale }))
          const heavy = mainLoads(
            engine(layout, { reciprocatingMass: 0.9 * scale, bigEndMass: 0.6 * scale }),
          )
          const large = mainLoads(
            engine(layout, {
              bore: 0.1 * scale,
              stroke: 0.09 * scale,
              rodLength: 0.15 * scale,
              reciprocatingMass: 0.9 * scale ** 3,
              bigEndMass: 0.6 * scale ** 3,
            }),
          )
          for (const degree of [10, 200, 371, 550]) {
            const inertia = one.inertiaY[1]![degree]!
            const gas = one.gasY[1]![degree]!
            const same = (found: number, expected: number): void =>
              expect(Math.abs(found - expected)).toBeLessThan(1e-11 * (Math.abs(expected) + 1e5))
            same(fast.inertiaY[1]![degree]!, inertia * scale ** 2)
            expect(fast.gasY[1]![degree]).toBe(gas)
            same(wide.gasY[1]![degree]!, gas * scale ** 2)
            expect(wide.inertiaY[1]![degree]).toBe(inertia)
            same(heavy.inertiaY[1]![degree]!, inertia * scale)
            same(large.inertiaY[1]![degree]!, inertia * scale ** 4)
            same(large.gasY[1]![degree]!, gas * scale ** 2)
          }
        },
      ),
      { numRuns: 40 },
    )
  })

  it('loads a right-angled V with half its reciprocating mass balanced by second order only', () => {
    // On one shared pin the first order of two pistons at 90° turns with the crank and the
    // counterweights take it away. With an infinite rod there is no second order: nothing is left.
    const loads = mainLoads(
      engine(V8, {
        rodLength: Number.POSITIVE_INFINITY,
        counterweightShare: { rotating: 1, reciprocating: 0.5 },
      }),
    )
    const most = Math.max(...loads.inertiaY[2]!.map(Math.abs))
    const unit = 0.9 * 0.045 * 500 * 500
    expect(most).toBeLessThan(1e-9 * unit)
    const bare = mainLoads(
      engine(V8, {
        rodLength: Number.POSITIVE_INFINITY,
        counterweightShare: { rotating: 1, reciprocating: 0 },
      }),
    )
    // End main: half of one throw's constant m R ω².
    expect(Math.hypot(bare.inertiaX[0]![77]!, bare.inertiaY[0]![77]!) / (unit / 2)).toBeCloseTo(
      1,
      9,
    )
  })

  it('pushes the cap down with gas at firing dead centre and pulls up with inertia', () => {
    const loads = mainLoads(
      engine(CRANK_LAYOUTS['inline-4'], { counterweightShare: { rotating: 1, reciprocating: 0 } }),
    )
    expect(loads.gasY[0]![0]).toBeLessThan(0)
    expect(loads.inertiaY[0]![0]).toBeGreaterThan(0)
    // Just after dead centre the rod leans: the pin is pushed the way it goes, toward +x.
    expect(loads.gasX[0]![20]).toBeGreaterThan(0)
  })

  it('is finite everywhere in its range', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LAYOUTS),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.002, max: 4, noNaN: true }),
        fc.double({ min: 0.525, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 3000, noNaN: true }),
        (layout, bore, stroke, rod, speed) => {
          const loads = mainLoads(engine(layout, { bore, stroke, rodLength: rod * stroke, speed }))
          expect(everyNumber(loads).every(Number.isFinite)).toBe(true)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('gives the same with a workspace used before for another crank', () => {
    const workspace = mainLoadsWorkspace(V8)
    mainLoads(
      engine(V8, { workspace, speed: 900, stroke: 0.07, pressure: pressureTrace({ burn: 1 }) }),
    )
    const again = mainLoads(engine(V8, { workspace }))
    expect(everyNumber(again)).toEqual(everyNumber(mainLoads(engine(V8))))
  })

  it('names what it refuses', () => {
    expect(() => mainLoads(engine(V8, { pressure: new Float64Array(360) }))).toThrow(/pressure/)
    const broken = pressureTrace()
    broken[300] = Number.NaN
    expect(() => mainLoads(engine(V8, { pressure: broken }))).toThrow(/pressure is NaN/)
    expect(() => mainLoads(engine(V8, { speed: Number.NaN }))).toThrow(DomainError)
    expect(() => mainLoads(engine(V8, { frontShare: 1.1 }))).toThrow(/frontShare/)
    const other = mainLoadsWorkspace(CRANK_LAYOUTS['inline-4' satisfies LayoutId])
    expect(() => mainLoads(engine(V8, { workspace: other }))).toThrow(/workspace is inline-4/)
  })
})

/** One cylinder of the layout, alone on its throw between two mains. */
function onlyCylinder(layout: CrankLayout, index: number): CrankLayout {
  const cylinder = layout.cylinders[index]!
  return {
    ...layout,
    mains: 2,
    throws: [layout.throws[cylinder.throw]!],
    cylinders: [{ ...cylinder, throw: 0 }],
  }
}
