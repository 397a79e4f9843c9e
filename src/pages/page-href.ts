/** The system that a person reads figures in. */
export type UnitSystem = 'us' | 'metric'

/** The part of a link that says in which shop's frame a case stands; '' outside of any. */
export function shopPart(link: string): string {
  return /(?:^|&)(shop=[a-z0-9-]+)/.exec(link)?.[1] ?? ''
}

/** Where the guide's forms post to: the guide, or the guide in the same shop's frame. */
export function guideAction(link: string): string {
  const shop = shopPart(link)
  return shop === '' ? '/' : `/embed?${shop}`
}

/**
 * Address of a page that keeps the case, the shop's frame and the person's units.
 *
 * @param path - such as `/` or `/call`; may end in `#place`
 * @param link - the answers as a query string, without `units` and `ask`
 * @param own - further parameters, such as `ask`
 */
export function pageHref(
  path: string,
  link: string,
  units: UnitSystem,
  own: Readonly<Record<string, string>> = {},
): string {
  const [given = '', place] = path.split('#')
  // Two slashes in front would name another host.
  const named = given.replace(/^[/\\]+/, '/')
  const bare = named === '/' && shopPart(link) !== '' ? '/embed' : named
  const extra = new URLSearchParams(own)
  // US units are what a link without the word means, so most links stay short.
  if (units === 'metric') extra.set('units', units)
  const query = [link, extra.toString()].filter((part) => part !== '').join('&')
  return `${bare}${query === '' ? '' : `?${query}`}${place === undefined ? '' : `#${place}`}`
}
