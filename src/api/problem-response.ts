import type { Context } from 'hono'
import type { ContentfulStatusCode } from 'hono/utils/http-status'
import { type Problem, problemSentence } from '../../shared/problem.ts'

/** Kinds of refusal: the last part of a problem document's `type`. */
export const PROBLEM_TYPES = {
  'invalid-answers': 'Some answers cannot be used',
  'invalid-body': 'The body cannot be read',
  'body-too-large': 'The body is too large',
  'not-found': 'There is nothing here',
  'method-not-allowed': 'This method does not work here',
  'unsupported-media-type': 'Send JSON',
  'too-many-requests': 'Too many requests',
  internal: 'Something went wrong here',
} as const
export type ProblemType = keyof typeof PROBLEM_TYPES

/**
 * A problem document by RFC 9457: `type`, `title`, `status`, `detail`, and `errors`
 * naming each field, what was found and what would fit.
 */
export function problemResponse(
  c: Context,
  status: ContentfulStatusCode,
  type: ProblemType,
  problems: readonly Problem[] = [],
  detail?: string,
): Response {
  const document = {
    type: `/problems/${type}`,
    title: PROBLEM_TYPES[type],
    status,
    detail: detail ?? (problems.map(problemSentence).join(' ') || PROBLEM_TYPES[type]),
    errors: problems.map(({ field, code, found, fits }) => ({ field, code, found, fits })),
  }
  return c.body(JSON.stringify(document), status, { 'content-type': 'application/problem+json' })
}
