/**
 * In the frame: tells a host that the shop allows what the page shows and how high it
 * is. Opened on its own, or by anyone else, it says nothing.
 */
import { type FrameMessage, isHello } from '../../shared/frame-messages.ts'

const { shop = '', origins = '' } = document.body.dataset
/** Growths in a row that nothing on the page explains; a page that follows its own frame stops here. */
const MOST_GROWTHS = 8

let host: string | undefined
let shownBefore = ''
let height = 0
let width = 0
let growths = 0

addEventListener('message', (event) => {
  if (parent === window || event.source !== parent || !isHello(event.data)) return
  if (!allowed(event.origin)) return
  host = event.origin
  shownBefore = ''
  height = 0
  tellShown()
  tellHeight()
})

new MutationObserver(() => {
  growths = 0
  tellShown()
}).observe(document.body, { childList: true, subtree: true, attributes: true })
new ResizeObserver(tellHeight).observe(document.body)

/** As in the page's own frame-ancestors: exact, but any port where the shop left it open. */
function allowed(origin: string): boolean {
  return origins.split(' ').some((one) => {
    if (!one.endsWith(':*')) return origin === one
    const bare = one.slice(0, -2)
    return origin === bare || (origin.startsWith(`${bare}:`) && /:\d+$/.test(origin))
  })
}

function tell(message: FrameMessage): void {
  if (host) parent.postMessage(message, host)
}

function tellShown(): void {
  const state = document.querySelector<HTMLElement>('#frame-state')
  if (!state || !host) return
  const { page = '', link = '', answers, route, confidence, sentence } = state.dataset
  const shown = { shop, page, link, answers: Number(answers), route, confidence, sentence }
  const text = JSON.stringify(shown)
  if (text === shownBefore) return
  shownBefore = text
  tell({ mainstay: 'shown', ...shown })
}

/** The height of what is on the page, never of the window: the window is what follows it. */
function tellHeight(): void {
  const next = Math.ceil(document.body.getBoundingClientRect().height)
  if (!host || Math.abs(next - height) <= 1) return
  if (innerWidth !== width) growths = 0
  growths = next > height ? growths + 1 : 0
  width = innerWidth
  if (growths > MOST_GROWTHS) return
  height = next
  tell({ mainstay: 'height', height: next })
}
