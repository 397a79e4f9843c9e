import type { Context } from 'hono'
import { z } from 'zod'
import { describeFound, type Problem } from '../../shared/problem.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { acceptAnswers, without } from './accept-answers.ts'
import { LARGEST_BODY, readJson } from './json-body.ts'
import { type Kept, problemResponse } from './problem-response.ts'
import { shapeWords } from './shape-words.ts'

/** A record of answers as it may come in: any keys, judged one by one afterwards. */
export const rawAnswers = z.record(
  z.string(),
  z.unknown(),
  'give an object of answers by fact key, such as {"bore": "4.03 in"}',
)

/**
 * The JSON body of a request by a schema, or the refusal to send back. Unknown
 * fields are refused; answers inside are left for the reader of answers. A refusal
 * names every field that does not fit, and keeps the answers that do.
 *
 * @param rulebook - by which answers are judged; left out where a body holds none
 */
export async function readBody<S extends z.ZodType>(
  c: Context,
  schema: S,
  rulebook?: Rulebook,
): Promise<{ ok: z.output<S> } | { refusal: Response }> {
  const refuse = (problems: readonly Problem[], value?: unknown) => {
    const { problems: more, kept } = goodPart(rulebook, value, problems)
    return { refusal: problemResponse(c, 400, 'invalid-body', [...problems, ...more], { kept }) }
  }
  if (!isJson(c.req.header('content-type'))) return { refusal: notJson(c) }
  const text = await c.req.text()
  // The app's own limit stands before this one; a host without it is safe all the same.
  if (text.length > LARGEST_BODY) return { refusal: bodyTooLarge(c) }
  const json = readJson(text)
  if ('problems' in json) return refuse(json.problems, json.value)
  const parsed = schema.safeParse(json.ok, { error: shapeWords })
  if (parsed.success) return { ok: parsed.data }
  return refuse(
    parsed.error.issues.flatMap((issue) => shapeProblems(issue, json.ok)),
    json.ok,
  )
}

function isJson(type = ''): boolean {
  return /^application\/([\w.-]+\+)?json\s*(;|$)/i.test(type)
}

function notJson(c: Context): Response {
  const fits = 'send the body as application/json'
  const found = describeFound(c.req.header('content-type') ?? '')
  return problemResponse(c, 415, 'unsupported-media-type', [
    { field: 'content-type', code: 'wrong-shape', found, fits },
  ])
}

/** The refusal of a body that is larger than any case can be. */
export function bodyTooLarge(c: Context): Response {
  const fits = `send at most ${LARGEST_BODY} bytes`
  return problemResponse(c, 413, 'body-too-large', [
    { field: 'body', code: 'too-long', found: 'a larger body', fits },
  ])
}

/** Answers of a refused body: the good ones to keep, and what is wrong with the others. */
function goodPart(
  rulebook: Rulebook | undefined,
  value: unknown,
  already: readonly Problem[],
): { problems: Problem[]; kept: Kept | undefined } {
  const raw = memberOf(value, 'answers')
  if (!rulebook || typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return { problems: [], kept: undefined }
  }
  const { answers, problems } = acceptAnswers(rulebook, raw)
  const named = new Set(already.map(({ field }) => field))
  return {
    problems: problems.filter(({ field }) => !named.has(field)),
    kept: { answers: without(answers, already) },
  }
}

function memberOf(value: unknown, name: string): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return undefined
  return (value as Record<string, unknown>)[name]
}

function shapeProblems(issue: z.core.$ZodIssue, body: unknown): Problem[] {
  if (issue.code !== 'unrecognized_keys') return [shapeProblem(issue.path, issue.message, body)]
  return issue.keys.map((key) => ({
    ...shapeProblem([...issue.path, key], unknownFits(issue.message), body),
    code: 'unknown-field',
  }))
}

/** A schema may say which keys it takes; zod's own words only repeat the key. */
function unknownFits(message: string): string {
  return message.startsWith('Unrecognized') ? 'leave this field out' : message
}

function shapeProblem(path: readonly PropertyKey[], fits: string, body: unknown): Problem {
  const found = path.reduce<unknown>((value, part) => memberOf(value, String(part)), body)
  return {
    field: describeFound(path.map(String).join('.') || 'body'),
    code: 'wrong-shape',
    found: found === undefined ? '' : describeFound(found),
    fits,
  }
}
