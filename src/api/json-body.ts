import { eachKey, scanJson } from '../../shared/json-text.ts'
import type { Problem } from '../../shared/problem.ts'
import { describeFound } from '../../shared/problem.ts'

/** Largest body that any endpoint reads, bytes. A whole case is a few kilobytes. */
export const LARGEST_BODY = 64 * 1024

/** Names that must never be a key: they reach into an object's inheritance. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype'])
const DEEPEST = 12
/** More faults than this in one body are no slip; the rest is not listed. */
const MOST_FAULTS = 20

/** A JSON text as a value. `value` beside problems is what could be read in spite of them. */
export type ReadJson =
  | { readonly ok: unknown }
  | { readonly problems: readonly Problem[]; readonly value?: unknown }

/**
 * A JSON text as a value, or the problems with it: not JSON, a key twice, a key
 * that reaches into inheritance, nested too deep.
 */
export function readJson(text: string): ReadJson {
  if (text.trim() === '') return no('', 'send a JSON object')
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return no(text, 'send valid JSON')
  }
  // Depth first: everything after this walks the value and may take it for shallow.
  if (deepest(text) > DEEPEST) return no('deep nesting', `nest at most ${DEEPEST} deep`)
  const problems = keyProblems(text)
  return problems.length > 0 ? { problems, value } : { ok: value }
}

function deepest(text: string): number {
  let depth = 0
  let most = 0
  scanJson(
    text,
    (sign) => {
      if (sign === '{' || sign === '[') most = Math.max(most, ++depth)
      if (sign === '}' || sign === ']') depth--
    },
    () => undefined,
  )
  return most
}

/** Repeated and forbidden keys of a text that is known to be JSON. */
function keyProblems(text: string): Problem[] {
  const problems: Problem[] = []
  eachKey(text, (key, isAgain) => {
    if (FORBIDDEN.has(key)) problems.push(problem(key, 'unknown-field', key, 'leave this key out'))
    else if (isAgain) problems.push(problem(key, 'duplicate', key, 'give each key once'))
  })
  return problems.slice(0, MOST_FAULTS)
}

function problem(field: string, code: Problem['code'], found: string, fits: string): Problem {
  return { field: describeFound(field), code, found: describeFound(found), fits }
}

function no(found: string, fits: string): ReadJson {
  return { problems: [problem('body', 'wrong-shape', found, fits)] }
}
