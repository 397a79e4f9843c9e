import { z } from 'zod'
import { routeId } from './route-ids.ts'

/** Two cases side by side: the shape of `POST /api/compare`, and what the page draws. */

const called = z.object({
  route: routeId.nullable(),
  title: z.string(),
  sentence: z.string(),
  confidence: z.enum(['settled', 'likely', 'withheld']),
  /** The canonical link query of the case. */
  link: z.string(),
})

/** Two cases side by side, as the API gives them. */
export const comparison = z.object({
  /** Whether both come to the same call. */
  sameCall: z.boolean(),
  a: called,
  b: called,
  /** Every fact that either case says; null where a case leaves it open. */
  answers: z.array(
    z.object({
      fact: z.string(),
      label: z.string(),
      a: z.string().nullable(),
      b: z.string().nullable(),
      same: z.boolean(),
    }),
  ),
  numbers: z.array(
    z.object({
      id: z.string(),
      label: z.string(),
      a: z.number().nullable(),
      b: z.number().nullable(),
      unitA: z.string(),
      unitB: z.string(),
    }),
  ),
  reasons: z.array(
    z.object({ rule: z.string(), title: z.string(), in: z.enum(['a', 'b', 'both']) }),
  ),
  cautions: z.array(
    z.object({ rule: z.string(), title: z.string(), in: z.enum(['a', 'b', 'both']) }),
  ),
})
/** Two cases side by side: calls, numbers, answers and findings. */
export type CaseComparison = z.infer<typeof comparison>
