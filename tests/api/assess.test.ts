import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { assessment } from '../../shared/assessment.ts'
import { fromQuery } from '../../shared/share-link.ts'
import { assess } from '../../src/assess.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { anyAnswers } from '../support/answers.ts'
import { app, postJson, rulebook } from '../support/app.ts'

const presets = rulebook.presets.map(({ answers }) => readAnswers(answers).answers)

async function bytesOf(body: unknown): Promise<string> {
  const response = await app.request('/api/assess', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
  expect(response.status).toBe(200)
  return response.text()
}

describe('POST /api/assess', () => {
  it('gives the same bytes in any order of answers, in any way of writing them, alone or beside others', async () => {
    const plain = {
      bore: '4 in',
      stroke: '3.48 in',
      boost: '9 psi',
      induction: 'supercharged',
      use: 'street',
    }
    const written = {
      use: 'street',
      induction: 'supercharged',
      boost: { unit: 'psig', value: 9 },
      stroke: '3.480 inches',
      bore: { value: 4, unit: 'in' },
    }
    const other = bytesOf({ answers: { layout: 'inline-4', compressionRatio: 12, use: 'track' } })
    const [one, two] = await Promise.all([
      bytesOf({ answers: plain }),
      bytesOf({ answers: written }),
    ])
    expect(two).toBe(one)
    expect(await other).not.toBe(one)
    const { link } = assessment.parse(JSON.parse(one))
    expect(await bytesOf({ answers: fromQuery(link).answers })).toBe(one)
  })

  it('withholds the call for answers that fit one by one and are no engine together', async () => {
    // Each is at an end of its own range; a rod this short cannot reach round a crank this long.
    const answers = { bore: '2 in', stroke: '6 in', rodLength: '3 in' }
    const { status, json } = await postJson('/api/assess', { answers })
    expect(status).toBe(200)
    expect(json).toMatchObject({
      call: { route: null, confidence: 'withheld' },
      contradictions: expect.arrayContaining([
        expect.objectContaining({ rule: 'rod-over-stroke-unlikely', effect: 'withhold' }),
      ]),
    })
    const page = await app.request('/?bore=2in&stroke=6in&rodLength=3in')
    expect(page.status).toBe(200)
    expect(await page.text()).toContain('rodLength=3in')
  })

  it('never fails on good answers, however odd together', async () => {
    await fc.assert(
      fc.asyncProperty(anyAnswers, async (answers) => {
        const run = assess(rulebook, answers, { withoutWhatIf: true })
        const found = await run.then(
          () => undefined,
          (error: unknown) => error,
        )
        // Extreme answers may be no engine at all; that is said, never a fault.
        if (found !== undefined) expect(found).toBeInstanceOf(DomainError)
        expect(run).toBeInstanceOf(Promise)
      }),
      { numRuns: 40 },
    )
  })
})

describe('fifty at once', () => {
  it('equal fifty in a row', async () => {
    const options = { withoutWhatIf: true }
    const run = async (at: number) =>
      JSON.stringify(await assess(rulebook, presets[at % presets.length] ?? {}, options))
    const inARow: string[] = []
    for (let at = 0; at < presets.length; at++) inARow.push(await run(at))
    const atOnce = await Promise.all(Array.from({ length: 50 }, (_, at) => run(at)))
    expect(new Set(inARow).size).toBe(presets.length)
    for (const [at, bytes] of atOnce.entries()) expect(bytes).toBe(inARow[at % presets.length])
  })
})
