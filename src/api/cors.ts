import { cors } from 'hono/cors'

/**
 * Any page may call the API: it holds no session, so a page learns nothing by it that
 * its visitor did not send. Cookies are never allowed.
 *
 * @see Fetch Standard, CORS protocol
 */
export const apiCors = cors({
  origin: '*',
  allowMethods: ['GET', 'POST', 'OPTIONS'],
  allowHeaders: ['content-type'],
  exposeHeaders: ['allow', 'retry-after'],
  maxAge: 86_400,
})
