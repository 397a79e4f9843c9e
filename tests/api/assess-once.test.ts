import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { assessOnce } from '../../src/api/assess-once.ts'
import { assess } from '../../src/assess.ts'
import { rulebook } from '../support/app.ts'

const OPTIONS = { withoutWhatIf: true }
const rpm = (value: number) => readAnswers({ peakRpm: { value, unit: 'rpm' } }).answers

describe('assessOnce', () => {
  it('gives what assess gives, byte for byte, and the same object again', async () => {
    const first = await assessOnce(rulebook, rpm(6000), OPTIONS)
    expect(JSON.stringify(first)).toBe(JSON.stringify(await assess(rulebook, rpm(6000), OPTIONS)))
    expect(await assessOnce(rulebook, rpm(6000), OPTIONS)).toBe(first)
  })

  it('keeps apart answers, units and rulebooks', async () => {
    const first = await assessOnce(rulebook, rpm(6000), OPTIONS)
    expect(await assessOnce(rulebook, rpm(6100), OPTIONS)).not.toEqual(first)
    expect(await assessOnce(rulebook, rpm(6000), { ...OPTIONS, system: 'metric' })).not.toEqual(
      first,
    )
    expect(await assessOnce({ ...rulebook }, rpm(6000), OPTIONS)).not.toBe(first)
  })

  it('lets the one asked for longest ago go after 64 others', async () => {
    const own = { ...rulebook }
    const first = await assessOnce(own, rpm(5000), OPTIONS)
    for (let more = 1; more < 64; more++) await assessOnce(own, rpm(5000 + 10 * more), OPTIONS)
    expect(await assessOnce(own, rpm(5000), OPTIONS)).toBe(first)
    await assessOnce(own, rpm(5640), OPTIONS)
    await assessOnce(own, rpm(5650), OPTIONS)
    expect(await assessOnce(own, rpm(5000), OPTIONS)).toBe(first)
    for (let more = 0; more < 64; more++) await assessOnce(own, rpm(4000 + 10 * more), OPTIONS)
    expect(await assessOnce(own, rpm(5000), OPTIONS)).not.toBe(first)
  })

  it('does not keep a refusal', async () => {
    const { answers } = readAnswers({ bore: '2 in', stroke: '6 in', compressionRatio: 18 })
    const broken = { ...rulebook, fastenings: {} }
    await expect(assessOnce(broken, answers, OPTIONS)).rejects.toThrow()
    await expect(assessOnce(broken, answers, OPTIONS)).rejects.toThrow()
  })
})
