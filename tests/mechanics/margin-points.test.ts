import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capShare } from '../../src/mechanics/cap-share.ts'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { type MainLoads, mainLoads } from '../../src/mechanics/main-loads.ts'
import {
  decidingPoints,
  type MarginPoint,
  MOST_POINTS,
  marginPoints,
} from '../../src/mechanics/margin-points.ts'
import { slipMargin, worstSlip } from '../../src/mechanics/slip-margin.ts'
import { sweepSpeeds } from '../../src/mechanics/sweep-speeds.ts'
import { engine } from '../support/layout-loads.ts'
import { pressureTrace } from '../support/pressure-trace.ts'

const LAYOUTS = Object.values(CRANK_LAYOUTS)
const scale = fc.double({ min: 0.6, max: 1.6, noNaN: true })

const anyEngine = fc.record({
  torquePeak: fc.double({ min: 200, max: 600, noNaN: true }),
  range: fc.double({ min: 50, max: 500, noNaN: true }),
  burn: fc.double({ min: 0.5, max: 5, noNaN: true }),
  middle: fc.double({ min: 2, max: 25, noNaN: true }),
  intake: fc.double({ min: 60_000, max: 300_000, noNaN: true }),
  mass: fc.double({ min: 0.3, max: 1.5, noNaN: true }),
  reciprocating: fc.double({ min: 0, max: 0.6, noNaN: true }),
  rod: fc.double({ min: 0.13, max: 0.25, noNaN: true }),
})

/** Loads from torque peak to the highest speed, and closed throttle a tenth above. */
function sweepLoads(layout: (typeof LAYOUTS)[number], one: EngineDraw): MainLoads[] {
  const highest = one.torquePeak + one.range
  const change = {
    rodLength: one.rod,
    reciprocatingMass: one.mass,
    bigEndMass: 0.7 * one.mass,
    counterweightShare: { rotating: 1, reciprocating: one.reciprocating },
  }
  const full = sweepSpeeds(one.torquePeak, highest).map((speed) => {
    // Breathing fades above torque peak, as it does in engines.
    const intake = one.intake * (1 - (0.3 * (speed - one.torquePeak)) / highest)
    const pressure = pressureTrace({ intake, burn: one.burn, middle: one.middle })
    return mainLoads(engine(layout, { ...change, speed, pressure }))
  })
  const closed = pressureTrace({ intake: 30_000, burn: 0 })
  return [...full, mainLoads(engine(layout, { ...change, speed: 1.1 * highest, pressure: closed }))]
}

type EngineDraw = typeof anyEngine extends fc.Arbitrary<infer T> ? T : never

/** Every (pull, side) of a main over all loads, both halves of a split case. */
function everyShare(loads: MainLoads[], main: number, gas: number, inertia: number) {
  return loads.flatMap((load) =>
    Array.from({ length: 720 }, (_, index) => {
      const x = gas * load.gasX[main]![index]! + inertia * load.inertiaX[main]![index]!
      const y = gas * load.gasY[main]![index]! + inertia * load.inertiaY[main]![index]!
      return load.splitCase ? [capShare(x, y), capShare(x, -y)] : [capShare(x, y)]
    }).flat(),
  )
}

function pulls(points: MarginPoint[], gas: number, inertia: number): number[] {
  return points.map(
    (point) =>
      capShare(
        gas * point.gasX + inertia * point.inertiaX,
        gas * point.gasY + inertia * point.inertiaY,
      ).pull,
  )
}

describe('marginPoints', () => {
  it.each(LAYOUTS)('$id: find the worst of a full sweep to 0.1 % at any scale', (layout) => {
    fc.assert(
      fc.property(
        anyEngine,
        scale,
        scale,
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 1.05, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        (one, gas, inertia, friction, relief, clampShare, resistance) => {
          const loads = sweepLoads(layout, one)
          for (const main of [0, 1, layout.mains >> 1]) {
            const points = marginPoints(loads, main)
            expect(points.length).toBeLessThanOrEqual(MOST_POINTS)
            const all = everyShare(loads, main, gas, inertia)
            const some = points.map((point) =>
              capShare(
                gas * point.gasX + inertia * point.inertiaX,
                gas * point.gasY + inertia * point.inertiaY,
              ),
            )
            const pull = Math.max(...all.map((share) => share.pull))
            const side = Math.max(...all.map((share) => share.side))
            expect(Math.max(...some.map((share) => share.pull))).toBeGreaterThan(0.999 * pull)
            expect(Math.max(...some.map((share) => share.side))).toBeGreaterThan(0.999 * side)
            // The joint stays closed: clamp above the greatest pull.
            const law = { clamp: clampShare * pull, friction, relief, resistance }
            const least = Math.min(...all.map((share) => slipMargin(law, share.pull, share.side)))
            const found = worstSlip(points, law, gas, inertia).margin
            expect(found).toBeGreaterThanOrEqual(least * (1 - 1e-12))
            // 0.1 % of the pull is more than that of what is left of a clamp about to open.
            const left = 1 - (relief * pull) / law.clamp
            expect((found / least - 1) * left).toBeLessThan(0.001)
          }
        },
      ),
      // One seed, so that every run of the tests sees the same engines; no shrinking, which would
      // only look for the same loss in a simpler engine.
      { numRuns: 12, seed: 20, endOnFailure: true },
    )
  })

  it.each(LAYOUTS)('$id: those of all mains together decide for the engine', (layout) => {
    fc.assert(
      fc.property(anyEngine, scale, scale, (one, gas, inertia) => {
        const loads = sweepLoads(layout, one)
        const points = Array.from({ length: layout.mains }, (_, main) => marginPoints(loads, main))
        const every = points.flat()
        const few = decidingPoints(every)
        expect(few.length).toBeLessThanOrEqual(MOST_POINTS)
        const clamp = 1.5 * Math.max(...pulls(every, gas, inertia))
        for (const law of [
          { clamp, friction: 0.15 },
          { clamp, friction: 0.3, relief: 0.3, resistance: clamp / 4 },
        ]) {
          const all = worstSlip(every, law, gas, inertia).margin
          const some = worstSlip(few, law, gas, inertia).margin
          expect(some).toBeGreaterThanOrEqual(all)
          expect((some / all - 1) / 3).toBeLessThan(0.001)
        }
        const pull = Math.max(...pulls(every, gas, inertia))
        expect(Math.max(...pulls(few, gas, inertia))).toBeGreaterThan(0.999 * pull)
      }),
      { numRuns: 6, seed: 21, endOnFailure: true },
    )
  })

  it('carry the loads of the moment they name', () => {
    const layout = CRANK_LAYOUTS['flat-4']
    const loads = [400, 600].map((speed) => mainLoads(engine(layout, { speed })))
    for (const point of marginPoints(loads, 2)) {
      const load = loads[point.speedIndex]!
      const index = Math.round((point.angle * 180) / Math.PI)
      expect(point.gasX).toBe(point.half * load.gasX[2]![index]!)
      expect(point.gasY).toBe(point.half * load.gasY[2]![index]!)
      expect(point.inertiaX).toBe(point.half * load.inertiaX[2]![index]!)
      expect(point.inertiaY).toBe(point.half * load.inertiaY[2]![index]!)
    }
  })

  it('are at least one even where nothing pulls', () => {
    const still = mainLoads(
      engine(CRANK_LAYOUTS['inline-3'], {
        speed: 0,
        pressure: new Float64Array(720).fill(101_325),
      }),
    )
    expect(marginPoints([still], 0).length).toBe(1)
  })
})
