import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capShare } from '../../src/mechanics/cap-share.ts'
import { CRANK_LAYOUTS } from '../../src/mechanics/crank-layouts.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { loadSweep, meanLoad } from '../../src/mechanics/load-sweep.ts'
import { type MainLoads, mainLoads } from '../../src/mechanics/main-loads.ts'
import { mainLoadsWorkspace } from '../../src/mechanics/main-loads-workspace.ts'
import { engine } from '../support/layout-loads.ts'
import { pressureTrace } from '../support/pressure-trace.ts'
import { sweepSpeeds } from '../support/sweep-speeds.ts'

const LAYOUTS = Object.values(CRANK_LAYOUTS)
const V8 = CRANK_LAYOUTS['v8-cross-plane']
const speeds = [400, 500, 620]
const loadsOf = (layout = V8, change = {}): MainLoads[] =>
  speeds.map((speed) => mainLoads(engine(layout, { speed, ...change })))

/** Greatest pull and side push of one main by going through everything. */
function greatest(loads: MainLoads[], main: number): { pull: number; side: number } {
  let pull = 0
  let side = 0
  for (const load of loads) {
    for (let index = 0; index < 720; index++) {
      const x = load.gasX[main]![index]! + load.inertiaX[main]![index]!
      const y = load.gasY[main]![index]! + load.inertiaY[main]![index]!
      for (const half of load.splitCase ? [1, -1] : [1]) {
        const share = capShare(x, half * y)
        pull = Math.max(pull, share.pull)
        side = Math.max(side, share.side)
      }
    }
  }
  return { pull, side }
}

describe('loadSweep', () => {
  it.each(LAYOUTS)('$id: finds the greatest pull and side push of every main', (layout) => {
    const loads = loadsOf(layout)
    const sweep = loadSweep({ loads })
    expect(sweep.mains.length).toBe(layout.mains)
    for (const { main, worstPull, worstSide } of sweep.mains) {
      const expected = greatest(loads, main)
      expect(worstPull.force).toBe(expected.pull)
      expect(worstSide.force).toBe(expected.side)
    }
    expect(sweep.worstPull.force).toBe(Math.max(...sweep.mains.map((one) => one.worstPull.force)))
    expect(sweep.worstSide.force).toBe(Math.max(...sweep.mains.map((one) => one.worstSide.force)))
  })

  it.each(LAYOUTS)('$id: tells the greatest pull and side push of each speed', (layout) => {
    const loads = loadsOf(layout)
    for (const { main, atSpeeds } of loadSweep({ loads }).mains) {
      expect(atSpeeds).toEqual(loads.map((load) => greatest([load], main)))
    }
  })

  it.each(LAYOUTS)('$id: finds the greatest load of all, whichever way it points', (layout) => {
    const loads = loadsOf(layout)
    const all = loads.flatMap((load) =>
      load.gasX.flatMap((gasX, main) =>
        Array.from(gasX, (gas, index) =>
          Math.hypot(
            gas + load.inertiaX[main]![index]!,
            load.gasY[main]![index]! + load.inertiaY[main]![index]!,
          ),
        ),
      ),
    )
    const most = all.reduce((greatest, one) => Math.max(greatest, one), 0)
    const { mains } = loadSweep({ loads })
    expect(Math.max(...mains.map(({ peakLoad }) => peakLoad.force)) / most).toBeCloseTo(1, 12)
  })

  it.each(LAYOUTS)('$id: names the moment at which it found them', (layout) => {
    const loads = loadsOf(layout)
    const sweep = loadSweep({ loads })
    for (const [worst, part] of [
      [sweep.worstPull, 'pull'],
      [sweep.worstSide, 'side'],
    ] as const) {
      const load = loads[worst.speedIndex]!
      const index = Math.round((worst.angle * 180) / Math.PI)
      expect(worst.speed).toBe(load.speed)
      const x = load.gasX[worst.main]![index]! + load.inertiaX[worst.main]![index]!
      const y = load.gasY[worst.main]![index]! + load.inertiaY[worst.main]![index]!
      expect(capShare(x, worst.half * y)[part]).toBe(worst.force)
    }
  })

  it('keeps load cases apart and names the one that decides', () => {
    const closed = mainLoads(
      engine(V8, {
        speed: 2000,
        pressure: pressureTrace({ intake: 30_000, burn: 0 }),
        counterweightShare: { rotating: 1, reciprocating: 0 },
      }),
    )
    const loads = [...loadsOf(V8), closed]
    const cases = ['full-load', 'full-load', 'full-load', 'closed-throttle'] as const
    const sweep = loadSweep({ loads, cases })
    expect(sweep.worstPull.loadCase).toBe('closed-throttle')
    expect(loadSweep({ loads: loadsOf(V8) }).worstPull.loadCase).toBe('full-load')
  })

  it('gives unit loads by projected area: peak and mean over the worst cycle', () => {
    const loads = loadsOf(V8)
    const sweep = loadSweep({ loads, bearing: { diameter: 0.062, width: 0.022 } })
    for (const { main, unitLoad, peakLoad } of sweep.mains) {
      const sizes = loads.map((load) =>
        Array.from({ length: 720 }, (_, index) =>
          Math.hypot(
            load.gasX[main]![index]! + load.inertiaX[main]![index]!,
            load.gasY[main]![index]! + load.inertiaY[main]![index]!,
          ),
        ),
      )
      const mean = Math.max(...sizes.map((row) => row.reduce((sum, one) => sum + one) / 720))
      expect(peakLoad.force / Math.max(...sizes.flat())).toBeCloseTo(1, 12)
      expect(meanLoad(loads, main) / mean).toBeCloseTo(1, 12)
      expect(unitLoad!.peak).toBeCloseTo(peakLoad.force / (0.062 * 0.022), 3)
      expect(unitLoad!.mean).toBeCloseTo(mean / (0.062 * 0.022), 3)
    }
    expect(loadSweep({ loads }).mains[0]!.unitLoad).toBeUndefined()
  })

  it('refuses loads that do not belong together', () => {
    expect(() => loadSweep({ loads: [] })).toThrow(DomainError)
    const mixed = [...loadsOf(V8), ...loadsOf(CRANK_LAYOUTS['inline-6'])]
    expect(() => loadSweep({ loads: mixed })).toThrow(/mains/)
    expect(() => loadSweep({ loads: loadsOf(V8), cases: ['full-load'] })).toThrow(/cases/)
    expect(() => loadSweep({ loads: loadsOf(V8), bearing: { diameter: 0, width: 0.02 } })).toThrow(
      /diameter is 0/,
    )
  })

  it('refuses several speeds that share one workspace, which would overwrite each other', () => {
    const workspace = mainLoadsWorkspace(V8)
    const loads = speeds.map((speed) => mainLoads(engine(V8, { speed, workspace })))
    expect(() => loadSweep({ loads })).toThrow(/arrays of their own/)
  })
})

