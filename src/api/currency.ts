import type { Answers } from '../../shared/answers.ts'
import { FACT_KEYS } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** Amounts in currencies that the price list has no rate for. */
export function currencyProblems({ cost }: Rulebook, answers: Answers): Problem[] {
  return FACT_KEYS.flatMap((key): Problem[] => {
    const answer = answers[key]
    if (typeof answer !== 'object' || !('currency' in answer)) return []
    if (Object.hasOwn(cost.rates, answer.currency)) return []
    const fits = `use one of ${Object.keys(cost.rates).join(', ')}`
    return [{ field: key, code: 'currency-missing', found: answer.currency, fits }]
  })
}
