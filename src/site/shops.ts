import { Hono } from 'hono'
import type { AppDeps } from '../api/deps.ts'

export function shopRoutes(_deps: AppDeps): Hono {
  return new Hono()
}
