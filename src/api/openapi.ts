import { z } from 'zod'
import { answersShape } from './answers-schema.ts'
import type { Operation } from './operation.ts'
import { PROBLEM_TYPES, problemDocument } from './problem-response.ts'
import { rawAnswers } from './read-request.ts'

const REF = '#/components/schemas/'
const PROBLEM = { 'application/problem+json': { schema: { $ref: `${REF}Problem` } } }

/** Refusals that any operation with a body may give: status and why. */
const REFUSALS = {
  400: 'A field or an answer cannot be used; `errors` names each and `kept` has the others.',
  413: 'The body is too large.',
  415: 'The body is not JSON.',
  422: 'Each answer fits, but together they are no engine that the model covers.',
} as const

/**
 * The API's description by OpenAPI 3.1, drawn from the schemas that the operations read
 * and answer with.
 *
 * @param version - of the rulebook
 * @see OpenAPI Specification 3.1.0
 */
export function openApi(
  operations: readonly Operation[],
  version: string,
): Record<string, unknown> {
  return {
    openapi: '3.1.0',
    info: {
      title: 'Mainstay',
      version,
      description:
        'How to hold a crankshaft in its block, and why. Stateless: every request carries its whole case. An estimate by handbook methods; the service manual, the fastener supplier and a qualified machinist come before it.',
    },
    servers: [{ url: '/' }],
    paths: { ...paths(operations), '/healthz': HEALTH },
    components: { schemas: components(operations) },
  }
}

function paths(operations: readonly Operation[]): Record<string, Record<string, unknown>> {
  const all: Record<string, Record<string, unknown>> = {}
  for (const operation of operations) {
    const path = `/api${operation.path}`
    all[path] = { ...all[path], [operation.method]: operationObject(operation) }
  }
  return all
}

function operationObject({ id, title, text, body, examples, method }: Operation) {
  return {
    operationId: id,
    summary: title,
    description: text,
    ...(body ? { requestBody: { required: true, content: requestContent(id, examples) } } : {}),
    responses: {
      200: {
        description: 'As asked.',
        content: { 'application/json': { schema: { $ref: `${REF}${responseName(id)}` } } },
      },
      ...(method === 'post' ? refusals() : {}),
      default: { description: 'Any other refusal.', content: PROBLEM },
    },
  }
}

function requestContent(id: string, examples: Operation['examples']) {
  const shown = examples.map(({ name, title, body }) => [name, { summary: title, value: body }])
  return {
    'application/json': {
      schema: { $ref: `${REF}${requestName(id)}` },
      ...(shown.length > 0 ? { examples: Object.fromEntries(shown) } : {}),
    },
  }
}

function refusals(): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(REFUSALS).map(([status, description]) => [
      status,
      { description, content: PROBLEM },
    ]),
  )
}

const HEALTH = {
  get: {
    operationId: 'health',
    summary: 'Tell whether the guide is up',
    responses: {
      200: {
        description: 'It is.',
        content: {
          'application/json': {
            schema: {
              type: 'object',
              properties: { status: { const: 'ok' }, version: { type: 'string' } },
              required: ['status', 'version'],
            },
          },
        },
      },
    },
  },
}

function components(operations: readonly Operation[]): Record<string, unknown> {
  const requests = operations.flatMap(({ id, body, shownBody = body }) =>
    shownBody ? [[requestName(id), jsonSchema(shownBody, 'input')]] : [],
  )
  const responses = operations.map(({ id, response }) => [
    responseName(id),
    jsonSchema(response, 'output'),
  ])
  const problem = jsonSchema(problemDocument, 'output') as { properties: Record<string, object> }
  const kinds = Object.keys(PROBLEM_TYPES).map((kind) => `/problems/${kind}`)
  const type = { ...problem.properties.type, enum: kinds }
  return {
    Answers: jsonSchema(answersShape, 'input'),
    Problem: { ...problem, properties: { ...problem.properties, type } },
    ...Object.fromEntries([...requests, ...responses]),
  }
}

/** JSON Schema (draft 2020-12, the dialect of OpenAPI 3.1); a record of answers refers to its own component. */
function jsonSchema(schema: z.ZodType, io: 'input' | 'output'): Record<string, unknown> {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, {
    io,
    reused: 'inline',
    override: ({ zodSchema, jsonSchema: shown }) => {
      if (zodSchema !== rawAnswers) return
      for (const key of Object.keys(shown)) delete shown[key]
      shown.$ref = `${REF}Answers`
    },
  })
  return rest
}

function requestName(id: string): string {
  return `${pascal(id)}Request`
}

function responseName(id: string): string {
  return `${pascal(id)}Response`
}

function pascal(id: string): string {
  return id.replace(/(?:^|-)([a-z])/g, (_, letter: string) => letter.toUpperCase())
}
