import { expect, it } from 'vitest'
import { type BusyError, closeLine, inTurn, takeTurns } from '../../src/api/take-turns.ts'
import { app } from '../support/app.ts'

const soon = () => new Promise<void>((resolve) => setImmediate(resolve))
const STOPPING = { name: 'BusyError', why: 'stopping' } satisfies Partial<BusyError>

it('refuses who is served at its next step, all who wait, and all who come', async () => {
  takeTurns(soon)
  const log: string[] = []
  const served = inTurn(async (giveWay) => {
    log.push('begun')
    closeLine()
    await giveWay?.()
    log.push('went on')
  })
  const waiting = Array.from({ length: 3 }, () => inTurn(async () => log.push('waited')))
  const ended = await Promise.allSettled([served, ...waiting, inTurn(soon)])
  for (const one of ended) {
    expect(one).toMatchObject({ status: 'rejected', reason: STOPPING })
  }
  expect(log).toEqual(['begun'])
})

it('is said as 503 with the time to ask again, by page and API', async () => {
  const page = await app.request('/call?bore=4.02in')
  expect([page.status, page.headers.get('retry-after')]).toEqual([503, '10'])
  const text = await page.text()
  expect(text).toContain('being stopped')
  expect(text).toContain('bore=4.02in')
  const answer = await app.request('/api/assess', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{"answers":{"bore":"4.02 in"}}',
  })
  expect([answer.status, answer.headers.get('retry-after')]).toEqual([503, '10'])
  expect(await answer.json()).toMatchObject({ type: '/problems/stopping', status: 503 })
  expect((await app.request('/healthz')).status).toBe(200)
})
