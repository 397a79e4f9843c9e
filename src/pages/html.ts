import { html, raw } from 'hono/html'

/** A piece of a page. A promise only if a part of it is one. */
export type Html = ReturnType<typeof html>

/** Nothing, where a template needs a piece of page. */
export const NOTHING: Html = raw('')

/** One piece for each item of a list. */
export function each<T>(items: readonly T[], piece: (item: T, index: number) => Html): Html[] {
  return items.map(piece)
}

export { html, raw }
