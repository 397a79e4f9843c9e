import { Hono } from 'hono'
import type { AppDeps } from './deps.ts'
import { guardMethods } from './method-guard.ts'
import { openApi } from './openapi.ts'
import type { Operation } from './operation.ts'
import { OPERATIONS } from './operations.ts'
import { readBody } from './read-request.ts'

/** JSON in and out: calls what the pages call, nothing more. */
export function apiRoutes(deps: AppDeps, operations: readonly Operation[] = OPERATIONS): Hono {
  const api = new Hono()
  for (const { method, path, body: schema, answer } of operations) {
    if (method === 'get' || !schema) {
      api.get(path, (c) => answer(deps, c, undefined))
      continue
    }
    api.post(path, async (c) => {
      const body = await readBody(c, schema, deps.rulebook)
      return 'refusal' in body ? body.refusal : answer(deps, c, body.ok)
    })
  }
  // Written once, when somebody first asks: every shop's frame has an API of its own.
  let description: string | undefined
  api.get('/openapi.json', (c) => {
    description ??= JSON.stringify(openApi(operations, deps.rulebook.version))
    return c.body(description, 200, { 'content-type': 'application/json; charset=utf-8' })
  })
  guardMethods(api, [...operations, { method: 'get', path: '/openapi.json' }])
  return api
}
