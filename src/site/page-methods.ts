import type { Hono } from 'hono'

/**
 * Methods that the page under a path takes; none where there is no page. What is
 * registered for every method, such as the limits, is no page.
 */
export function methodsOf(app: Hono, path: string): string[] {
  const takes = (method: string): boolean =>
    app.router.match(method, path)[0].some(([[, route]]) => route.method === method)
  return [...(takes('GET') ? ['GET', 'HEAD'] : []), ...(takes('POST') ? ['POST'] : [])]
}
