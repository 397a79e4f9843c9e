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

  it('drills and fits the caps before the mains are bored, and hones last', async () => {
    const order = await orderFor('no')
    const places = ['drill-and-tap', 'fit-caps', 'line-bore', 'line-hone', 'wash-block'].map((id) =>
      placeOf(order, id),
    )
    expect(places).not.toContain(-1)
    expect(places).toEqual([...places].sort((a, b) => a - b))
  })
})
