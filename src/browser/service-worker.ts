/**
 * Keeps what a person opened, so that it opens again where there is no network. While
 * there is one, every page comes from the server: nothing old is ever shown in its place.
 */
import { isKept, keepPage, keptAsset, PAGES } from './offline/keep.ts'

/** What is used of a service worker's own events; the page's types do not have them. */
interface WorkerEvent extends Event {
  waitUntil(work: Promise<unknown>): void
}
interface RequestEvent extends WorkerEvent {
  readonly request: Request
  respondWith(answer: Promise<Response>): void
}
interface Worker {
  readonly location: Location
  readonly clients: {
    claim(): Promise<void>
    matchAll(options: object): Promise<readonly { readonly url: string }[]>
  }
  skipWaiting(): Promise<void>
  addEventListener(type: 'install' | 'activate', act: (event: WorkerEvent) => void): void
  addEventListener(type: 'fetch', act: (event: RequestEvent) => void): void
}
const worker = self as unknown as Worker

const NO_NETWORK = '/offline'

worker.addEventListener('install', (event) => {
  event.waitUntil(Promise.all([NO_NETWORK, '/'].map(fetchAndKeep)).then(() => worker.skipWaiting()))
})

worker.addEventListener('activate', (event) => {
  event.waitUntil(worker.clients.claim().then(keepOpenPages))
})

worker.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  if (url.origin !== worker.location.origin) return
  if (request.method === 'GET' && url.pathname.startsWith('/assets/')) {
    event.respondWith(keptAsset(url.pathname))
  } else if (request.method === 'GET' && isKept(url)) {
    event.respondWith(networkFirst(event))
  } else if (request.method === 'POST' && request.mode !== 'navigate' && url.pathname === '/') {
    // The guide's script posts an answer and is sent on to the page that follows from it.
    event.respondWith(fetch(request).then((response) => keeping(event, response)))
  }
})

async function networkFirst(event: RequestEvent): Promise<Response> {
  const { request } = event
  try {
    return keeping(event, await fetch(request))
  } catch (error) {
    const cache = await caches.open(PAGES)
    const kept = await cache.match(request.url.split('#')[0] as string)
    if (kept) return kept
    const instead = request.mode === 'navigate' ? await cache.match(NO_NETWORK) : undefined
    if (!instead) throw error
    return new Response(instead.body, { status: 503, headers: instead.headers })
  }
}

function keeping(event: RequestEvent, response: Response): Response {
  // What cannot be kept, on a full disk for one, is no reason to fail the page.
  event.waitUntil(keepPage(response.clone()).catch(() => undefined))
  return response
}

async function fetchAndKeep(path: string): Promise<void> {
  await keepPage(await fetch(path))
}

/** Pages that were opened before this worker was there. */
async function keepOpenPages(): Promise<void> {
  const open = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true })
  const kept = open.map(({ url }) => new URL(url)).filter(isKept)
  await Promise.all(kept.map(({ pathname, search }) => fetchAndKeep(pathname + search)))
}
