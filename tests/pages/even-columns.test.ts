import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { assess } from '../../src/assess.ts'
import { assumptions, working } from '../../src/pages/call-open.ts'
import { rulebook } from '../check-in/case.ts'

const view = { link: '', units: 'us' as const }

/** Decimals of every length in some markup. */
function lengthDecimals(markup: string): Set<number> {
  const found = [...markup.matchAll(/>(\d+)(?:\.(\d+))?\u00a0in</g)]
  expect(found.length).toBeGreaterThan(3)
  return new Set(found.map(([, , part = '']) => part.length))
}

describe('columns of lengths on the call page', () => {
  it('have equal decimals, in the build and in what was assumed', async () => {
    const { answers } = readAnswers({ layout: 'v8-cross-plane', bore: '4in', stroke: '3.25in' })
    const assessment = await assess(rulebook, answers, { withoutWhatIf: true })
    const build = /The build that was computed(.*?)<\/details>/s.exec(
      `${working(assessment, view)}`,
    )
    expect(lengthDecimals(build?.[1] ?? '').size).toBe(1)
    const none = assessment.assumptions.map((one) => ({ ...one, calls: [] }))
    const listed = `${assumptions({ ...assessment, assumptions: none }, view)}`
    expect(lengthDecimals(listed.replaceAll('</span>', '<')).size).toBe(1)
  })
})
