import type { Context } from 'hono'
import { createMiddleware } from 'hono/factory'
import type { AppDeps } from '../api/deps.ts'

declare module 'hono' {
  interface ContextVariableMap {
    /** Names one request in the log, in its answer's header, and on the page of a fault. */
    requestId: string
  }
}

/** The path alone, also where a client has encoded the mark that a query, with its answers, begins at. */
export function pathOf(c: Context): string {
  return c.req.path.split(/%3f|%23|\?|#/i)[0] as string
}

/**
 * One structured line for each request: id, method, path without its query (which
 * holds answers), status and time taken. Assets and health checks are left out.
 */
export function requestLog({ log, clock }: Pick<AppDeps, 'log' | 'clock'>, logEach: boolean) {
  return createMiddleware(async (c, next) => {
    const id = crypto.randomUUID()
    c.set('requestId', id)
    const started = clock()
    await next()
    c.res.headers.set('x-request-id', id)
    const path = pathOf(c)
    const { method } = c.req
    if (!logEach || path.startsWith('/assets/') || path === '/healthz') return
    log({
      level: 'info',
      id,
      method,
      path,
      status: c.res.status,
      ms: Math.round(clock() - started),
    })
  })
}
