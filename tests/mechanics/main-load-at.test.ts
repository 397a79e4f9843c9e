import { describe, expect, it } from 'vitest'
import { STRIDE } from '../../src/mechanics/coarse-look.ts'
import { CRANK_LAYOUTS, type LayoutId } from '../../src/mechanics/crank-layouts.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { loadsBetween, loadsRead } from '../../src/mechanics/main-load-at.ts'
import { type MainLoadsInput, mainLoads } from '../../src/mechanics/main-loads.ts'
import { emptyMainLoads, mainLoadsWorkspace } from '../../src/mechanics/main-loads-workspace.ts'

const CYCLE = 720
/** A made-up indicator diagram: a sharp peak after firing, a bump at overlap. */
const pressure = Float64Array.from(
  { length: CYCLE },
  (_, degree) => 1e5 + 7e6 * Math.exp(-(((degree - 14) / 30) ** 2)) + 2e4 * Math.sin(degree / 57),
)

function engine(
  id: LayoutId,
  every: number,
): Required<Pick<MainLoadsInput, 'workspace'>> & MainLoadsInput {
  const layout = CRANK_LAYOUTS[id]
  return {
    layout,
    bore: 0.1024,
    stroke: 0.0884,
    rodLength: 0.1448,
    reciprocatingMass: 0.93,
    bigEndMass: 0.61,
    speed: 640,
    pressure,
    workspace: mainLoadsWorkspace(layout, every),
    result: emptyMainLoads(layout, every),
  }
}

const ids = Object.keys(CRANK_LAYOUTS) as LayoutId[]
const nothing = () => ({ gasX: 0, gasY: 0, inertiaX: 0, inertiaY: 0 })

describe('loads at a few degrees', () => {
  it.each(ids)('are those of every degree, to the last bit: %s', (id) => {
    const full = mainLoads(engine(id, 1))
    const few = mainLoads(engine(id, STRIDE))
    for (let main = 0; main < full.mains; main++) {
      for (const part of ['gasX', 'gasY', 'inertiaX', 'inertiaY'] as const) {
        const expected = full[part][main]!.filter((_, degree) => degree % STRIDE === 0)
        expect(few[part][main]).toEqual(expected)
      }
    }
  })

  it.each(ids)('and so are those worked out between them: %s', (id) => {
    const read = loadsRead([mainLoads(engine(id, 1))])
    const input = engine(id, STRIDE)
    const { mains } = mainLoads(input)
    const between = loadsBetween([input], input.workspace)
    for (let main = 0; main < mains; main++) {
      for (let degree = 0; degree < CYCLE; degree++) {
        const [one, other] = [nothing(), nothing()]
        read(0, main, degree, one)
        between(0, main, degree, other)
        if (degree % 90 === 0) expect(other).toEqual(one)
        else if (!Object.entries(one).every(([part, value]) => other[part as 'gasX'] === value))
          throw new Error(`main ${main}, ${degree}°`)
      }
    }
  })

  it('do not fit into a result made for every degree', () => {
    const input = engine('inline-4', STRIDE)
    const result = emptyMainLoads(input.layout)
    expect(() => mainLoads({ ...input, result })).toThrow(DomainError)
  })
})
