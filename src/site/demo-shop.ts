import type { Context } from 'hono'
import type { AppDeps } from '../api/deps.ts'
import { originOf } from '../api/origin-of.ts'

/** The guide's address and another one of the same server, on which the invented shop stands. */
export interface DemoPlaces {
  readonly guide: string
  readonly demo: string
}

/** A machine's two names for itself; a browser takes them for two sites. */
const TWINS: Readonly<Record<string, string>> = { '127.0.0.1': 'localhost', localhost: '127.0.0.1' }

/** Both addresses, seen from a request to either; undefined when this server has only one. */
export function demoPlaces(
  deps: Pick<AppDeps, 'origin' | 'demoOrigin'>,
  c: Context,
): DemoPlaces | undefined {
  const here = new URL(c.req.url)
  const isDemoPage = here.pathname.endsWith('/demo')
  if (deps.demoOrigin && deps.origin) return { guide: deps.origin, demo: deps.demoOrigin }
  const twin = TWINS[here.hostname]
  if (!twin) return undefined
  const other = new URL(here.origin)
  other.hostname = twin
  const own = originOf(deps, c)
  return isDemoPage ? { guide: other.origin, demo: own } : { guide: own, demo: other.origin }
}

/** As strict as a host can be: the guide's script and its frame, and nothing else from elsewhere. */
export function demoPolicy({ guide }: DemoPlaces): string {
  return [
    "default-src 'none'",
    `script-src 'self' ${guide}`,
    "style-src 'self'",
    "font-src 'self'",
    "img-src 'self' data:",
    `frame-src ${guide}`,
    "form-action 'none'",
    "base-uri 'none'",
    `frame-ancestors ${guide}`,
  ].join('; ')
}
