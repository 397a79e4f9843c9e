import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { STRIDE } from '../../src/mechanics/coarse-look.ts'
import { CRANK_LAYOUTS, type CrankLayout } from '../../src/mechanics/crank-layouts.ts'
import { type LoadSweep, loadSweep } from '../../src/mechanics/load-sweep.ts'
import { loadsBetween } from '../../src/mechanics/main-load-at.ts'
import { type MainLoadsInput, mainLoads } from '../../src/mechanics/main-loads.ts'
import { emptyMainLoads, mainLoadsWorkspace } from '../../src/mechanics/main-loads-workspace.ts'
import { engine } from '../support/layout-loads.ts'
import { pressureTrace } from '../support/pressure-trace.ts'

const LAYOUTS = Object.values(CRANK_LAYOUTS)
const SPEEDS = [220, 410, 620]

/** A sweep of an engine from loads at every so many degrees, and what lies between. */
function sweepOf(layout: CrankLayout, change: Partial<MainLoadsInput>, every: number): LoadSweep {
  const workspace = mainLoadsWorkspace(layout, every)
  const inputs = SPEEDS.map((speed) => ({
    ...engine(layout, { ...change, speed, workspace }),
    result: emptyMainLoads(layout, every),
  }))
  const loads = inputs.map(mainLoads)
  return loadSweep(every === 1 ? { loads } : { loads, loadAt: loadsBetween(inputs, workspace) })
}

describe('a sweep between samples', () => {
  it.each(LAYOUTS)('$id: finds what one of every degree finds, and when', (layout) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: 0.1, max: 2.5, noNaN: true }),
        fc.double({ min: 0.1, max: 1.5, noNaN: true }),
        (burn, reciprocatingMass, bigEndMass) => {
          const pressure = pressureTrace({ intake: 150_000, burn })
          const change = { pressure, reciprocatingMass, bigEndMass }
          expect(sweepOf(layout, change, STRIDE)).toEqual(sweepOf(layout, change, 1))
        },
      ),
      { numRuns: 12, seed: 5 },
    )
  })

  it('is refused without what lies between, and where the mean load is asked for', () => {
    const workspace = mainLoadsWorkspace(CRANK_LAYOUTS['inline-4'], STRIDE)
    const input = engine(CRANK_LAYOUTS['inline-4'], { workspace })
    const loads = [mainLoads(input)]
    expect(() => loadSweep({ loads })).toThrow(/every/)
    const loadAt = loadsBetween([input], workspace)
    const bearing = { diameter: 0.06, width: 0.02 }
    expect(() => loadSweep({ loads, loadAt, bearing })).toThrow(/every/)
  })
})
