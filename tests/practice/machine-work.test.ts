import { describe, expect, it } from 'vitest'
import { boreMachining, finishedLimits } from '../../src/mechanics/bore-machining.ts'
import { callFor, routeOf } from '../support/rulebook.ts'

const INCH = 0.0254

// Every expectation here: common practice, no published source.
describe('boring and honing new caps', () => {
  // A bore of 2.641 in, caps 0.100 in undersize, as sets for boring are sold.
  const standard = { low: 2.6406 * INCH, high: 2.6415 * INCH }
  const block = { blockBore: 2.641 * INCH, capBore: 2.541 * INCH, honeLimit: 0.003 * INCH }

  it('an undersized cap leaves of the order of 0.100 in to cut', () => {
    const { boring, honeAlone } = boreMachining({ ...block, finished: standard })
    // Off the diameter of the cap's half: 0.100 in, hence 0.050 in at its crown.
    expect(boring.diameter - block.capBore).toBeGreaterThan(0.09 * INCH)
    expect(boring.diameter - block.capBore).toBeLessThan(0.11 * INCH)
    // A hone alone cannot: it takes a few thousandths.
    expect(honeAlone.beyond).toBeGreaterThan(0.04 * INCH)
  })

  it.each([0.005, 0.01])('the hone then finishes to the next oversize, %s in', (oversize) => {
    const finished = finishedLimits(standard, oversize * INCH)
    const done = boreMachining({ ...block, finished, honingStock: 0.002 * INCH })
    expect(done.finished.diameter).toBeGreaterThanOrEqual(finished.low)
    expect(done.finished.diameter).toBeLessThanOrEqual(finished.high)
    expect(done.finished.diameter - done.boring.diameter).toBeCloseTo(0.002 * INCH, 9)
  })

  it('new caps are bored and then honed, in that order', async () => {
    const { call } = await callFor({ compressionRatio: 13.5, fuel: 'race-gasoline' })
    expect(call.mustDo).toEqual(expect.arrayContaining(['line-bore', 'line-hone']))
  })
})

describe('what the work costs, before tax', () => {
  const price = async (id: string) => {
    const item = routeOf(await callFor(), 'steel-caps').cost.items.find((one) => one.id === id)
    if (!item) throw new RangeError(`no price of ${id}`)
    return item
  }

  it('a line bore is about 950 US dollars', async () => {
    expect((await price('line-bore')).likely).toBe(950)
  })

  it('a line hone is 200 to 400', async () => {
    const { low, high } = await price('line-hone')
    expect([low, high]).toEqual([200, 400])
  })

  it('the two together are 1,150 to 1,350 with the bore at its usual price', async () => {
    const [bore, hone] = [await price('line-bore'), await price('line-hone')]
    expect(bore.likely + hone.low).toBe(1150)
    expect(bore.likely + hone.high).toBe(1350)
  })

  it('a set of steel caps is 280 to 290', async () => {
    const { likely } = await price('steel-cap-set')
    expect(likely).toBeGreaterThanOrEqual(280)
    expect(likely).toBeLessThanOrEqual(290)
  })

  it('caps, bore and hone come near 1,500 in all', async () => {
    const parts = ['steel-cap-set', 'line-bore', 'line-hone']
    const prices = await Promise.all(parts.map(price))
    const sum = prices.reduce((total, { likely }) => total + likely, 0)
    // "Near": within a twentieth; studs come on top.
    expect(Math.abs(sum - 1500)).toBeLessThanOrEqual(75)
  })

  it('the caps are cheap beside the machine work: several times less', async () => {
    const { items } = routeOf(await callFor(), 'steel-caps').cost
    const sumOf = (kind: string) =>
      items.filter((item) => item.kind === kind).reduce((sum, { likely }) => sum + likely, 0)
    const caps = await price('steel-cap-set')
    expect(sumOf('work')).toBeGreaterThan(3 * caps.likely)
  })

  it('tax comes on top where a rate is given', async () => {
    const [net, gross] = [await callFor(), await callFor({ taxRate: '8 %' })]
    const likely = (report: Awaited<ReturnType<typeof callFor>>) =>
      routeOf(report, 'steel-caps').cost.likely
    expect(likely(gross)).toBeCloseTo(1.08 * likely(net), 6)
    expect(net.cost.beforeTax).toBe(true)
    expect(gross.cost.beforeTax).toBe(false)
  })

  it('many shops hone and few bore: a route that needs boring says to ask', async () => {
    const { call } = await callFor({ compressionRatio: 13.5, shopLineBores: undefined })
    expect(call.mustDo).toContain('shop-may-lack-line-bore')
  })
})
