import { z } from 'zod'
import { LONGEST_ANSWER, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type Fact, fact, isQuantity } from '../../shared/fact-keys.ts'
import { UNITS } from '../../shared/units.ts'

const written = z.string().max(LONGEST_ANSWER)
const figures = { value: z.number(), low: z.number().optional(), high: z.number().optional() }

/**
 * Answers as the description shows them, one member for each fact of the dictionary.
 * What reads answers is `readAnswer`, which names what is wrong with each; tests hold
 * the two to each other.
 */
export const answersShape = z.strictObject(
  Object.fromEntries(FACT_KEYS.map((key) => [key, answerShape(fact(key)).optional()])),
)

function answerShape(entry: Fact): z.ZodType {
  const unknown = z.literal(UNKNOWN)
  switch (entry.kind) {
    case 'choice':
      return described(entry, '', z.enum([...new Set([...Object.keys(entry.choices), UNKNOWN])]))
    case 'thread':
      return described(entry, 'Such as 1/2-13 or M11x1.25.', written)
    case 'number': {
      const range = `${entry.low} to ${entry.high}, a number or such as "10.5${entry.suffix}".`
      const shape = z.union([
        z.number().min(entry.low).max(entry.high),
        z.strictObject(figures),
        written,
      ])
      return described(entry, range, shape)
    }
    case 'money': {
      const money = z.strictObject({ ...figures, currency: z.string().regex(/^[A-Z]{3}$/) })
      return described(entry, 'Or a text such as "950 USD".', z.union([unknown, money, written]))
    }
    default: {
      const usual = entry.units[0] ?? ''
      const range = `${entry.low} to ${entry.high} ${usual}, or a text such as "${entry.low} ${usual}".`
      const quantity = z.strictObject({ ...figures, unit: z.enum(unitsOf(entry)) })
      return described(entry, range, z.union([unknown, quantity, written]))
    }
  }
}

function described(entry: Fact, range: string, shape: z.ZodType): z.ZodType {
  return shape.meta({ description: `${entry.label}. ${range}`.trim() })
}

/** Usual units first, then whatever else measures the same. */
function unitsOf(entry: Fact): string[] {
  const usual = isQuantity(entry) ? entry.units : []
  const others = Object.keys(UNITS).filter((symbol) => UNITS[symbol]?.dimension === entry.kind)
  return [...new Set([...usual, ...others])]
}
