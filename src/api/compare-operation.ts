import { z } from 'zod'
import type { Answers } from '../../shared/answers.ts'
import { comparison } from '../../shared/comparison.ts'
import type { Problem } from '../../shared/problem.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { compareCases } from '../what-if/compare.ts'
import { acceptAnswers } from './accept-answers.ts'
import { assessOrProblems, noEngine } from './assess-safely.ts'
import { unitsPart } from './body-parts.ts'
import { caseFromLink } from './case-from-link.ts'
import { postOperation } from './operation.ts'
import { problemResponse } from './problem-response.ts'
import { rawAnswers } from './read-request.ts'
import { steadyFigures } from './steady-figures.ts'

const side = z
  .strictObject(
    { answers: rawAnswers.optional(), link: z.string().max(12_000).optional() },
    {
      error: ({ code }) =>
        code === 'invalid_type' ? 'give an object with answers or a link' : undefined,
    },
  )
  .refine(
    ({ answers, link }) => (answers === undefined) !== (link === undefined),
    'give answers or a link, one of them',
  )
  .meta({ description: 'A case by its answers, or by a link: an address, its query, a preset.' })

type Side = z.output<typeof side>

/** `POST /api/compare`: two cases side by side. */
export const compareOperation = postOperation({
  path: '/compare',
  id: 'compare',
  title: 'Compare two cases',
  text: 'Two cases in, what differs out: answers, numbers, the call and its reasons, each for a and for b.',
  body: z.strictObject({ a: side, b: side, units: unitsPart }),
  response: comparison,
  examples: [
    {
      name: 'preset-and-change',
      title: 'A preset, and a milder engine',
      body: {
        a: { link: '/preset/twin-turbo' },
        b: { answers: { layout: 'v8-cross-plane', bore: '4.03 in', stroke: '3.48 in' } },
      },
    },
  ],
  async answer({ rulebook }, c, { a, b, units: system }) {
    const [one, other] = [read(rulebook, 'a', a), read(rulebook, 'b', b)]
    const problems = [...one.problems, ...other.problems]
    if (problems.length > 0) return problemResponse(c, 400, 'invalid-answers', problems)
    const options = { system, withoutWhatIf: true }
    const first = await assessOrProblems(c, rulebook, one.answers, options, { place: 'a' })
    const second = await assessOrProblems(c, rulebook, other.answers, options, { place: 'b' })
    if ('problems' in first || 'problems' in second) {
      const outside = [first, second].flatMap((side) => ('problems' in side ? side.problems : []))
      return noEngine(c, outside)
    }
    const compared = compareCases(
      { answers: one.answers, assessment: first.ok },
      { answers: other.answers, assessment: second.ok },
    )
    return c.json(steadyFigures(compared))
  },
})

function read(
  rulebook: Rulebook,
  place: 'a' | 'b',
  { answers, link }: Side,
): { answers: Answers; problems: readonly Problem[] } {
  if (link === undefined) return acceptAnswers(rulebook, answers, `${place}.`)
  const found = caseFromLink(rulebook, link)
  const problems = found.problems.map((one) => ({ ...one, field: `${place}.${one.field}` }))
  return { answers: found.answers, problems }
}
