import { describe, expect, it } from 'vitest'
import { scoreTalk, talkCases } from '../../src/tools/eval-talk.ts'
import { reader } from '../support/reader.ts'

const cases = [...talkCases().values()].flat()

describe('the evaluation set', () => {
  it('is large, varied, and a third of it traps', () => {
    expect(cases.length).toBeGreaterThanOrEqual(250)
    expect(new Set(cases.map(({ text, asking }) => `${asking}:${text}`)).size).toBe(cases.length)
    expect(cases.filter(({ trap }) => trap).length * 3).toBeGreaterThanOrEqual(cases.length)
  })

  it('is understood: 97 of 100 messages exactly, 199 of 200 facts right', () => {
    const score = scoreTalk(cases, reader)
    expect(score.exact / score.messages).toBeGreaterThanOrEqual(0.97)
    expect(score.rightFacts / score.foundFacts).toBeGreaterThanOrEqual(0.995)
    expect(score.rightFacts / score.expectedFacts).toBeGreaterThanOrEqual(0.97)
    expect(score.rightIntents / score.messages).toBeGreaterThanOrEqual(0.97)
  })
})
