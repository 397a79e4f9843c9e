import type { z } from 'zod'

/** Kinds of JSON values as a person writes them. */
const KINDS: Readonly<Record<string, string>> = {
  object: 'an object',
  record: 'an object',
  array: 'a list',
  tuple: 'a list',
  string: 'a text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  null: 'null',
}

/**
 * What would fit where a body has another shape than the description says, in our own words:
 * a schema's own message stands before it, the schema library's never comes through.
 *
 * @param issue - what the schema found
 * @returns undefined for a field that nobody knows; its sentence needs the field's name
 */
export function shapeWords(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      return `give ${KINDS[issue.expected] ?? 'a value of the kind that the description says'}`
    case 'invalid_value':
      return `use ${issue.values.map(String).join(', ')}`
    case 'too_big':
      return `give at most ${issue.maximum}${counted(issue.origin)}`
    case 'too_small':
      return `give at least ${issue.minimum}${counted(issue.origin)}`
    case 'unrecognized_keys':
      return undefined
    default:
      return 'give a value as the description of the API says'
  }
}

function counted(origin: string): string {
  if (origin === 'string') return ' characters'
  return origin === 'array' || origin === 'object' ? ' entries' : ''
}
