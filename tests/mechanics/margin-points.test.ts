import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CapShare, capShare } from '../../src/mechanics/cap-share.ts'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { type MainLoads, mainLoads } from '../../src/mechanics/main-loads.ts'
import { MOST_POINTS, marginPoints } from '../../src/mechanics/margin-points.ts'
import { engine } from '../support/layout-loads.ts'
import { pressureTrace } from '../support/pressure-trace.ts'
import { slipMargin, worstSlip } from '../support/slip-margin.ts'
import { sweepSpeeds } from '../support/sweep-speeds.ts'

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

/** Every (pull, side) of all mains over all loads, both halves of a split case. */
function everyShare(loads: MainLoads[], gas: number, inertia: number) {
  const shares: CapShare[] = []
  for (const load of loads) {
    for (let main = 0; main < load.mains; main++) {
      for (let index = 0; index < 720; index++) {
        const x = gas * load.gasX[main]![index]! + inertia * load.inertiaX[main]![index]!
        const y = gas * load.gasY[main]![index]! + inertia * load.inertiaY[main]![index]!
        shares.push(capShare(x, y))
        if (load.splitCase) shares.push(capShare(x, -y))
      }
    }
  }
  return shares
}

function greatest(shares: readonly CapShare[], of: (share: CapShare) => number): number {
  return shares.reduce((most, share) => Math.max(most, of(share)), 0)
}

/** What holds the cap: clamp above the greatest pull by a share, so that the joint stays closed. */
const anyLaw = fc.record({
  clampShare: fc.double({ min: 1.05, max: 6, noNaN: true }),
  friction: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
  relief: fc.double({ min: 0, max: 1, noNaN: true }),
  resistance: fc.double({ min: 0, max: 1e5, noNaN: true }),
})

/** Hold the points against a full sweep at one pair of scales. */
function expectWorstOf(
  loads: MainLoads[],
  points: ReturnType<typeof marginPoints>,
  gas: number,
  inertia: number,
  { clampShare, friction, relief, resistance }: LawDraw,
): void {
  expect(points.length).toBeLessThanOrEqual(MOST_POINTS)
  const all = everyShare(loads, gas, inertia)
  const some = points.map((point) =>
    capShare(
      gas * point.gasX + inertia * point.inertiaX,
      gas * point.gasY + inertia * point.inertiaY,
    ),
  )
  const pull = greatest(all, (share) => share.pull)
  expect(greatest(some, (share) => share.pull)).toBeGreaterThan(0.999 * pull)
  const side = greatest(all, (share) => share.side)
  expect(greatest(some, (share) => share.side)).toBeGreaterThan(0.999 * side)
  const law = { clamp: clampShare * pull, friction, relief, resistance }
  const least = Math.min(...all.map((share) => slipMargin(law, share.pull, share.side)))
  const found = worstSlip(points, law, gas, inertia).margin
  expect(found).toBeGreaterThanOrEqual(least * (1 - 1e-12))
  // 0.1 % of the pull is more than that of what is left of a clamp about to open.
  const left = 1 - (relief * pull) / law.clamp
  expect((found / least - 1) * left).toBeLessThan(0.001)
}

type LawDraw = typeof anyLaw extends fc.Arbitrary<infer T> ? T : never

// One seed, so that every run of the tests sees the same engines; no shrinking, which would only
// look for the same loss in a simpler engine.
const runs = (numRuns: number, seed: number) => ({ numRuns, seed, endOnFailure: true })

describe('marginPoints', () => {
  it.each(LAYOUTS)('$id: find the worst of a full sweep to 0.1 % at any scale', (layout) => {
    fc.assert(
      fc.property(anyEngine, scale, scale, anyLaw, (one, gas, inertia, law) => {
        const loads = sweepLoads(layout, one)
        expectWorstOf(loads, marginPoints(loads), gas, inertia, law)
      }),
      runs(12, 20),
    )
  })

  it.each(LAYOUTS)('$id: find it from fewer in a narrow range of ratios', (layout) => {
    fc.assert(
      fc.property(
        anyEngine,
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        anyLaw,
        (one, low, high, way, law) => {
          const loads = sweepLoads(layout, one)
          const points = marginPoints(loads, { low, high })
          expectWorstOf(loads, points, low * (high / low) ** way, 1, law)
        },
      ),
      runs(10, 22),
    )
  })

  it('are of one half of a case with caps, of both of a split case', () => {
    const halves = (id: 'flat-6' | 'v8-cross-plane') => {
      const loads = [400, 500, 620].map((speed) => mainLoads(engine(CRANK_LAYOUTS[id], { speed })))
      return new Set(marginPoints(loads).map((point) => point.half))
    }
    expect(halves('v8-cross-plane')).toEqual(new Set([1]))
    expect(halves('flat-6')).toEqual(new Set([1, -1]))
  })

  it('carry the loads of the moment they name', () => {
    const layout = CRANK_LAYOUTS['flat-4']
    const loads = [400, 600].map((speed) => mainLoads(engine(layout, { speed })))
    for (const point of marginPoints(loads)) {
      const load = loads[point.speedIndex]!
      const index = Math.round((point.angle * 180) / Math.PI)
      expect(point.gasX).toBe(point.half * load.gasX[point.main]![index]!)
      expect(point.gasY).toBe(point.half * load.gasY[point.main]![index]!)
      expect(point.inertiaX).toBe(point.half * load.inertiaX[point.main]![index]!)
      expect(point.inertiaY).toBe(point.half * load.inertiaY[point.main]![index]!)
    }
  })

  it('are at least one even where nothing pulls', () => {
    const still = mainLoads(
      engine(CRANK_LAYOUTS['inline-3'], {
        speed: 0,
        pressure: new Float64Array(720).fill(101_325),
      }),
    )
    expect(marginPoints([still]).length).toBe(1)
  })
})
