import { describe, expect, it } from 'vitest'
import { capShare } from '../../src/mechanics/cap-share.ts'
import { coarseLook, degreesAround } from '../../src/mechanics/coarse-look.ts'
import { CRANK_LAYOUTS, type CrankLayout } from '../../src/mechanics/crank-layouts.ts'
import { loadsRead } from '../../src/mechanics/main-load-at.ts'
import { type MainLoads, mainLoads } from '../../src/mechanics/main-loads.ts'
import { engine } from '../support/layout-loads.ts'

const LAYOUTS = Object.values(CRANK_LAYOUTS)
const SPEEDS = [350, 620]
const loadsOf = (layout: CrankLayout): MainLoads[] =>
  SPEEDS.map((speed) => mainLoads(engine(layout, { speed })))

interface Look {
  readonly name: string
  readonly pull: number
  readonly side: number
}

/** Pull and side push at every fifth degree of every main, load and half, gone through one by one. */
function everyLook(loads: readonly MainLoads[], ratio: number): Look[] {
  const found: Look[] = []
  loads.forEach((load, speed) => {
    for (let main = 0; main < load.mains; main++) {
      for (let degree = 0; degree < 720; degree += 5) {
        for (const half of load.splitCase ? [1, -1] : [1]) {
          const at = (gas: Float64Array[], inertia: Float64Array[]) =>
            ratio * (gas[main]?.[degree] ?? 0) + (inertia[main]?.[degree] ?? 0)
          const x = at(load.gasX, load.inertiaX)
          const share = capShare(x, half * at(load.gasY, load.inertiaY))
          found.push({ name: `${main} ${speed * 720 + degree} ${half}`, ...share })
        }
      }
    }
  })
  return found
}

describe('coarseLook', () => {
  it.each(LAYOUTS)('$id: keeps whatever comes near the hull, and leaves most out', (layout) => {
    const loads = loadsOf(layout)
    for (const [ratio, near] of [
      [0.4, 0.97],
      [1, 0.9],
      [2.5, 0.97],
    ] as const) {
      const looks = everyLook(loads, ratio)
      const kept = coarseLook(loads, [ratio], near)
      const names = new Set(
        Array.from({ length: kept.count }, (_, at) =>
          [kept.main[at], kept.flat[at], kept.half[at]].join(' '),
        ),
      )
      expect(names.size).toBe(kept.count)
      const greatest = (of: (look: Look) => number) => Math.max(...looks.map(of))
      const [pull, side] = [greatest((one) => one.pull), greatest((one) => one.side)]
      // Near the hull: near to the greatest of some weighting of pull and side push. A hair above
      // the limit, for the nearly exact part that is looked with.
      for (let turn = 0; turn <= 24; turn++) {
        const [x, y] = [Math.cos((turn * Math.PI) / 48), Math.sin((turn * Math.PI) / 48)]
        const value = (look: Look) => (x * look.pull) / pull + (y * look.side) / side
        const least = (near + 1e-3) * greatest(value)
        for (const look of looks) if (value(look) >= least) expect(names).toContain(look.name)
      }
      // It is there to leave most of them out.
      expect(kept.count).toBeLessThan(looks.length / 4)
    }
  })

  it('keeps for several ratios what it keeps for each', () => {
    const loads = loadsOf(CRANK_LAYOUTS['v8-cross-plane'])
    const flats = (ratios: number[]) => {
      const kept = coarseLook(loads, ratios, 0.97)
      return Array.from({ length: kept.count }, (_, at) => `${kept.main[at]} ${kept.flat[at]}`)
    }
    const each = new Set([...flats([0.4]), ...flats([2.5])])
    expect(new Set(flats([0.4, 2.5]))).toEqual(each)
  })
})

describe('degreesAround', () => {
  it('takes two degrees to either side, over the end of the cycle too', () => {
    const loads = loadsOf(CRANK_LAYOUTS['inline-4'])
    const looks = coarseLook(loads, [1], 0.97)
    looks.count = 2
    looks.main.set([1, 2])
    looks.flat.set([720, 720 + 715])
    looks.half.set([1, 1])
    const around = degreesAround(loadsRead(loads), looks)
    expect(Array.from(around.flat.subarray(0, 10))).toEqual([
      ...[720 + 718, 720 + 719, 720, 721, 722],
      ...[720 + 713, 720 + 714, 720 + 715, 720 + 716, 720 + 717],
    ])
    expect(Array.from(around.main.subarray(0, 10))).toEqual([1, 1, 1, 1, 1, 2, 2, 2, 2, 2])
    expect(around.gasY[2]).toBe(loads[1]?.gasY[1]?.[0])
  })
})
