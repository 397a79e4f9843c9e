import { describe, expect, it } from 'vitest'
import { assessment } from '../../shared/assessment.ts'
import { askAnswer } from '../../src/tools/ask-answer.ts'
import { readAskArguments } from '../../src/tools/ask-arguments.ts'
import { reader } from '../support/reader.ts'
import { rulebook } from '../support/rulebook.ts'

const ask = (text: string, json = false, units: 'us' | 'metric' = 'us') =>
  askAnswer({ rulebook, reader }, { text, json, units })

describe('the arguments of ask', () => {
  it('are words and two options, in any order', () => {
    expect(readAskArguments(['--json', '4.03', 'bore', '--metric'])).toEqual({
      ok: { text: '4.03 bore', json: true, units: 'metric' },
    })
    expect(readAskArguments(['--', '--json', 'is a word'])).toEqual({
      ok: { text: '--json is a word', json: false, units: 'us' },
    })
    expect(readAskArguments(['-5 psi is a word too'])).toHaveProperty('ok')
  })

  it.each([[[]], [['  ']], [['--wat', 'bore']], [['--json']]])('%j are refused', (args) => {
    expect(readAskArguments(args)).toHaveProperty('fault')
  })
})

describe('ask', () => {
  const BUILD = '4.03 x 3.48 V8, two bolt iron block, 9.5:1 on pump gas, 5800 rpm street'

  it('prints the call with its numbers and what was understood', async () => {
    const { out, code } = await ask(BUILD)
    expect(code).toBe(0)
    expect(out).toMatch(/^- Holds in: \d+ of 100/m)
    expect(out).toContain('bore 4.03 in')
    expect(out).toMatch(/^\/call\?v=.*bore=4\.03in/m)
  })

  it('prints what the API answers, for scripts', async () => {
    const { out, code } = await ask(BUILD, true)
    expect(code).toBe(0)
    expect(() => assessment.parse(JSON.parse(out))).not.toThrow()
  })

  it('ends with 3 when nothing was understood, and says so', async () => {
    const { out, code, notes } = await ask('lovely weather today')
    expect([out, code]).toEqual(['', 3])
    expect(notes.at(-1)).toBe('nothing to make a call from')
  })

  it('ends with 3 when answers contradict each other, and names them', async () => {
    const { out, code } = await ask('4.03 in bore, 3.48 in stroke, V8, 600 cubic inches')
    expect(code).toBe(3)
    expect(out).toMatch(/\(WITHHELD\)/)
  })
})
