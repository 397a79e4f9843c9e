import { describe, expect, it } from 'vitest'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { mainLoads } from '../../src/mechanics/main-loads.ts'
import { polarLoad } from '../../src/mechanics/polar-load.ts'
import { engine } from '../support/layout-loads.ts'

const loads = mainLoads(engine(CRANK_LAYOUTS['v8-cross-plane']))

describe('polarLoad', () => {
  it.each([1, 2, 4, 5, 10])('has a point every %d degrees, gas and inertia together', (step) => {
    const points = polarLoad(loads, 1, step)
    expect(points.length).toBe((2 * 720) / step)
    for (let at = 0; at < points.length / 2; at++) {
      const index = at * step
      expect(points[2 * at]).toBe(loads.gasX[1]![index]! + loads.inertiaX[1]![index]!)
      expect(points[2 * at + 1]).toBe(loads.gasY[1]![index]! + loads.inertiaY[1]![index]!)
    }
  })

  it('scales gas and inertia apart', () => {
    expect(polarLoad(loads, 0, 10, 0, 1)[3]).toBe(loads.inertiaY[0]![10])
    expect(polarLoad(loads, 0, 10, 1, 0)[3]).toBe(loads.gasY[0]![10])
  })

  it('names what it refuses', () => {
    expect(() => polarLoad(loads, 5)).toThrow(/main is 5; .*0 to 4/)
    expect(() => polarLoad(loads, 0, 7)).toThrow(DomainError)
  })
})
