/**
 * The query of a link that a person pastes: a whole address, its end from the `?` on, or
 * the bare answers. A place on the page (`#…`) is left out.
 */
export function queryOfLink(text: string): string {
  const [bare = ''] = text.trim().split('#')
  const mark = bare.indexOf('?')
  if (mark >= 0) return bare.slice(mark + 1)
  return bare.includes('=') ? bare : ''
}

/** The preset that a link names by its path, such as `/preset/twin-turbo`; undefined when none. */
export function presetOfLink(text: string): string | undefined {
  return /(?:^|\/)preset\/([a-z0-9-]+)\/?(?:[?#]|$)/.exec(text.trim())?.[1]
}
