import { createMiddleware } from 'hono/factory'
import type { AppDeps } from '../api/deps.ts'

declare module 'hono' {
  interface ContextVariableMap {
    /** Names one request in the log, in its answer's header, and on the page of a fault. */
    requestId: string
  }
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
    const { path, method } = c.req
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
