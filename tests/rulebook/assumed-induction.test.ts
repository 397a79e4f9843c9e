import { describe, expect, it } from 'vitest'
import { readAnswers, UNKNOWN } from '../../shared/answers.ts'
import { buildFromAnswers } from '../../src/build/from-answers.ts'
import { rulebook } from '../support/app.ts'

const factsOf = (raw: Record<string, unknown>) =>
  buildFromAnswers(rulebook, readAnswers(raw).answers).facts

describe('how an engine is taken to breathe that nobody described', () => {
  it.each([
    ['nothing is said', {}, 'naturally-aspirated'],
    ['boost is given', { boost: '12 psi' }, 'turbocharged'],
    [
      'boost is given, and the rest not known',
      { boost: '12 psi', induction: UNKNOWN },
      'turbocharged',
    ],
    ['a shot is given', { nitrousPower: '150 hp' }, 'nitrous'],
    ['the boost given is none', { boost: '0 psi' }, 'naturally-aspirated'],
  ])('when %s', (_, raw, value) => {
    expect(factsOf(raw).induction).toMatchObject({ state: 'assumed', value })
  })

  it('the boost that was given counts, and is never assumed away', () => {
    expect(factsOf({ boost: '12 psi' }).boost).toMatchObject({ state: 'said', value: 12 })
  })

  it('what was said of it stands beside any figure', () => {
    const { induction } = factsOf({ induction: 'supercharged', boost: '12 psi' })
    expect(induction).toMatchObject({ state: 'said', value: 'supercharged' })
  })
})
