import { describe, expect, it } from 'vitest'
import { presetOfLink, queryOfLink } from '../../shared/case-link.ts'
import { comparison } from '../../shared/comparison.ts'
import { assess } from '../../src/assess.ts'
import { compareCases } from '../../src/what-if/compare.ts'
import { rulebook, STREET_V8, said } from '../support/rulebook.ts'

async function caseOf(raw: Readonly<Record<string, unknown>>) {
  const answers = said(raw)
  return { answers, assessment: await assess(rulebook, answers, { withoutWhatIf: true }) }
}

const street = await caseOf(STREET_V8)
const boosted = await caseOf({
  ...STREET_V8,
  induction: 'turbocharged',
  boost: '18 psi',
  fuel: 'e85',
})

describe('two cases side by side', () => {
  const found = compareCases(street, boosted)

  it('has the shape that the API promises', () => {
    expect(comparison.parse(found)).toEqual(found)
  })

  it('takes every number from the assessments, none of its own', () => {
    const row = (id: string) => found.numbers.find((one) => one.id === id)
    expect(row('worstPull')).toMatchObject({
      a: street.assessment.loads.worstPull.pull,
      b: boosted.assessment.loads.worstPull.pull,
      unitA: 'kN',
    })
    expect(row('cost')?.b).toBe(boosted.assessment.cost.likely)
    expect(row('peakPressure')?.b).toBeGreaterThan(row('peakPressure')?.a ?? Number.NaN)
  })

  it('names the answers of either, and marks those that are the same', () => {
    expect(found.answers.find(({ fact }) => fact === 'boost')).toMatchObject({
      a: null,
      b: '18\u00a0psi',
      same: false,
    })
    expect(found.answers.find(({ fact }) => fact === 'bore')?.same).toBe(true)
    const keys = new Set([...Object.keys(street.answers), ...Object.keys(boosted.answers)])
    expect(new Set(found.answers.map(({ fact }) => fact))).toEqual(keys)
  })

  it('turned round says the same the other way', () => {
    const turned = compareCases(boosted, street)
    expect(turned.a).toEqual(found.b)
    expect(turned.numbers.map(({ a, b }) => [b, a])).toEqual(
      found.numbers.map(({ a, b }) => [a, b]),
    )
    const side = (rows: typeof found.reasons, where: string) =>
      rows.filter((one) => one.in === where).map(({ rule }) => rule)
    expect(side(turned.reasons, 'a')).toEqual(side(found.reasons, 'b'))
    expect(new Set(side(turned.reasons, 'both'))).toEqual(new Set(side(found.reasons, 'both')))
  })

  it('of a case with itself differs in nothing', () => {
    const same = compareCases(street, street)
    expect(same.sameCall).toBe(true)
    expect(same.answers.every((one) => one.same)).toBe(true)
    expect(same.numbers.every(({ a, b }) => a === b)).toBe(true)
    expect(same.reasons.every((one) => one.in === 'both')).toBe(true)
  })
})

describe('a link that a person pastes', () => {
  it.each([
    ['https://guide.example/call?v=1.0.0&bore=4.03in#why', 'v=1.0.0&bore=4.03in'],
    ['  /call?bore=4.03in ', 'bore=4.03in'],
    ['?bore=4.03in', 'bore=4.03in'],
    ['v=1.0.0&bore=4.03in', 'v=1.0.0&bore=4.03in'],
    ['https://guide.example/', ''],
    ['hello', ''],
    ['', ''],
  ])('%s holds %s', (text, query) => expect(queryOfLink(text)).toBe(query))

  it.each([
    ['https://guide.example/preset/twin-turbo', 'twin-turbo'],
    ['/preset/twin-turbo?units=metric', 'twin-turbo'],
    ['/presets', undefined],
    ['/call?x=/preset/y z', undefined],
  ])('%s names the preset %s', (text, id) => expect(presetOfLink(text)).toBe(id))
})
