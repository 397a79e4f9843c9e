/**
 * Saves the page loads of the guide. The server's pages are the only source of what is
 * shown: a form is posted or a link is followed by fetch, and the page's own parts are
 * exchanged for those that come back. Without this script the same forms post as usual.
 */
import { announce, failureNotice, removeNotice, setWaiting } from './guide/progress.ts'
import { focusAfter, keptDraft, restoreDraft, swap } from './guide/swap.ts'

let latest = 0
let shown = location.href.split('#')[0]

document.addEventListener('submit', (event) => {
  const form = event.target
  if (!(form instanceof HTMLFormElement) || !form.matches('form[data-guide]')) return
  event.preventDefault()
  void post(form, event.submitter)
})

document.addEventListener('click', (event) => {
  const link = event.target instanceof Element ? event.target.closest('a[data-guide]') : null
  if (!(link instanceof HTMLAnchorElement) || !isPlainClick(event)) return
  event.preventDefault()
  void show(() => fetch(link.href, asHtml()), link.href, 'push')
})

addEventListener('popstate', () => {
  const href = location.href
  // A step inside the page, such as the error summary's link, needs no fetch.
  if (href.split('#')[0] === shown) return
  void show(() => fetch(href, asHtml()), href, 'stay')
})

function isPlainClick(event: MouseEvent): boolean {
  const { button, ctrlKey, metaKey, shiftKey, altKey } = event
  return button === 0 && !(ctrlKey || metaKey || shiftKey || altKey || event.defaultPrevented)
}

function asHtml(): RequestInit {
  return { headers: { accept: 'text/html' }, credentials: 'same-origin' }
}

async function post(form: HTMLFormElement, submitter: HTMLElement | null): Promise<void> {
  const fields = new URLSearchParams()
  for (const [name, value] of new FormData(form, submitter)) fields.append(name, String(value))
  const request = () => fetch(form.action, { ...asHtml(), method: 'POST', body: fields })
  await show(request, undefined, 'push', keptDraft(form))
}

/** Ask for a page and show it; the latest request wins, and a failure loses nothing. */
async function show(
  request: () => Promise<Response>,
  fallback: string | undefined,
  history: 'push' | 'stay',
  draft = '',
): Promise<void> {
  const turn = ++latest
  removeNotice()
  setWaiting(true)
  try {
    const response = await request()
    const text = await response.text()
    if (turn !== latest) return
    if (response.status >= 500 || !isHtml(response)) throw new Error(`status ${response.status}`)
    if (new URL(response.url).pathname !== location.pathname) {
      location.assign(response.url)
      return
    }
    render(text, response, history, draft)
  } catch {
    if (turn !== latest) return
    const retry = () => void show(request, fallback, history, draft)
    failureNotice(navigator.onLine, retry)
  } finally {
    if (turn === latest) setWaiting(false)
  }
}

function isHtml(response: Response): boolean {
  return response.headers.get('content-type')?.includes('text/html') ?? false
}

function render(text: string, response: Response, history: 'push' | 'stay', draft: string): void {
  if (!swap(text)) {
    location.assign(response.url)
    return
  }
  // A refused answer comes back from the address it was posted to: the link stays as it was.
  if (history === 'push' && response.ok && response.url !== location.href) {
    window.history.pushState(null, '', response.url)
  }
  shown = location.href.split('#')[0]
  restoreDraft(draft)
  if (!focusAfter(response.ok)) announce(document.title)
}
