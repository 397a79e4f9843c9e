import { z } from 'zod'
import { call, nextQuestion } from '../../shared/assessment.ts'
import { routeId } from '../../shared/route-ids.ts'
import { factKey } from './body-parts.ts'
import { rawAnswers } from './read-request.ts'
import { intent, span, unclearWords } from './understand.ts'

/** The call in short. */
const shortCall = z.strictObject({
  route: routeId.nullable(),
  sentence: z.string(),
  confidence: call.shape.confidence,
})

/** The figures that a what-if sets side by side. */
export const side = shortCall.extend({
  /** Of 100 sampled cases of the called route; null when the call is withheld. */
  holdsIn: z.number().nullable(),
  peakPressure: z.number().meta({ description: 'bar' }),
  worstPull: z.number().meta({ description: 'kN' }),
  worstSide: z.number().meta({ description: 'kN' }),
})

/** What `POST /api/turn` answers with. */
export const turnResponse = z.strictObject({
  answers: rawAnswers,
  parked: rawAnswers,
  before: z
    .record(z.string(), z.unknown())
    .meta({ description: 'What undo takes back; null for no answer.' }),
  intent,
  accepted: z.array(
    z.strictObject({
      key: factKey,
      short: z.string(),
      answer: z.unknown(),
      text: z.string().meta({ description: 'As a person reads it.' }),
      words: z.string().meta({ description: 'The words it came from; empty for `answer`.' }),
    }),
  ),
  spans: z.array(span),
  unclear: z.array(unclearWords),
  topic: z.string().optional(),
  says: z
    .strictObject({ markdown: z.string(), html: z.string() })
    .meta({ description: 'The words of the guide; the HTML is safe to show.' }),
  supposed: rawAnswers
    .optional()
    .meta({ description: 'Answers of a what-if; send them as `answers` to keep it.' }),
  compare: z.strictObject({ present: side, supposed: side }).optional(),
  next: nextQuestion.extend({ ask: z.string() }).nullable(),
  call: shortCall
    .nullable()
    .meta({ description: 'Null before the answers that it rests on, unless it was asked for.' }),
  link: z.string().meta({ description: 'Query of the link that reopens the guide here.' }),
})
export type TurnResponse = z.input<typeof turnResponse>
