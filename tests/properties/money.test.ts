import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Answers, withAnswer } from '../../shared/answers.ts'
import type { FactKey } from '../../shared/fact-keys.ts'
import { ROUTE_IDS } from '../../shared/route-ids.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { newMemory } from '../../src/facts/memory.ts'
import { trialsOf } from '../../src/facts/trials.ts'
import { rulebook } from '../support/rulebook.ts'
import { build, callsOf, runs, strength } from './support.ts'

const PRICES: readonly FactKey[] = [
  'lineBorePrice',
  'lineHonePrice',
  'capsPrice',
  'studsPrice',
  'shippingPrice',
]
const usd = (value: number) => ({ value: Math.round(value), currency: 'USD' })

function costOf(answers: Answers, route: (typeof ROUTE_IDS)[number]): number {
  return trialsOf(buildFromAnswers(rulebook, answers), rulebook, newMemory()).likelyCost(route)
}

describe('money', () => {
  it('a dearer route is never called for a smaller stake', async () => {
    const stake = fc.integer({ min: 0, max: 60_000 })
    await fc.assert(
      fc.asyncProperty(build, stake, stake, async (answers, one, other) => {
        const small = withAnswer(answers, 'invested', usd(Math.min(one, other)))
        const large = withAnswer(answers, 'invested', usd(Math.max(one, other)))
        const calls = await callsOf(small, large)
        fc.pre(calls !== undefined)
        const [less, more] = calls.map(({ wouldBe }) => wouldBe)
        if (less === undefined || more === undefined) throw new RangeError('two calls were asked')
        if (less === more) return
        // Lowering the target costs nothing, but it is the last resort and no bargain.
        expect(strength(more)).toBeGreaterThan(strength(less))
        if (more !== 'lower-the-target') {
          expect(costOf(large, more)).toBeGreaterThanOrEqual(costOf(small, less))
        }
      }),
      runs(200),
    )
  })

  it('prices alone never change margins, nor in how many cases a route holds', async () => {
    const price = fc.integer({ min: 0, max: 9000 })
    const prices = fc.tuple(price, price, price, price, price)
    await fc.assert(
      fc.asyncProperty(build, prices, price, async (answers, given, budget) => {
        const dear = PRICES.reduce(
          (all, key, index) => withAnswer(all, key, usd(given[index] ?? 0)),
          withAnswer(answers, 'budget', usd(budget)),
        )
        fc.pre((await callsOf(answers, dear)) !== undefined)
        const margins = (of: Answers) => {
          const trials = trialsOf(buildFromAnswers(rulebook, of), rulebook, newMemory())
          return ROUTE_IDS.map((id) => {
            const { margins, holdsIn } = trials.trial(id).result
            return { id, margins: margins(), holdsIn }
          })
        }
        expect(margins(dear)).toEqual(margins(answers))
      }),
      runs(60),
    )
  })

  it('a large budget is no reason to build more than it takes', async () => {
    await fc.assert(
      fc.asyncProperty(build, async (answers) => {
        const open = withAnswer(answers, 'budget', undefined)
        const calls = await callsOf(open, withAnswer(open, 'budget', usd(500_000)))
        fc.pre(calls !== undefined)
        expect(calls[1]?.wouldBe).toBe(calls[0]?.wouldBe)
      }),
      runs(150),
    )
  })

  it('a smaller budget never buys a dearer route', async () => {
    const budget = fc.integer({ min: 0, max: 6000 })
    await fc.assert(
      fc.asyncProperty(build, budget, budget, async (answers, one, other) => {
        const small = withAnswer(answers, 'budget', usd(Math.min(one, other)))
        const large = withAnswer(answers, 'budget', usd(Math.max(one, other)))
        const calls = await callsOf(small, large)
        fc.pre(calls !== undefined)
        const [less, more] = calls.map(({ wouldBe }) => wouldBe)
        if (less === undefined || more === undefined) throw new RangeError('two calls were asked')
        if (less === 'lower-the-target') return
        expect(costOf(small, less)).toBeLessThanOrEqual(costOf(large, more))
      }),
      runs(150),
    )
  })
})
