import { z } from 'zod'
import { assessment } from '../../shared/assessment.ts'
import { acceptAnswers } from './accept-answers.ts'
import { assessOrRefuse } from './assess-safely.ts'
import { unitsPart } from './body-parts.ts'
import { type Example, postOperation } from './operation.ts'
import { problemResponse } from './problem-response.ts'
import { rawAnswers } from './read-request.ts'
import { steadyFigures } from './steady-figures.ts'

const EXAMPLES: readonly Example[] = [
  {
    name: 'boosted-v8',
    title: 'A two-bolt V8 that is to take boost',
    body: {
      answers: {
        layout: 'v8-cross-plane',
        bore: '4.03 in',
        stroke: { value: 3.48, unit: 'in' },
        compressionRatio: 9.5,
        induction: 'turbocharged',
        boost: { value: 12, low: 10, high: 14, unit: 'psi' },
        fuel: 'pump-gasoline',
        peakRpm: '6500 rpm',
        use: 'street-strip',
        capFastening: 'two-bolt',
        capMaterial: 'unknown',
        invested: { value: 6000, currency: 'USD' },
      },
    },
  },
]

/** `POST /api/assess`: the whole arrow for some answers. */
export const assessOperation = postOperation({
  path: '/assess',
  id: 'assess',
  title: 'Assess a build',
  text: 'Answers in, the call out: the build as it was understood and assumed, loads, every route with its margins and cost, the call with its reasons and sources, cautions, contradictions, what would change the call, and the question that matters most next. The same answers give the same bytes.',
  body: z.strictObject({ answers: rawAnswers, units: unitsPart }),
  response: assessment,
  examples: EXAMPLES,
  async answer({ rulebook }, c, { answers: raw, units }) {
    const { answers, problems } = acceptAnswers(rulebook, raw)
    if (problems.length > 0) {
      return problemResponse(c, 400, 'invalid-answers', problems, { kept: { answers } })
    }
    const assessed = await assessOrRefuse(c, rulebook, answers, { system: units })
    return 'refusal' in assessed ? assessed.refusal : c.json(steadyFigures(assessed.ok))
  },
})
