import type { Context } from 'hono'
import type { ContentfulStatusCode } from 'hono/utils/http-status'
import { z } from 'zod'
import type { Answers } from '../../shared/answers.ts'
import { type Problem, problemSentence } from '../../shared/problem.ts'

/** Kinds of refusal: the last part of a problem document's `type`. They are never renamed. */
export const PROBLEM_TYPES = {
  'invalid-answers': 'Some answers cannot be used',
  'invalid-body': 'The body cannot be read',
  'outside-the-model': 'These answers are outside what the model covers',
  'body-too-large': 'The body is too large',
  'address-too-long': 'The address is too long',
  'headers-too-large': 'The headers are too large',
  'not-found': 'There is nothing here',
  'method-not-allowed': 'This method does not work here',
  'unsupported-media-type': 'Send JSON',
  'too-many-requests': 'Too many requests',
  busy: 'Too many wait for an answer; ask again soon',
  stopping: 'The server is being stopped; ask again soon',
  internal: 'Something went wrong here',
} as const
export type ProblemType = keyof typeof PROBLEM_TYPES

/** What of a refused request could be read; send it again with the rest mended. */
export interface Kept {
  readonly answers: Answers
  readonly parked?: Answers
}

/** A problem document (RFC 9457) with our two extension members, `errors` and `kept`. */
export const problemDocument = z.object({
  type: z.string().meta({ description: 'Stable; `/problems/` and one of the listed kinds.' }),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  errors: z.array(
    z.object({
      field: z.string().meta({ description: 'A fact key, or a path such as `parked.bore`.' }),
      code: z.string(),
      found: z.string(),
      fits: z.string().meta({ description: 'What would fit, in words.' }),
    }),
  ),
  kept: z
    .object({
      answers: z.record(z.string(), z.unknown()),
      parked: z.record(z.string(), z.unknown()).optional(),
    })
    .optional()
    .meta({ description: 'The good answers of a refused request, so that none is lost.' }),
})

/** More problems than a case has answers are no slips; a small body must not draw a huge refusal. */
const MOST_NAMED = 60

function detailOf(
  type: ProblemType,
  problems: readonly Problem[],
  named: readonly Problem[],
): string {
  const left = problems.length - named.length
  const sentences = named.map(problemSentence)
  if (left > 0) sentences.push(`There are ${left} more problems.`)
  return sentences.join(' ') || PROBLEM_TYPES[type]
}

/**
 * A problem document by RFC 9457: `type`, `title`, `status`, `detail`, and `errors`
 * naming each field, what was found and what would fit, the first 60 of them.
 *
 * @param kept - the good answers of the refused request
 */
export function problemResponse(
  c: Context,
  status: ContentfulStatusCode,
  type: ProblemType,
  problems: readonly Problem[] = [],
  { detail, kept }: { readonly detail?: string; readonly kept?: Kept | undefined } = {},
): Response {
  const named = problems.slice(0, MOST_NAMED)
  const document: z.input<typeof problemDocument> = {
    type: `/problems/${type}`,
    title: PROBLEM_TYPES[type],
    status,
    detail: detail ?? detailOf(type, problems, named),
    errors: named.map(({ field, code, found, fits }) => ({ field, code, found, fits })),
    ...(kept ? { kept } : {}),
  }
  return c.body(JSON.stringify(document), status, { 'content-type': 'application/problem+json' })
}
