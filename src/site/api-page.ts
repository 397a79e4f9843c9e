import { Hono } from 'hono'
import { z } from 'zod'
import type { AppDeps } from '../api/deps.ts'
import type { Operation } from '../api/operation.ts'
import { OPERATIONS } from '../api/operations.ts'
import { originOf } from '../api/origin-of.ts'
import { PROBLEM_TYPES } from '../api/problem-response.ts'
import { apiPage, type ShownOperation } from '../pages/api-page.ts'
import { viewOf } from './request-view.ts'

/** `/api`, the readable description; and the addresses that problem documents name as their type. */
export function apiPageRoutes(deps: AppDeps, operations: readonly Operation[] = OPERATIONS): Hono {
  const site = new Hono()
  const shown = operations.map(shownOperation)
  const problems = Object.entries(PROBLEM_TYPES).map(([kind, title]) => ({ kind, title }))
  site.get('/api', (c) => {
    const { units, link } = viewOf(deps.rulebook, c)
    const origin = originOf(deps, c)
    return c.html(apiPage({ units, link, origin, operations: shown, problems }))
  })
  site.get('/problems/:kind', (c) => {
    const kind = c.req.param('kind')
    return Object.hasOwn(PROBLEM_TYPES, kind) ? c.redirect(`/api#problem-${kind}`) : c.notFound()
  })
  return site
}

function shownOperation({ id, method, path, title, text, examples, response }: Operation) {
  const shown: ShownOperation = {
    id,
    method,
    path: `/api${path}`,
    title,
    text,
    examples: examples.map(({ title: name, body }) => ({
      title: name,
      body: body === undefined ? undefined : JSON.stringify(body, null, 2),
    })),
    answers: members(response),
  }
  return shown
}

/** The members of an answer and what its schema says of each. */
function members(response: z.ZodType): ShownOperation['answers'] {
  const { properties = {} } = z.toJSONSchema(response, { reused: 'inline' })
  return Object.entries(properties).map(([name, schema]) => ({ name, text: wordsOf(schema) }))
}

function wordsOf(schema: z.core.JSONSchema._JSONSchema): string {
  if (typeof schema === 'boolean') return 'anything'
  const kind = schema.enum ? `one of ${schema.enum.join(', ')}` : (schema.type ?? kinds(schema))
  return schema.description ?? String(kind)
}

function kinds({ anyOf = [] }: z.core.JSONSchema.BaseSchema): string {
  const types = anyOf.map((one) => (typeof one === 'boolean' ? 'anything' : (one.type ?? 'value')))
  return [...new Set(types)].join(' or ') || 'anything'
}
