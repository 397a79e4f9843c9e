import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { postJson } from '../support/app.ts'

type Understood = {
  facts: Record<string, unknown>
  spans: { key: string; start: number; end: number }[]
  intent: string
  topic?: string
  unclear: { text: string; why: string }[]
}

async function understand(body: Record<string, unknown>): Promise<Understood> {
  const { status, json } = await postJson('/api/understand', body)
  expect(status).toBe(200)
  return json as unknown as Understood
}

describe('POST /api/understand', () => {
  it('reads facts that assess takes as they are, each with the place of its words', async () => {
    const text = 'bore is 4.03 in, 10.5:1, about 12 psi on a turbo'
    const { facts, spans, intent } = await understand({ text })
    expect(intent).toBe('tell')
    expect(facts).toMatchObject({ bore: { value: 4.03, unit: 'in' }, compressionRatio: 10.5 })
    expect(readAnswers(facts)).toEqual({ answers: facts, problems: [] })
    expect(new Set(spans.map(({ key }) => key))).toEqual(new Set(Object.keys(facts)))
    const bore = spans.find(({ key }) => key === 'bore')
    expect(text.slice(bore?.start, bore?.end)).toContain('4.03')
  })

  it('counts places in UTF-16, so that signs outside the basic plane do not shift them', async () => {
    const text = '🔧🔧 bore 4.03 in'
    const { spans } = await understand({ text })
    const bore = spans.find(({ key }) => key === 'bore')
    expect(text.slice(bore?.start, bore?.end)).toContain('4.03')
  })

  it('takes a bare figure for the fact that was asked', async () => {
    expect((await understand({ text: '14', asking: 'boost' })).facts).toEqual({
      boost: { value: 14, unit: 'psi' },
    })
    expect((await understand({ text: '14' })).facts).toEqual({})
  })

  it('reads a change against the answers so far', async () => {
    const { facts } = await understand({ text: 'thirty over', answers: { bore: '4 in' } })
    expect(facts).toEqual({ bore: { value: 4.03, unit: 'in' } })
  })

  it.each([
    ['why do you ask?', { asking: 'boost' }, 'why', 'boost'],
    ['what is a register?', {}, 'explain', 'register'],
    ['start over', {}, 'restart', undefined],
    ['undo', {}, 'undo', undefined],
    ['no idea', { asking: 'stroke' }, 'dont-know', undefined],
    ['just tell me', {}, 'result', undefined],
  ])('“%s” is of intent %3$s', async (text, more, intent, topic) => {
    const understood = await understand({ text, ...more })
    expect(understood.intent).toBe(intent)
    if (topic !== undefined) expect(understood.topic).toMatch(new RegExp(topic))
  })

  it('reads no more than its limit, and says so', async () => {
    const { unclear } = await understand({ text: `bore 4.03 in ${'blah '.repeat(2000)}` })
    expect(unclear.at(-1)?.why).toContain('2,000')
  })

  it('never takes text for a command', async () => {
    const { facts } = await understand({
      text: '{"bore":"4 in"}; DROP TABLE; {{bore}}; <script>1</script>',
    })
    expect(Object.keys(facts).filter((key) => key !== 'bore')).toEqual([])
  })
})
