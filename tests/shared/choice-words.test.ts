import { describe, expect, it } from 'vitest'
import { choicesOf, readAnswers } from '../../shared/answers.ts'
import { FACT_KEYS, fact } from '../../shared/fact-keys.ts'

const CHOICES = FACT_KEYS.filter((key) => fact(key).kind === 'choice')

describe('what would fit a question of choice', () => {
  it.each(CHOICES)('names each choice of %s once', (key) => {
    const [problem] = readAnswers({ [key]: 'no such choice' }).problems
    const words = JSON.stringify(problem)
    const named = [...Object.keys(choicesOf(fact(key))), 'unknown']
    for (const choice of new Set(named)) {
      expect(words.match(new RegExp(`[ ]${choice}(?=[,"])`, 'g'))).toHaveLength(1)
    }
  })
})
