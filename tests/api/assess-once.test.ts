import { describe, expect, it } from 'vitest'
import { type Answers, readAnswers } from '../../shared/answers.ts'
import { assessOnce } from '../../src/api/assess-once.ts'
import { GoneError } from '../../src/api/client.ts'
import { type GiveWay, takeTurns } from '../../src/api/take-turns.ts'
import { type AssessOptions, assess } from '../../src/assess.ts'
import type { Rulebook } from '../../src/rulebook/load.ts'
import { rulebook } from '../support/app.ts'

const OPTIONS = { withoutWhatIf: true }
const rpm = (value: number) => readAnswers({ peakRpm: { value, unit: 'rpm' } }).answers

const once = (book: Rulebook, answers: Answers, options: AssessOptions) =>
  assessOnce(book, answers, options, undefined)

describe('assessOnce', () => {
  it('gives what assess gives, byte for byte, and the same object again', async () => {
    const first = await once(rulebook, rpm(6000), OPTIONS)
    expect(JSON.stringify(first)).toBe(JSON.stringify(await assess(rulebook, rpm(6000), OPTIONS)))
    expect(await once(rulebook, rpm(6000), OPTIONS)).toBe(first)
  })

  it('keeps apart answers, units and rulebooks', async () => {
    const first = await once(rulebook, rpm(6000), OPTIONS)
    expect(await once(rulebook, rpm(6100), OPTIONS)).not.toEqual(first)
    expect(await once(rulebook, rpm(6000), { ...OPTIONS, system: 'metric' })).not.toEqual(first)
    expect(await once({ ...rulebook }, rpm(6000), OPTIONS)).not.toBe(first)
  })

  it('lets the one asked for longest ago go after 64 others', async () => {
    const own = { ...rulebook }
    const first = await once(own, rpm(5000), OPTIONS)
    for (let more = 1; more < 64; more++) await once(own, rpm(5000 + 10 * more), OPTIONS)
    expect(await once(own, rpm(5000), OPTIONS)).toBe(first)
    await once(own, rpm(5640), OPTIONS)
    await once(own, rpm(5650), OPTIONS)
    expect(await once(own, rpm(5000), OPTIONS)).toBe(first)
    for (let more = 0; more < 64; more++) await once(own, rpm(4000 + 10 * more), OPTIONS)
    expect(await once(own, rpm(5000), OPTIONS)).not.toBe(first)
  })

  it('does not keep a refusal', async () => {
    const { answers } = readAnswers({ bore: '2 in', stroke: '6 in', compressionRatio: 18 })
    const broken = { ...rulebook, fastenings: {} }
    await expect(once(broken, answers, OPTIONS)).rejects.toThrow()
    await expect(once(broken, answers, OPTIONS)).rejects.toThrow()
  })
})

describe('assessOnce, when those who asked go', () => {
  const soon: GiveWay = () => new Promise((resolve) => setImmediate(resolve))
  const whole = { withoutTurningPoints: true }
  const ask = (value: number, client: AbortController | undefined) =>
    assessOnce(rulebook, rpm(value), whole, client?.signal)

  it('gives it up between its steps, and keeps nothing of it', async () => {
    takeTurns(soon)
    const client = new AbortController()
    const left = ask(7000, client)
    client.abort()
    await expect(left).rejects.toBeInstanceOf(GoneError)
    expect(await ask(7000, undefined)).toHaveProperty('call.route')
  })

  it('goes on while one of them waits', async () => {
    takeTurns(soon)
    const [first, second] = [new AbortController(), new AbortController()]
    const asked = [ask(7100, first), ask(7100, second)]
    first.abort()
    const [one, other] = await Promise.all(asked)
    expect(other).toBe(one)
    expect(one).toHaveProperty('call.route')
  })

  it('begins anew for who asks after all of them left', async () => {
    takeTurns(soon)
    const client = new AbortController()
    const left = ask(7200, client)
    client.abort()
    const after = ask(7200, new AbortController())
    await expect(left).rejects.toBeInstanceOf(GoneError)
    const found = await after
    expect(found).toHaveProperty('call.route')
    expect(await ask(7200, undefined)).toBe(found)
  })
})
