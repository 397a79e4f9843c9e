import { z } from 'zod'
import { describeFound, type Problem } from '../../shared/problem.ts'
import { type Field, type Fields, type Given, refuse, type Values } from './fields.ts'

/** Several of the same, such as the lines of a price. */
export function list<F extends Fields>(
  label: string,
  fields: F,
  {
    least,
    most,
    row,
    open = Object.keys(fields),
  }: { least: number; most: number; row: string; open?: readonly string[] },
  help = '',
): Field<readonly Values<F>[]> {
  const schema = rowSchema(fields)
  return {
    label,
    help,
    required: least > 0,
    control: { type: 'list', fields, rows: most, row, open },
    schema: z.array(schema).min(least).max(most),
    read(raw, at) {
      if (!Array.isArray(raw) || raw.length < least || raw.length > most) {
        return refuse(at, 'wrong-shape', raw, `give a list of ${least} to ${most}`)
      }
      const values: Values<F>[] = []
      const given: Record<string, Given>[] = []
      for (const [index, entry] of raw.entries()) {
        const read = readRecord(fields, entry, `${at}.${index}`)
        if (read.problems[0]) return { problem: read.problems[0] }
        values.push(read.values as Values<F>)
        given.push(read.given)
      }
      return { ok: { value: values, given } }
    },
  }
}

function rowSchema(fields: Fields) {
  return z.strictObject(
    Object.fromEntries(
      Object.entries(fields).map(([key, field]) => [
        key,
        field.required ? field.schema : field.schema.optional(),
      ]),
    ),
  )
}

/** Inputs as they were read: values for the mechanics, and what was given. */
export interface ReadRecord {
  readonly values: Readonly<Record<string, unknown>>
  readonly given: Record<string, Given>
  readonly problems: readonly Problem[]
}

/**
 * Read a record of raw inputs, strictly: an unknown key, a missing or a bad figure each give a
 * problem that names its place.
 */
export function readRecord(fields: Fields, raw: unknown, at = ''): ReadRecord {
  const place = (key: string): string => (at === '' ? key : `${at}.${key}`)
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    const { problem } = refuse(at || 'body', 'wrong-shape', raw, 'give an object of inputs')
    return { values: {}, given: {}, problems: [problem] }
  }
  const keys = Object.keys(fields)
  const problems: Problem[] = Object.keys(raw)
    .filter((key) => !keys.includes(key))
    .map((key) => ({
      field: describeFound(place(key)),
      code: 'unknown-field',
      found: describeFound(key),
      fits: `use only ${keys.join(', ')}`,
    }))
  const values: Record<string, unknown> = {}
  const given: Record<string, Given> = {}
  for (const [key, field] of Object.entries(fields)) {
    const found = (raw as Record<string, unknown>)[key]
    if (found === undefined && !field.required) continue
    const read = field.read(found === undefined ? '' : found, place(key))
    if ('problem' in read) problems.push(read.problem)
    else {
      values[key] = read.ok.value
      given[key] = read.ok.given
    }
  }
  return { values, given, problems }
}
