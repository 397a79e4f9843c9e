import type { Context } from 'hono'
import { z } from 'zod'
import { describeFound, type Problem } from '../../shared/problem.ts'
import { readJson } from './json-body.ts'
import { problemResponse } from './problem-response.ts'

/**
 * The JSON body of a request by a schema, or the refusal to send back. Unknown
 * fields are refused; answers inside are left for the reader of answers.
 */
export async function readBody<S extends z.ZodType>(
  c: Context,
  schema: S,
): Promise<{ ok: z.output<S> } | { refusal: Response }> {
  const type = c.req.header('content-type') ?? ''
  if (!/^application\/([\w.-]+\+)?json\b/i.test(type)) {
    return { refusal: problemResponse(c, 415, 'unsupported-media-type') }
  }
  const json = readJson(await c.req.text())
  if ('problem' in json) return { refusal: problemResponse(c, 400, 'invalid-body', [json.problem]) }
  const parsed = schema.safeParse(json.ok)
  if (parsed.success) return { ok: parsed.data }
  const problems = parsed.error.issues.map((issue) => shapeProblem(issue, json.ok))
  return { refusal: problemResponse(c, 400, 'invalid-body', problems) }
}

function shapeProblem(issue: z.core.$ZodIssue, body: unknown): Problem {
  const path = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0]] : issue.path
  const found = path.reduce<unknown>(
    (value, part) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, String(part))
        ? (value as Record<string, unknown>)[String(part)]
        : undefined,
    body,
  )
  return {
    field: describeFound(path.map(String).join('.') || 'body'),
    code: issue.code === 'unrecognized_keys' ? 'unknown-field' : 'wrong-shape',
    found: describeFound(found ?? ''),
    fits: issue.message,
  }
}

/** A record of answers as it may come in: any keys, judged one by one afterwards. */
export const rawAnswers = z.record(z.string(), z.unknown())
