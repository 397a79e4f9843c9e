import { z } from 'zod'
import { id, ruleSource } from './schema.ts'

/** Most that a part or a piece of work may cost, in any currency: as much as a person may say. */
const MOST = 10_000_000
/** A unit of one currency is not worth more of another than this, nor less than its inverse. */
const FARTHEST_RATE = 1_000_000

const amount = z.number().min(0).max(MOST)

/** What a part or a piece of work costs: at least, most likely and at most. */
export const price = z
  .strictObject({ low: amount, likely: amount, high: amount })
  .refine(({ low, likely, high }) => low <= likely && likely <= high, 'low ≤ likely ≤ high')

const costItemSchema = z.strictObject({
  id,
  label: z.string().min(3),
  kind: z.enum(['part', 'work']),
  price,
  /** The fact by which a person gives their own price. */
  fact: z.string().optional(),
  source: ruleSource,
})

const currency = z.string().regex(/^[A-Z]{3}$/, 'write three capitals, such as USD')

/** rules/cost.json: what parts and work cost, and what currencies are worth. */
export const costSchema = z
  .strictObject({
    currency,
    date: z.string().regex(/^\d{4}-\d{2}$/),
    items: z.array(costItemSchema),
    /** Rough worth of one unit of `currency` in others, to set an assumed price beside a person's own money. */
    rates: z.record(
      currency,
      z
        .number()
        .min(1 / FARTHEST_RATE)
        .max(FARTHEST_RATE),
    ),
    ratesSource: ruleSource,
  })
  .refine((table) => table.rates[table.currency] === 1, {
    path: ['rates'],
    message: 'the rate of the table’s own currency is 1',
  })
/** A price list; `listed` marks what a shop prices itself, which no file of the guide says. */
export type CostTable = Omit<z.infer<typeof costSchema>, 'items'> & {
  readonly items: readonly (z.infer<typeof costItemSchema> & { readonly listed?: true })[]
}
