import { describe, expect, it } from 'vitest'
import { printMoney } from '../../shared/print.ts'
import { fromQuery } from '../../shared/share-link.ts'
import { app, postJson } from '../support/app.ts'

const CASE = 'bore=4.03in&stroke=3.48in&capFastening=two-bolt&use=street&induction=turbocharged'
const LOW = `${CASE}&boost=6psi&budget=700USD`
const HIGH = `${CASE}&boost=25psi&budget=700USD`

/** The rows of the what-if table: label, as it stands, with the change. */
async function rowsOf(link: string, text: string): Promise<Map<string, [string, string]>> {
  const page = await (await app.request(`/?${link}&said=${encodeURIComponent(text)}`)).text()
  const rows = page.matchAll(
    /<tr><th scope="row">(.*?)<\/th><td class="number">(.*?)<\/td><td class="number">(.*?)<\/td>/g,
  )
  return new Map([...rows].map(([, label = '', now = '', then = '']) => [label, [now, then]]))
}

interface Assessed {
  call: { route: string }
  routes: { id: string; title: string; holdsIn: number; cost: { likely: number } }[]
}

async function assessed(link: string): Promise<Assessed> {
  const { json } = await postJson('/api/assess', { answers: fromQuery(link).answers })
  return json as unknown as Assessed
}

describe('the table of a what-if that changes the call', () => {
  it('follows each called route through both columns, with its cost and the budget', async () => {
    const [now, then] = [await assessed(LOW), await assessed(HIGH)]
    expect(now.call.route).not.toBe(then.call.route)
    const rows = await rowsOf(LOW, 'what if I ran 25 psi?')
    const routeOf = ({ routes }: Assessed, id: string) => routes.find((one) => one.id === id)
    for (const id of [now.call.route, then.call.route]) {
      const [here, there] = [routeOf(now, id), routeOf(then, id)]
      const shown = [here, there].map((one) => `${one?.holdsIn} of 100`)
      expect(rows.get(`${here?.title} holds in`)).toEqual(shown)
    }
    const costs = [now, then].map((one) => routeOf(one, one.call.route)?.cost.likely ?? NaN)
    expect(rows.get('Likely cost of the call')).toEqual(costs.map((one) => printMoney(one, 'USD')))
    const within = costs.map((one) =>
      one <= 700 ? 'yes' : `no, ${printMoney(one - 700, 'USD')} over`,
    )
    expect(rows.get('Within the budget')).toEqual(within)
    expect(rows.has('That route holds in')).toBe(false)
  })

  it('has one row of the route when the call stays, and none of a budget nobody said', async () => {
    const rows = await rowsOf(LOW.replace('&budget=700USD', ''), 'what if I ran 6.1 psi?')
    expect([...rows.keys()].filter((label) => label.endsWith(' holds in'))).toHaveLength(1)
    expect(rows.has('Within the budget')).toBe(false)
  })
})
