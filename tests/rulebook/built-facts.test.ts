import { describe, expect, it } from 'vitest'
import { loadRulebook } from '../../src/rulebook/load.ts'
import { ruleTexts } from '../support/rulebook.ts'

type Facts = Record<string, Record<string, unknown>>

/** What the loader says of the dictionary of facts when it was changed since the build. */
function saysOf(change: (facts: Facts) => unknown): string {
  const texts = ruleTexts()
  const facts = JSON.parse(texts.get('facts.json') as string) as Facts
  const changed = change(facts)
  texts.set('facts.json', JSON.stringify(changed === undefined ? facts : changed))
  try {
    loadRulebook(texts)
    return ''
  } catch (error) {
    return (error as Error).message
  }
}

describe('the dictionary of facts in an operator’s folder', () => {
  it('is taken when it is the one that was built in, however it is laid out', () => {
    expect(saysOf(() => undefined)).toBe('')
  })

  it.each<[string, (facts: Facts) => unknown, RegExp]>([
    [
      'a range',
      ({ bore }) => {
        ;(bore as Facts[string]).high = 70
      },
      /facts\.json: bore\.high: is “70”, and was built as “\d[\d.]*”; facts are built in: .*npm start/,
    ],
    [
      'a choice more',
      ({ use }) => {
        ;(use as { choices: Record<string, string> }).choices.marine = 'Marine'
      },
      /facts\.json: use\.choices\.marine: is “Marine”, and was built as missing/,
    ],
    [
      'a fact less',
      (facts) => {
        delete facts.budget
      },
      /facts\.json: budget: is missing, and was built as “/,
    ],
    [
      'a fact more',
      (facts) => {
        facts.paint = { kind: 'choice' }
      },
      /facts\.json: paint: is “.*”, and was built as missing/,
    ],
    [
      'a list in place of a word',
      ({ bore }) => {
        ;(bore as Facts[string]).label = ['Bore']
      },
      /facts\.json: bore\.label: is “\["Bore"\]”/,
    ],
    [
      'another order',
      (facts) => Object.fromEntries(Object.entries(facts).reverse()),
      /facts\.json: \w+: is “in another place”/,
    ],
    ['nothing of it', () => [], /facts\.json: \w*: is /],
  ])('is refused with %s, by place and reason', (_, change, says) => {
    expect(saysOf(change)).toMatch(says)
  })

  it('is refused when it is missing', () => {
    const texts = ruleTexts()
    texts.delete('facts.json')
    expect(() => loadRulebook(texts)).toThrow(/facts\.json: the file is missing/)
  })

  it('of a folder that holds something else is one line of few', () => {
    const texts = new Map(Array.from({ length: 500 }, (_, n) => [`${n}.json`, '{}']))
    const message = (() => {
      try {
        loadRulebook(texts)
      } catch (error) {
        return (error as Error).message
      }
      return ''
    })()
    expect(message.split('\n').length).toBeLessThan(100)
    expect(message).toMatch(/and 4\d\d more$/)
  })
})
