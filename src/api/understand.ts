import { z } from 'zod'
import { acceptAnswers } from './accept-answers.ts'
import { factKey, messageText } from './body-parts.ts'
import { type Example, postOperation } from './operation.ts'
import { problemResponse } from './problem-response.ts'
import { rawAnswers } from './read-request.ts'

export const intent = z.enum([
  'tell',
  'dont-know',
  'why',
  'explain',
  'what-if',
  'change',
  'undo',
  'restart',
  'result',
])

/** A place in the message: UTF-16 code units, `end` exclusive. */
export const span = z.strictObject({
  key: factKey,
  start: z.number().int().min(0),
  end: z.number().int().min(0),
})
export const unclearWords = z.strictObject({ text: z.string(), why: z.string() })

const understanding = z.strictObject({
  facts: rawAnswers,
  spans: z.array(span),
  intent,
  topic: z.string().optional().meta({
    description:
      'What a why or an explain asks about: a fact key or a glossary term. Of a result, the route that was asked about.',
  }),
  atMost: z.array(factKey).optional().meta({
    description: 'Facts of a what-if that are bounded from above rather than given: "under 6,000".',
  }),
  unclear: z.array(unclearWords).meta({ description: 'Words that were not used, and why.' }),
})

const EXAMPLES: readonly Example[] = [
  {
    name: 'whole-build',
    title: 'A build in one message',
    body: {
      text: '4.030 x 3.480, 9.5:1, 12 psi on a turbo, two bolt iron block, 6500 rpm, e85',
    },
  },
  {
    name: 'answer',
    title: 'A bare figure for the question that was asked',
    body: { text: 'about 14', asking: 'boost', answers: { induction: 'turbocharged' } },
  },
]

/** `POST /api/understand`: the facts in a message, nothing computed. */
export const understandOperation = postOperation({
  path: '/understand',
  id: 'understand',
  title: 'Understand a message',
  text: 'Facts in free text, each with the place of the words it came from, what the message wants, and the words that were not used. `asking` is the fact that was asked for, if one was; `answers` are those so far, which "thirty over" and corrections need. Nothing is computed and nothing is kept.',
  body: z.strictObject({
    text: messageText,
    asking: factKey.optional(),
    answers: rawAnswers.default({}),
  }),
  response: understanding,
  examples: EXAMPLES,
  answer({ rulebook, reader }, c, { text, asking, answers: raw }) {
    const { answers, problems } = acceptAnswers(rulebook, raw)
    if (problems.length > 0) {
      return problemResponse(c, 400, 'invalid-answers', problems, { kept: { answers } })
    }
    return c.json(reader.read(text, { answers, ...(asking === undefined ? {} : { asking }) }))
  },
})
