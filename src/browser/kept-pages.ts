/** Lists on the page for no network what is kept in this browser. */
import { PAGES, TITLE_HEADER } from './offline/keep.ts'

void list()

async function list(): Promise<void> {
  const place = document.querySelector('[data-kept]')
  if (!place || !('caches' in window)) return
  const cache = await caches.open(PAGES)
  for (const request of [...(await cache.keys())].reverse()) {
    const url = new URL(request.url)
    const title = (await cache.match(request))?.headers.get(TITLE_HEADER)
    if (!title || url.pathname === '/offline') continue
    const link = document.createElement('a')
    link.href = url.pathname + url.search
    link.textContent = decodeURIComponent(title).replace(' · Mainstay', '')
    const item = document.createElement('li')
    item.append(link)
    place.append(item)
  }
}
