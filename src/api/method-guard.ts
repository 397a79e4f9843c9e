import type { Hono } from 'hono'
import type { Operation } from './operation.ts'
import { problemResponse } from './problem-response.ts'

/**
 * Refuse every other method on the paths of these operations, with `Allow`. Register
 * it after the operations themselves.
 *
 * @see RFC 9110, HTTP Semantics, sections 10.2.1 (Allow) and 15.5.6 (405)
 */
export function guardMethods(
  api: Hono,
  operations: readonly Pick<Operation, 'method' | 'path'>[],
): void {
  const methods = new Map<string, string[]>()
  for (const { method, path } of operations) {
    const allowed = method === 'get' ? ['GET', 'HEAD'] : ['POST']
    methods.set(path, [...(methods.get(path) ?? []), ...allowed])
  }
  for (const [path, allowed] of methods) {
    const allow = [...allowed, 'OPTIONS'].join(', ')
    api.all(path, (c) => {
      const found = c.req.method.slice(0, 20)
      const fits = `use ${allow}`
      c.header('allow', allow)
      return problemResponse(c, 405, 'method-not-allowed', [
        { field: 'method', code: 'not-a-choice', found, fits },
      ])
    })
  }
}
