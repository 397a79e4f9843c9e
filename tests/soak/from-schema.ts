import fc from 'fast-check'

/** The keywords of JSON Schema that our description uses. */
export interface Schema {
  readonly $ref?: string
  readonly type?: string | readonly string[]
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly additionalProperties?: boolean | Schema
  readonly items?: Schema
  readonly prefixItems?: readonly Schema[]
  readonly maxItems?: number
  readonly minimum?: number
  readonly maximum?: number
  readonly maxLength?: number
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly allOf?: readonly Schema[]
}

/** Values that a figure or a text is often not ready for. */
export const ODD = fc.constantFrom<unknown>(
  ...[null, '', 0, -0, -1, 1e308, 5e-324, 1e-308, '1e999 in', '0 in', '-1 psi', '9'.repeat(300)],
  ...['\u0000', '\ud800', '١٢', '4,03 in', 'NaN', 'Infinity', '__proto__', 'constructor', '😀'],
  ...[[], {}, [[]], { value: 0, unit: 'in' }, { value: -1, unit: 'psi' }, true, 'unknown'],
)

/**
 * Values that a schema describes, more or less: keys may be missing, and one value in
 * twelve is something else altogether.
 *
 * @param find - the schema behind a `$ref`
 */
export function fromSchema(
  schema: Schema,
  find: (ref: string) => Schema,
  depth = 0,
): fc.Arbitrary<unknown> {
  if (depth > 6) return fc.constant(null)
  const spoilt = { weight: 1, arbitrary: fc.oneof(ODD, fc.jsonValue({ maxDepth: 2 })) }
  return fc.oneof({ weight: 11, arbitrary: good(schema, find, depth) }, spoilt)
}

function good(schema: Schema, find: (ref: string) => Schema, depth: number): fc.Arbitrary<unknown> {
  const next = (inner: Schema) => fromSchema(inner, find, depth + 1)
  if (schema.$ref) return good(find(schema.$ref), find, depth + 1)
  if ('const' in schema) return fc.constant(schema.const)
  if (schema.enum) return fc.constantFrom(...schema.enum)
  const some = schema.anyOf ?? schema.oneOf ?? schema.allOf
  if (some) return fc.oneof(...some.map(next))
  const [type] = [schema.type].flat()
  if (type === 'object' || schema.properties) return objectOf(schema, next)
  if (type === 'array') {
    if (schema.prefixItems) return fc.tuple(...schema.prefixItems.map(next))
    return fc.array(schema.items ? next(schema.items) : ODD, { maxLength: schema.maxItems ?? 5 })
  }
  return scalarOf(type, schema)
}

function objectOf(schema: Schema, next: (inner: Schema) => fc.Arbitrary<unknown>) {
  const own = Object.entries(schema.properties ?? {}).map(([key, inner]) => [key, next(inner)])
  const known = fc.record(Object.fromEntries(own), { requiredKeys: [] })
  const more = schema.additionalProperties
  if (typeof more !== 'object') return known
  return fc
    .tuple(known, fc.dictionary(fc.string({ maxLength: 12 }), next(more), { maxKeys: 3 }))
    .map(([first, second]) => ({ ...second, ...first }))
}

function scalarOf(type: unknown, { minimum = -1e6, maximum = 1e6, maxLength = 60 }: Schema) {
  switch (type) {
    case 'boolean':
      return fc.boolean()
    case 'integer':
      return fc.integer({ min: Math.ceil(minimum), max: Math.floor(maximum) })
    case 'number':
      return fc.double({ min: minimum, max: maximum, noNaN: true })
    case 'null':
      return fc.constant(null)
    case 'string':
      return fc.string({ unit: 'binary', maxLength: Math.min(maxLength, 200) })
    default:
      return fc.jsonValue({ maxDepth: 2 })
  }
}
