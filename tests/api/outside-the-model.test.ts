import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { outsideTheModel } from '../../src/api/outside-the-model.ts'
import { DomainError } from '../../src/mechanics/domain-error.ts'
import { askAnswer } from '../../src/tools/ask-answer.ts'
import { app, postJson, reader, rulebook } from '../support/app.ts'

/** Far more nitrous at a low speed than small cylinders can take: no pressure fits it. */
const ODD = {
  bore: '2 in',
  induction: 'nitrous',
  nitrousPower: '680 kW',
  torquePeakRpm: '1000 rpm',
  use: 'track',
}
const QUERY = new URLSearchParams(
  Object.entries(ODD).map(([key, text]) => [key, text.replace(' ', '')]),
).toString()
/** The equation's own name for it, and its own unit. */
const INTERNAL = /startPressure|\bPa\b|3000000/

describe('answers that make no engine together', () => {
  it('are refused by fields that were filled, as they were filled', async () => {
    for (const path of ['/api/assess', '/api/turn', '/api/forum']) {
      const body = path === '/api/turn' ? { answers: ODD, text: 'result' } : { answers: ODD }
      const { status, json } = await postJson(path, body)
      expect([path, status, json.type]).toEqual([path, 422, '/problems/outside-the-model'])
      expect(JSON.stringify(json)).not.toMatch(INTERNAL)
      const errors = json.errors as { field: string; found: string }[]
      expect(errors.map(({ field }) => field)).toContain('nitrousPower')
      for (const { field } of errors) expect(Object.keys(ODD)).toContain(field)
      expect(errors.find(({ field }) => field === 'nitrousPower')?.found).toBe('680\u00a0kW')
    }
  })

  it('are refused on pages by the labels of their fields', async () => {
    for (const path of ['/call', '/', '/sheet', '/check-in']) {
      const response = await app.request(`${path}?${QUERY}`)
      const text = await response.text()
      expect([path, response.status]).toEqual([path, 422])
      const words = /<main[\s\S]*<\/main>/.exec(text)?.[0] ?? ''
      expect(words).toContain('make no engine')
      expect(words).toMatch(/<li>Nitrous system[^<]*680\u00a0kW/)
      expect(words).not.toMatch(INTERNAL)
    }
  })

  it('are refused in a terminal by the same labels', async () => {
    const text = '2 in bore, a 910 hp shot of nitrous, peak torque at 1000 rpm'
    const { code, notes } = await askAnswer(
      { rulebook, reader },
      { text, json: false, units: 'us' },
    )
    expect(code).toBe(3)
    expect(notes.join('\n')).toContain('no engine that the equations cover')
    expect(notes.join('\n')).not.toMatch(INTERNAL)
  })
})

describe('outsideTheModel', () => {
  const { answers } = readAnswers({
    bore: '5.8 in',
    stroke: '90 mm',
    budget: '0 USD',
    boost: '8 psi',
  })
  const fieldsFor = (argument: string) =>
    outsideTheModel(new DomainError(argument, 1, 'less'), answers).map(({ field }) => field)

  it('names the fact alone that the equation names, when it was said', () => {
    expect(fieldsFor('stroke')).toEqual(['stroke'])
    expect(fieldsFor('engine.bore')).toEqual(['bore'])
  })

  it('else what was said and stands farthest towards an end, money left aside', () => {
    expect(fieldsFor('rodLength')).toEqual(['bore', 'boost', 'stroke'])
    expect(outsideTheModel(new DomainError('x', 1, 'less'), {})).toEqual([])
  })

  it('counts for the gas only what the gas rests on', () => {
    const said = readAnswers({ bore: '4 in', capHeight: '6 in' }).answers
    const fields = (argument: string) =>
      outsideTheModel(new DomainError(argument, 1, 'less'), said).map(({ field }) => field)
    expect(fields('startPressure')).toEqual(['bore'])
    expect(fields('web')).toEqual(['capHeight', 'bore'])
  })
})