const anyEngine = fc.record({
  layout: fc.constantFrom(...LAYOUTS),
  torquePeak: fc.double({ min: 200, max: 600, noNaN: true }),
  range: fc.double({ min: 50, max: 500, noNaN: true }),
  burn: fc.double({ min: 0, max: 5, noNaN: true }),
  intake: fc.double({ min: 60_000, max: 300_000, noNaN: true }),
  reciprocating: fc.double({ min: 0, max: 0.6, noNaN: true }),
})

describe('worst pull over a sweep', () => {
  it('never falls as the highest speed rises, with the same pressures', () => {
    fc.assert(
      fc.property(anyEngine, fc.double({ min: 1, max: 200, noNaN: true }), (one, more) => {
        const pressure = pressureTrace({ burn: one.burn, intake: one.intake })
        const worst = (highest: number): number => {
          const loads = sweepSpeeds(one.torquePeak, highest).map((speed) =>
            mainLoads(
              engine(one.layout, {
                speed,
                pressure,
                counterweightShare: { rotating: 1, reciprocating: one.reciprocating },
              }),
            ),
          )
          return loadSweep({ loads }).worstPull.force
        }
        const highest = one.torquePeak + one.range
        expect(worst(highest + more)).toBeGreaterThanOrEqual(worst(highest) * (1 - 1e-12))
      }),
      { numRuns: 25, seed: 8 },
    )
  })

  it('may fall at one speed alone: inertia relieves gas at firing dead centre', () => {
    // The reason why the sweep starts at torque peak.
    const worst = (speed: number): number =>
      loadSweep({ loads: [mainLoads(engine(V8, { speed }))] }).worstPull.force
    expect(worst(500)).toBeLessThan(worst(300))
  })

  it.each(LAYOUTS)('$id: never falls with more gas pressure at torque peak', (layout) => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (burn, more) => {
          const worst = (lift: number) => {
            const pressure = pressureTrace({ burn: lift })
            return loadSweep({ loads: [mainLoads(engine(layout, { speed: 350, pressure }))] })
          }
          const before = worst(burn)
          const after = worst(burn + more)
          expect(after.worstPull.force).toBeGreaterThanOrEqual(before.worstPull.force)
          expect(after.worstSide.force).toBeGreaterThanOrEqual(before.worstSide.force * (1 - 1e-12))
        },
      ),
      { numRuns: 12, seed: 7 },
    )
  })

  it('scales with size: alike engines at the same pressure and piston speed pull as bore squared', () => {
    const worst = (scale: number): number =>
      loadSweep({
        loads: speeds.map((speed) =>
          mainLoads(
            engine(V8, {
              bore: 0.1 * scale,
              stroke: 0.09 * scale,
              rodLength: 0.15 * scale,
              reciprocatingMass: 0.9 * scale ** 3,
              bigEndMass: 0.6 * scale ** 3,
              speed: speed / scale,
            }),
          ),
        ),
      }).worstPull.force
    expect(worst(1.5) / worst(1)).toBeCloseTo(2.25, 9)
    expect(worst(0.6) / worst(1)).toBeCloseTo(0.36, 9)
  })
})
