import { describe, expect, it } from 'vitest'
import { readAnswers } from '../../shared/answers.ts'
import { likeliest } from '../../src/api/outside-the-model.ts'
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
      expect(words).toMatch(/<li><p>Nitrous system[^<]*680\u00a0kW/)
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

describe('the case and the answer at fault', () => {
  const { nitrousPower, ...fine } = ODD
  const fieldsOf = ({ json }: { json: Record<string, unknown> }) =>
    (json.errors as { field: string }[]).map(({ field }) => field)
  /** "…; 540 kW would fit", tried. */
  async function wouldFit(json: Record<string, unknown>): Promise<number> {
    for (const { field, fits } of json.errors as { field: string; fits: string }[]) {
      const [, figure] = /; (\S+\s\S+) would fit$/.exec(fits) ?? []
      const key = field.split('.').at(-1) as string
      const answers = { ...ODD, [key]: figure?.replace(',', '').replace('\u00a0', ' ') }
      const { status } = await postJson('/api/assess', { answers })
      if (status !== 200) return status
    }
    return 200
  }

  it('are named with a figure that does fit', async () => {
    const { json } = await postJson('/api/assess', { answers: ODD })
    expect(await wouldFit(json)).toBe(200)
    // Each of them, left open alone, leaves an engine.
    for (const field of fieldsOf({ json })) {
      const { status } = await postJson('/api/assess', { answers: { ...ODD, [field]: undefined } })
      expect([field, status]).toEqual([field, 200])
    }
  })

  it('are those of the right side of a comparison', async () => {
    for (const [a, b, sides] of [
      [fine, ODD, ['b']],
      [ODD, fine, ['a']],
      [ODD, ODD, ['a', 'b']],
    ] as const) {
      const sent = { a: { answers: a }, b: { answers: b } }
      const { status, json } = await postJson('/api/compare', sent)
      expect([status, json.type]).toEqual([422, '/problems/outside-the-model'])
      const fields = fieldsOf({ json })
      expect(new Set(fields.map((field) => field.split('.')[0]))).toEqual(new Set(sides))
      for (const side of sides) expect(fields).toContain(`${side}.nitrousPower`)
      expect(JSON.stringify(json)).not.toMatch(INTERNAL)
    }
  })

  it('are what a what-if supposed, not what stands', async () => {
    const text = 'what if I ran a 910 hp shot?'
    const { status, json } = await postJson('/api/turn', { answers: fine, text })
    expect(status).toBe(422)
    expect(fieldsOf({ json })).toEqual(['supposed.nitrousPower'])
    expect(Object.keys((json.kept as { answers: object }).answers).sort()).toEqual(
      Object.keys(fine).sort(),
    )
    expect(await wouldFit(json)).toBe(200)
  })

  it('are what the last turn changed', async () => {
    const turn = { answers: fine, asking: 'nitrousPower', answer: nitrousPower }
    expect(fieldsOf(await postJson('/api/turn', turn))).toEqual(['nitrousPower'])
    const back = { answers: { ...ODD, bore: '4 in' }, asking: 'bore', answer: '2 in' }
    expect(fieldsOf(await postJson('/api/turn', back))).toEqual(['bore'])
  })
})

describe('likeliest', () => {
  const { answers } = readAnswers({
    bore: '5.8 in',
    stroke: '90 mm',
    budget: '0 USD',
    boost: '8 psi',
    use: 'street',
    fuel: 'unknown',
  })
  const fieldsFor = (argument: string) => likeliest(new DomainError(argument, 1, 'less'), answers)

  it('names the fact first that the equation names, when it was said', () => {
    expect(fieldsFor('stroke')[0]).toBe('stroke')
    expect(fieldsFor('engine.bore')[0]).toBe('bore')
  })

  it('then what was said and stands farthest towards an end, then choices, money left aside', () => {
    expect(fieldsFor('rodLength')).toEqual(['bore', 'boost', 'stroke', 'use'])
    expect(likeliest(new DomainError('x', 1, 'less'), {})).toEqual([])
  })

  it('leaves no thread out that was said', () => {
    const said = readAnswers({ capHistory: 'matched', fastenerThread: '1/2-13' }).answers
    expect(likeliest(new DomainError('nominalDiameter', 1, 'less'), said)).toContain(
      'fastenerThread',
    )
  })

  it('counts for the gas only what the gas rests on', () => {
    const said = readAnswers({ bore: '4 in', capHeight: '6 in', use: 'street' }).answers
    const fields = (argument: string) => likeliest(new DomainError(argument, 1, 'less'), said)
    expect(fields('startPressure')).toEqual(['bore'])
    expect(fields('web')).toEqual(['capHeight', 'bore', 'use'])
  })
})

describe('the least and the greatest thread that is taken', () => {
  it.each(['M5x0.5', 'M5x1', 'M20x0.5', 'M20x4'])('%s is reckoned with', async (fastenerThread) => {
    for (const capFastening of ['two-bolt', 'four-bolt', 'four-bolt-splayed', 'cross-bolted']) {
      const { status } = await postJson('/api/assess', {
        answers: { fastenerThread, capFastening },
      })
      expect([capFastening, status]).toEqual([capFastening, 200])
    }
  })
})
