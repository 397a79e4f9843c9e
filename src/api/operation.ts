import type { Context } from 'hono'
import type { z } from 'zod'
import type { AppDeps } from './deps.ts'

/** A request that the description shows and the tests send. */
export interface Example {
  readonly name: string
  readonly title: string
  /** JSON body; undefined for GET. */
  readonly body?: unknown
}

interface Described {
  /** Below `/api`. */
  readonly path: `/${string}`
  /** Name for generated clients and for places on the readable page. */
  readonly id: string
  readonly title: string
  /** What it does, in Markdown of plain sentences. */
  readonly text: string
  /** The body as the description shows it, where whoever reads it judges each part itself. */
  readonly shownBody?: z.ZodType
  /** Shape of a 200 answer. */
  readonly response: z.ZodType
  readonly examples: readonly Example[]
}

type Reply = Response | Promise<Response>

/** One thing that the API does: what routes, description, readable page and tests all read. */
export interface Operation extends Described {
  readonly method: 'get' | 'post'
  /** Shape of the body; undefined for GET. */
  readonly body?: z.ZodType
  readonly answer: (deps: AppDeps, c: Context, body: unknown) => Reply
}

/** An operation that reads nothing. */
export function getOperation(
  described: Described & { readonly answer: (deps: AppDeps, c: Context) => Reply },
): Operation {
  return { ...described, method: 'get' }
}

/** An operation that reads a JSON body; `answer` is called with the body after its schema passed. */
export function postOperation<S extends z.ZodType>(
  described: Described & {
    readonly body: S
    readonly answer: (deps: AppDeps, c: Context, body: z.output<S>) => Reply
  },
): Operation {
  const { answer } = described
  return {
    ...described,
    method: 'post',
    answer: (deps, c, body) => answer(deps, c, body as z.output<S>),
  }
}
