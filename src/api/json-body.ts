import type { Problem } from '../../shared/problem.ts'
import { describeFound } from '../../shared/problem.ts'

/** Largest body that any endpoint reads, bytes. A whole case is a few kilobytes. */
export const LARGEST_BODY = 64 * 1024

/** Names that must never be a key: they reach into an object's inheritance. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype'])

/**
 * A JSON text as a value, or the problem with it: not JSON, a key twice, a key
 * that reaches into inheritance, nested too deep.
 */
export function readJson(text: string): { ok: unknown } | { problem: Problem } {
  if (text.trim() === '') return no('body', 'wrong-shape', '', 'send a JSON object')
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return no('body', 'wrong-shape', text, 'send valid JSON')
  }
  const key = badKey(text)
  return key ? { problem: key } : { ok: value }
}

const DEEPEST = 12

/** Looks for repeated and forbidden keys in a text that is known to be JSON; JSON.parse drops them silently. */
function badKey(text: string): Problem | undefined {
  const open: (Set<string> | null)[] = []
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]
    if (sign === '{' || sign === '[') {
      open.push(sign === '{' ? new Set() : null)
      if (open.length > DEEPEST) return problem('body', 'wrong-shape', 'deep nesting', 'nest less')
    } else if (sign === '}' || sign === ']') {
      open.pop()
    } else if (sign === '"') {
      const end = endOfString(text, at)
      const keys = open.at(-1)
      if (keys && /^\s*:/.test(text.slice(end + 1, end + 40))) {
        const key = JSON.parse(text.slice(at, end + 1)) as string
        if (FORBIDDEN.has(key)) return problem(key, 'unknown-field', key, 'leave this key out')
        if (keys.has(key)) return problem(key, 'duplicate', key, 'give each key once')
        keys.add(key)
      }
      at = end
    }
  }
  return undefined
}

function endOfString(text: string, start: number): number {
  let at = start + 1
  while (text[at] !== '"') at += text[at] === '\\' ? 2 : 1
  return at
}

function problem(field: string, code: Problem['code'], found: string, fits: string): Problem {
  return { field: describeFound(field), code, found: describeFound(found), fits }
}

function no(
  field: string,
  code: Problem['code'],
  found: string,
  fits: string,
): { problem: Problem } {
  return { problem: problem(field, code, found, fits) }
}
