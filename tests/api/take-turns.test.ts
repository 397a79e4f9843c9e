import { expect, it } from 'vitest'
import { admission, type GiveWay, inTurn, takeTurns } from '../../src/api/take-turns.ts'
import { assess } from '../../src/assess.ts'
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
