import { type Answers, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, fact } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'

/** What was said, in words and in the order of the dictionary: "bore 4.03 in". What is not known is left out. */
export function saidWords(answers: Answers): string[] {
  return FACT_KEYS.flatMap((key) => {
    const answer = answers[key]
    if (answer === undefined || answer === UNKNOWN) return []
    const entry = fact(key)
    const text = printAnswer(key, answer)
    return [`${entry.short} ${entry.kind === 'choice' ? lowered(text) : text}`]
  })
}

/** A choice inside a sentence; what is written in capitals, such as V8, stays. */
function lowered(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? `${text.charAt(0).toLowerCase()}${text.slice(1)}` : text
}
