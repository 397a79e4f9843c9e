/** Caches of the pages a person opened and of what those pages are drawn with. */
export const PAGES = 'mainstay-pages-1'
const ASSETS = 'mainstay-assets-1'
const MOST_PAGES = 80
const MOST_ASSETS = 60
const LONGEST_TITLE = 200

/** Marks a kept page with its title, for the list of what is kept. */
export const TITLE_HEADER = 'x-kept-title'

const KEPT =
  /^\/(?:(?:call|sheet|check-in|compare|method|offline)?$|(?:learn|worksheets|rules|presets)(?:\/|$))/
const ASSET = /\/assets\/[\w-]+\.[\w.]+/g

/** Whether an address is a page that is kept. Those in a shop's frame are not: it is the shop's. */
export function isKept({ pathname, searchParams }: URL): boolean {
  return KEPT.test(pathname) && !searchParams.has('shop')
}

/**
 * Keep a page, and what it is drawn with. Only whole good pages of ours are kept, under the
 * address that they came from in the end; the one opened longest ago gives way.
 *
 * @param response - a copy of it; it is read to its end
 */
export async function keepPage(response: Response): Promise<void> {
  const type = response.headers.get('content-type') ?? ''
  const url = new URL(response.url)
  url.hash = ''
  const ours = response.type === 'basic' && isKept(url)
  if (response.status !== 200 || !ours || !type.startsWith('text/html')) return
  const text = await response.text()
  const title = /<title>([^<]*)<\/title>/.exec(text)?.[1] ?? ''
  const headers = new Headers(response.headers)
  headers.set(TITLE_HEADER, encodeURIComponent(title.slice(0, LONGEST_TITLE)))
  await put(PAGES, MOST_PAGES, url.href, new Response(text, { headers }))
  await Promise.all((text.match(ASSET) ?? []).map((path) => keptAsset(path)))
}

/** A built asset: its name holds its content's hash, so one that is kept is never old. */
export async function keptAsset(path: string): Promise<Response> {
  const kept = await (await caches.open(ASSETS)).match(path)
  if (kept) return kept
  const response = await fetch(path)
  if (response.status === 200) await put(ASSETS, MOST_ASSETS, path, response.clone())
  return response
}

async function put(name: string, most: number, key: string, response: Response): Promise<void> {
  const cache = await caches.open(name)
  // Put again at the end, so that the first is the one used longest ago.
  await cache.delete(key)
  await cache.put(key, response)
  const keys = await cache.keys()
  await Promise.all(keys.slice(0, Math.max(0, keys.length - most)).map((old) => cache.delete(old)))
}
