import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FACT_KEYS } from '../../shared/fact-keys.ts'
import { answerText, fromQuery, toQuery } from '../../shared/share-link.ts'
import { anyAnswer, anyAnswers } from '../support/answers.ts'

describe('links', () => {
  it.each(FACT_KEYS)('%s goes into a link and comes back exactly, in every unit', (key) => {
    fc.assert(
      fc.property(anyAnswer(key), (answer) => {
        const { answers, problems, other } = fromQuery(toQuery({ [key]: answer }))
        expect(problems).toEqual([])
        expect(other.size).toBe(0)
        expect(answers).toEqual({ [key]: answer })
      }),
      { numRuns: 60 },
    )
  })

  it('whole cases come back exactly, parked answers and version too', () => {
    fc.assert(
      fc.property(anyAnswers, anyAnswers, (answers, parked) => {
        const link = fromQuery(toQuery(answers, '1.0.0', parked))
        expect(link.problems).toEqual([])
        expect(link.version).toBe('1.0.0')
        expect(link.answers).toEqual(answers)
        expect(link.parked).toEqual(parked)
      }),
      { numRuns: 100 },
    )
  })

  it('are canonical: order of parts does not matter, and writing again changes nothing', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const query = toQuery(answers, '1.0.0')
        const backwards = query.split('&').reverse().join('&')
        expect(toQuery(fromQuery(backwards).answers, '1.0.0')).toBe(query)
      }),
      { numRuns: 100 },
    )
  })

  it('are readable: no more is encoded than must be', () => {
    expect(
      toQuery(
        {
          bore: { value: 4.03, unit: 'in' },
          boost: { value: 12, low: 10, high: 14, unit: 'psi' },
          fastenerThread: '7/16-14',
          fastenerTorque: { value: 85, unit: 'lb ft' },
          taxRate: { value: 8.25, unit: '%' },
        },
        '1.0.0',
      ),
    ).toBe(
      'v=1.0.0&boost=12~10~14psi&bore=4.03in&fastenerThread=7/16-14&fastenerTorque=85lbft&taxRate=8.25pct',
    )
    expect(answerText('unknown')).toBe('unknown')
  })

  it('read any text without a throw, and keep only what can be written again', () => {
    const piece = fc.tuple(
      fc.oneof(fc.constantFrom(...FACT_KEYS), fc.string({ unit: 'binary', maxLength: 12 })),
      fc.string({ unit: 'binary', maxLength: 20 }),
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 10 }), (pieces) => {
        const query = pieces.map(([name, text]) => `${name}=${text}`).join('&')
        const { answers } = fromQuery(query)
        expect(fromQuery(toQuery(answers)).answers).toEqual(answers)
      }),
      { numRuns: 500 },
    )
  })

  it('that say a fact twice keep the first, and name the second', () => {
    const { answers, problems } = fromQuery('bore=4in&use=street&bore=5in')
    expect(answers).toEqual({ bore: { value: 4, unit: 'in' }, use: 'street' })
    expect(problems).toMatchObject([{ field: 'bore', code: 'duplicate', found: '5in' }])
  })

  it('longer than any case are cut, and say so', () => {
    const long = Array.from({ length: 300 }, (_, at) => `x${at}=1`).join('&')
    const { problems } = fromQuery(`${long}&bore=4in`)
    expect(problems).toEqual([expect.objectContaining({ field: 'link', code: 'too-long' })])
  })
})
