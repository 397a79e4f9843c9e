export type UnitSystem = 'us' | 'metric'

/**
 * Address of a page that keeps the case and the person's units.
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
  const [bare = '', place] = path.split('#')
  const extra = new URLSearchParams(own)
  // US units are what a link without the word means, so most links stay short.
  if (units === 'metric') extra.set('units', units)
  const query = [link, extra.toString()].filter((part) => part !== '').join('&')
  return `${bare}${query === '' ? '' : `?${query}`}${place === undefined ? '' : `#${place}`}`
}
