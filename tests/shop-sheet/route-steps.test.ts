import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { withRouteWork } from '../../src/shop-sheet/route-steps.ts'
import { workSteps } from '../../src/site/call.ts'
import { rulebook, shopRules } from '../check-in/case.ts'

const BOOSTED = {
  layout: 'v8-cross-plane',
  bore: '4.03in',
  stroke: '3.75in',
  compressionRatio: '9.2',
  fuel: 'e85',
  induction: 'turbocharged',
  boost: '40psi',
  peakRpm: '6600rpm',
  use: 'street-strip',
  capFastening: 'two-bolt',
  capMaterial: 'ductile-iron',
  blockMaterial: 'gray-iron',
}

async function orderFor(shopLineBores: string) {
  const { answers } = readAnswers({ ...BOOSTED, shopLineBores })
  const assessment = await assess(rulebook, answers, { withoutWhatIf: true })
  const four = assessment.routes.find(({ id }) => id === 'four-bolt-conversion')
  if (!four) throw new Error('the route is not there')
  return withRouteWork(workSteps(rulebook, assessment), four, shopRules.sheet.order)
}

/** The steps of a build whose call is the route named. */
async function stepsOf(own: Record<string, string>, route: string) {
  const { answers } = readAnswers({ ...BOOSTED, ...own })
  const assessment = await assess(rulebook, answers, { withoutWhatIf: true })
  const called = assessment.routes.find(({ id }) => id === assessment.call.route)
  if (!called) throw new Error('no route is called')
  expect(called.id).toBe(route)
  return withRouteWork(workSteps(rulebook, assessment), called, shopRules.sheet.order)
}

const placeOf = (order: { id: string }[], id: string) => order.findIndex((step) => step.id === id)

// What a machinist does in which order is common practice, no published source.
describe('the order of work with all that the route has done', () => {
  it('sends the block off from home, before anything is done to it at the shop', async () => {
    const order = await orderFor('no')
    const shipped = placeOf(order, 'ship-block')
    expect(order[shipped]?.at).toBe('home')
    expect(order.slice(0, shipped).filter(({ at }) => at === 'shop')).toEqual([])
    expect(order[shipped + 1]?.at).toBe('shop')
  })

  it('sends it nowhere when a shop near bores', async () => {
    expect(placeOf(await orderFor('yes'), 'ship-block')).toBe(-1)
  })

  it('fits the caps, drills through them, sets the studs, bores, and hones last', async () => {
    const order = await orderFor('no')
    const wanted = ['fit-caps', 'drill-and-tap', 'studs-with-steel-caps', 'line-bore', 'line-hone']
    const ids = order.map(({ id }) => id)
    expect(ids.filter((id) => [...wanted, 'wash-block'].includes(id))).toEqual([
      ...wanted,
      'wash-block',
    ])
  })

  it('sets new studs under steel caps that stay before it measures the bores with them', async () => {
    const ids = await stepsOf(
      { capFastening: 'four-bolt-splayed', capMaterial: 'steel' },
      'keep-caps-add-studs',
    )
    expect(placeOf(ids, 'studs-with-steel-caps')).toBeGreaterThan(-1)
    expect(placeOf(ids, 'recheck-bores-after-studs')).toBeGreaterThan(
      placeOf(ids, 'studs-with-steel-caps'),
    )
  })

  it('sets the studs of a stronger block before it is cut, and measures it last', async () => {
    const ids = (
      await stepsOf(
        { boost: '40psi', websAllowFourBolt: 'no', capMaterial: 'gray-iron' },
        'stronger-block',
      )
    ).map(({ id }) => id)
    const wanted = ['studs-with-steel-caps', 'block-machining', 'bore-check', 'wash-block']
    expect(ids.filter((id) => wanted.includes(id))).toEqual(wanted)
  })
})
