import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { highestSetting } from '../../src/call/highest-setting.ts'

const STEPS = 64
const step = fc.integer({ min: -100, max: 100 })
const demand = fc.double({ min: 0, max: 99, noNaN: true })
const known = fc.record({ step, demand })

/** Steps up to the edge are ok; each look is counted. */
function steps(edge: number, demandAt: (step: number) => number) {
  const looked: number[] = []
  const look = (at: number) => {
    looked.push(at)
    return { found: at, ok: at <= edge, demand: () => demandAt(at) }
  }
  return { look, looked }
}

describe('the highest setting that is ok', () => {
  it('is found whatever the demands say, in no more looks than the steps are', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1, max: STEPS - 1 }),
        fc.array(demand, { minLength: STEPS, maxLength: STEPS }),
        fc.tuple(known, known),
        (edge, demands, twoKnown) => {
          const { look, looked } = steps(edge, (at) => demands[at] as number)
          const found = highestSetting(look, { above: -1, below: STEPS }, twoKnown)
          expect(found).toBe(edge < 0 ? undefined : edge)
          expect(new Set(looked).size).toBe(looked.length)
        },
      ),
    )
  })

  it('keeps between its bounds', () => {
    const { look, looked } = steps(50, () => 1)
    const found = highestSetting(look, { above: 20, below: 30 }, [
      { step: 0, demand: 0.5 },
      { step: STEPS, demand: 2 },
    ])
    expect(found).toBe(29)
    for (const at of looked) expect(at > 20 && at < 30).toBe(true)
    expect(highestSetting(look, { above: 20, below: 21 }, [at(0), at(1)])).toBeUndefined()
  })

  it('takes two looks at most where demand goes by a straight line', () => {
    const whole = fc.integer({ min: 0, max: STEPS - 2 })
    const part = fc.double({ min: 0.05, max: 0.95, noNaN: true })
    fc.assert(
      fc.property(whole, part, (edge, beyond) => {
        const line = (at: number): number => (at + 10) / (edge + beyond + 10)
        const { look, looked } = steps(edge, line)
        const found = highestSetting(look, { above: -1, below: STEPS }, [
          { step: -10, demand: 0 },
          { step: STEPS, demand: line(STEPS) },
        ])
        expect(found).toBe(edge)
        expect(looked.length).toBeLessThanOrEqual(2)
      }),
    )
  })
})

const at = (step: number) => ({ step, demand: 1 })
