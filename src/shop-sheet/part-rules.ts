import { z } from 'zod'
import { id, ruleSource, sentence } from '../rulebook/schema.ts'
import { price } from '../rulebook/schema-cost.ts'

/** Shown when the called route has one of these works or parts; always when it is missing. */
const when = z
  .strictObject({
    work: z.array(z.string()).min(1).optional(),
    parts: z.array(z.string()).min(1).optional(),
  })
  .optional()

const partRule = z.strictObject({
  id,
  title: z.string().min(3),
  kind: z.enum(['part', 'work', 'check']),
  per: z.enum(['engine', 'set', 'pair']),
  when,
  price: price.optional(),
  because: sentence,
  source: ruleSource,
})
/** A part, a work or a check that is often forgotten. */
export type PartRule = z.infer<typeof partRule>

const askRule = z.strictObject({ id, text: sentence, when })
/** A sentence of the sheet with when it is on it. */
export type AskRule = z.infer<typeof askRule>

/** What rules/parts.json has to look like. */
export const partsFile = z.strictObject({
  currency: z.string().regex(/^[A-Z]{3}$/),
  parts: z.array(partRule).min(1),
  questions: z.array(askRule).min(1),
  before: z.array(askRule).min(1),
  after: z.array(askRule).min(1),
})
