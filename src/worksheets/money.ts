import { z } from 'zod'
import { describeFound } from '../../shared/problem.ts'
import { readDecimal } from '../../shared/quantity.ts'
import type { Field } from './fields.ts'

/** An amount with its currency. */
export interface Amount {
  readonly value: number
  readonly currency: string
}

const FITS = 'give an amount with its ISO 4217 currency, such as 950 USD'

/** An amount of money: "950 USD" or {"value": 950, "currency": "USD"}; a plain number is refused. */
export function money(label: string, help = ''): Field<Amount> {
  const shape = z.strictObject({ value: z.number(), currency: z.string().regex(/^[A-Z]{3}$/) })
  return {
    label,
    help,
    required: true,
    control: { type: 'money' },
    schema: z.union([z.string().max(80), shape]),
    read(raw, at) {
      const parsed = typeof raw === 'string' ? fromText(raw) : shape.safeParse(raw).data
      if (parsed) return { ok: { value: parsed, given: parsed } }
      const bare = typeof raw === 'number' || (typeof raw === 'string' && /^[\d.,\s]+$/.test(raw))
      const code = bare ? 'currency-missing' : 'not-a-number'
      return { problem: { field: at, code, found: describeFound(raw ?? ''), fits: FITS } }
    },
  }
}

function fromText(text: string): Amount | undefined {
  const match = /^([\d.,]+)\s*([A-Za-z]{3})$/.exec(text.trim())
  const value = match ? readDecimal(match[1] as string) : undefined
  if (!match || value === undefined) return undefined
  return { value, currency: (match[2] as string).toUpperCase() }
}
