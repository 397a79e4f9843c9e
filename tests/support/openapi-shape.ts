import { z } from 'zod'

/**
 * The parts of OpenAPI 3.1.0 that our description uses, strictly: a misspelt member is a
 * fault.
 *
 * @see OpenAPI Specification 3.1.0, section 4.8
 */
const ref = z.strictObject({ $ref: z.string().regex(/^#\/components\/schemas\/\w+$/) })
const types = z.enum(['null', 'boolean', 'object', 'array', 'number', 'integer', 'string'])

/** JSON Schema, draft 2020-12: the keywords that we use, each with the shape its vocabulary gives it. */
export const jsonSchemaShape: z.ZodType = z.lazy(() =>
  z.union([
    z.boolean(),
    z.strictObject({
      $ref: ref.shape.$ref.optional(),
      type: z.union([types, z.array(types).min(1)]).optional(),
      enum: z.array(z.unknown()).min(1).optional(),
      const: z.unknown().optional(),
      description: z.string().min(1).optional(),
      default: z.unknown().optional(),
      properties: z.record(z.string(), jsonSchemaShape).optional(),
      required: z.array(z.string()).optional(),
      additionalProperties: jsonSchemaShape.optional(),
      propertyNames: jsonSchemaShape.optional(),
      items: jsonSchemaShape.optional(),
      prefixItems: z.array(jsonSchemaShape).min(1).optional(),
      minItems: z.number().int().min(0).optional(),
      maxItems: z.number().int().min(0).optional(),
      anyOf: z.array(jsonSchemaShape).min(1).optional(),
      oneOf: z.array(jsonSchemaShape).min(1).optional(),
      allOf: z.array(jsonSchemaShape).min(1).optional(),
      minimum: z.number().optional(),
      maximum: z.number().optional(),
      exclusiveMinimum: z.number().optional(),
      exclusiveMaximum: z.number().optional(),
      minLength: z.number().int().min(0).optional(),
      maxLength: z.number().int().min(0).optional(),
      pattern: z
        .string()
        .refine((pattern) => new RegExp(pattern, 'u') instanceof RegExp)
        .optional(),
      format: z.string().optional(),
    }),
  ]),
)

const example = z.strictObject({ summary: z.string().min(1), value: z.unknown() })
const mediaType = z.strictObject({
  schema: jsonSchemaShape,
  examples: z.record(z.string(), example).optional(),
})
const content = z.record(z.string().regex(/^application\/[\w+.-]+$/), mediaType)
const response = z.strictObject({ description: z.string().min(1), content: content.optional() })
const operation = z.strictObject({
  operationId: z.string().regex(/^[a-z][\w-]*$/),
  summary: z.string().min(1),
  description: z.string().min(1).optional(),
  tags: z.array(z.string()).optional(),
  requestBody: z.strictObject({ required: z.boolean(), content }).optional(),
  responses: z.record(z.string().regex(/^(default|[1-5]\d\d)$/), response),
})

export const openApiShape = z.strictObject({
  openapi: z.literal('3.1.0'),
  info: z.strictObject({
    title: z.string().min(1),
    version: z.string().min(1),
    description: z.string().optional(),
  }),
  servers: z.array(z.strictObject({ url: z.string() })).min(1),
  paths: z.record(
    z.string().startsWith('/'),
    z.strictObject({ get: operation.optional(), post: operation.optional() }),
  ),
  components: z.strictObject({ schemas: z.record(z.string().regex(/^[\w.-]+$/), jsonSchemaShape) }),
})
export type OpenApi = z.infer<typeof openApiShape>

/** Every `$ref` in a value. */
export function refsIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    key === '$ref' && typeof inner === 'string' ? [inner] : refsIn(inner),
  )
}

/** A component of a description as a checker of values, by zod's own reader of JSON Schema. */
export function checkerOf(description: OpenApi, name: string): z.ZodType {
  const local = JSON.parse(
    JSON.stringify(description.components.schemas).replaceAll('#/components/schemas/', '#/$defs/'),
  )
  return z.fromJSONSchema({ ...local[name], $defs: local }, { defaultTarget: 'draft-2020-12' })
}
