import type { Context } from 'hono'
import { createMiddleware } from 'hono/factory'

/** Aborts when the one who asked has gone; undefined where that cannot be known. */
export type Client = AbortSignal | undefined

declare module 'hono' {
  interface ContextVariableMap {
    /** Set by {@link noteClient}. */
    client: Client
  }
}

/** What a computation ends with that nobody waits for any more: no fault, and nobody reads it. */
export class GoneError extends Error {
  override readonly name = 'GoneError'
}

/**
 * Note who asks, before anything puts another request in the place of the first. Not for hosts
 * that forbid one request to look at another's: there no computation outlives its request.
 */
export const noteClient = createMiddleware(async (c, next) => {
  c.set('client', c.req.raw.signal)
  await next()
})

/** Who made this request, if that was noted. */
export function clientOf(c: Context): Client {
  return c.get('client')
}

/** Those who wait for one computation. */
export interface Askers {
  add(client: Client): void
  /** Whether one of them is still there; always, once it is done. */
  wanted(): boolean
  /** It is done: nobody need be remembered. */
  done(): void
}

/** The askers of a computation that several may ask for while it is under way. */
export function askers(first: Client): Askers {
  let waiting: Client[] | undefined = [first]
  return {
    add: (client) => void waiting?.push(client),
    wanted: () => waiting?.some((client) => !client?.aborted) ?? true,
    done: () => {
      waiting = undefined
    },
  }
}
