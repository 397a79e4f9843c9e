import { describe, expect, it } from 'vitest'
import { GoneError } from '../../src/api/client.ts'
import {
  admission,
  BusyError,
  type GiveWay,
  inTurn,
  MOST_WAITING,
  takeTurns,
} from '../../src/api/take-turns.ts'
import { assess } from '../../src/assess.ts'
import { app } from '../support/app.ts'
import { rulebook } from '../support/rulebook.ts'

const soon: GiveWay = () => new Promise((resolve) => setImmediate(resolve))

it('does work at once where nobody takes turns', async () => {
  const log: string[] = []
  const first = inTurn(async (giveWay) => {
    log.push(`first ${giveWay}`)
    await soon()
    log.push('first done')
  })
  const second = inTurn(async () => log.push('second'))
  await Promise.all([first, second])
  expect(log).toEqual(['first undefined', 'second', 'first done'])
})

it('does one work after another in the order asked, also after one that failed', async () => {
  takeTurns(soon)
  const log: string[] = []
  const work = (name: string) => async (giveWay: GiveWay | undefined) => {
    log.push(`${name} begins`)
    await giveWay?.()
    log.push(`${name} ends`)
    if (name === 'b') throw new Error('b failed')
  }
  const done = await Promise.allSettled(['a', 'b', 'c'].map((name) => inTurn(work(name))))
  expect(log).toEqual(['a begins', 'a ends', 'b begins', 'b ends', 'c begins', 'c ends'])
  expect(done.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled'])
})

it('lets requests begin one for each time round, in the order they came', async () => {
  let rounds = 0
  takeTurns(async () => {
    await soon()
    rounds++
  })
  const begun = await Promise.all(
    ['a', 'b', 'c'].map(async (name) => {
      await admission()
      return `${name}${rounds}`
    }),
  )
  expect(begun).toEqual(['a1', 'b2', 'c3'])
})

it('gives way many times in one assessment, which comes out the same', async () => {
  let passed = 0
  const answers = { layout: 'inline-4', induction: 'turbocharged' } as const
  const polite = await assess(rulebook, answers, {
    withoutTurningPoints: true,
    giveWay: async () => {
      passed++
      await soon()
    },
  })
  const alone = await assess(rulebook, answers, { withoutTurningPoints: true })
  expect(passed).toBeGreaterThan(10)
  expect(JSON.stringify(polite)).toBe(JSON.stringify(alone))
})

it('sends away who comes when too many wait, and serves again when they are done', async () => {
  takeTurns(soon)
  let open: (() => void) | undefined
  const held = new Promise<void>((resolve) => {
    open = resolve
  })
  const all = Array.from({ length: MOST_WAITING }, () => inTurn(() => held))
  await expect(inTurn(soon)).rejects.toBeInstanceOf(BusyError)
  const page = await app.request('/call?bore=4.02in')
  expect(page.status).toBe(503)
  expect(page.headers.get('retry-after')).toBe('10')
  expect(await page.text()).toContain('bore=4.02in')
  const answer = await app.request('/api/assess', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{"answers":{"bore":"4.02 in"}}',
  })
  expect(answer.status).toBe(503)
  expect(await answer.json()).toMatchObject({ type: '/problems/busy', status: 503 })
  for (const path of ['/check-in', '/check-in.csv', '/worksheets/main-loads']) {
    expect([path, (await app.request(`${path}?bore=4.02in`)).status]).toEqual([path, 503])
    // What needs no assessment waits for nobody.
    expect([path, (await app.request(path)).status]).toEqual([path, 200])
  }
  open?.()
  await Promise.all(all)
  expect((await app.request('/call?bore=4.02in')).status).toBe(200)
})

describe('work that nobody waits for any more', () => {
  it('is not begun, and those behind it come at once', async () => {
    takeTurns(soon)
    const log: string[] = []
    let isThere = true
    const first = inTurn(async () => {
      await soon()
      isThere = false
    })
    const left = inTurn(
      async () => log.push('left'),
      () => isThere,
    )
    const last = inTurn(async () => log.push('last'))
    await expect(left).rejects.toBeInstanceOf(GoneError)
    await Promise.all([first, last])
    expect(log).toEqual(['last'])
  })

  it('ends at its next step', async () => {
    takeTurns(soon)
    const log: string[] = []
    let isThere = true
    const left = inTurn(
      async (giveWay) => {
        await giveWay?.()
        log.push('first step')
        isThere = false
        await giveWay?.()
        log.push('second step')
      },
      () => isThere,
    )
    await expect(left).rejects.toBeInstanceOf(GoneError)
    expect(log).toEqual(['first step'])
  })

  it('leaves its place when the line is full', async () => {
    takeTurns(soon)
    let open: (() => void) | undefined
    const held = new Promise<void>((resolve) => {
      open = resolve
    })
    let isThere = true
    const first = inTurn(() => held)
    const left = Array.from({ length: MOST_WAITING - 1 }, () => inTurn(soon, () => isThere))
    const ended = Promise.allSettled(left)
    await expect(inTurn(soon)).rejects.toBeInstanceOf(BusyError)
    isThere = false
    const next = inTurn(async () => 'taken')
    expect((await ended).every(({ status }) => status === 'rejected')).toBe(true)
    open?.()
    await first
    expect(await next).toBe('taken')
  })
})
