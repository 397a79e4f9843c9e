/**
 * The custom element that a shop puts on its page: `<mainstay-guide shop="…">`. It
 * shows the guide in a frame as high as its page, and tells the host what happens in
 * it by events: `ready`, `answer`, `call`. It writes no markup and no style text, so a
 * strict content policy needs `script-src` and `frame-src` for the guide, no more.
 */
import { frameMessage, type Shown } from '../../shared/frame-messages.ts'

const script =
  document.currentScript ?? document.querySelector<HTMLScriptElement>('script[src$="/embed.js"]')
const guide = new URL((script as HTMLScriptElement).src).origin

const FIRST_HEIGHT = 640
const HIGHEST = 30_000
/** A frame that was refused never says so itself. */
const GIVE_UP_AFTER = 15_000

class MainstayGuide extends HTMLElement {
  #frame = document.createElement('iframe')
  #slot = document.createElement('slot')
  #shown: Shown | undefined
  #timer: ReturnType<typeof setTimeout> | undefined

  connectedCallback(): void {
    const root = this.shadowRoot ?? this.attachShadow({ mode: 'open' })
    const frame = this.#frame
    frame.title = this.getAttribute('frame-title') ?? 'Mainstay, a guide to holding the crankshaft'
    frame.allow = 'clipboard-write'
    Object.assign(frame.style, {
      display: 'block',
      width: '100%',
      height: `${FIRST_HEIGHT}px`,
      border: '0',
    })
    frame.src = this.#address()
    // Until the frame speaks, and for good when it is refused: a plain way to the guide.
    const way = document.createElement('a')
    way.href = frame.src
    way.textContent = 'Open the guide on its own page'
    this.#slot.replaceChildren(way)
    this.#slot.hidden = false
    root.replaceChildren(this.#slot, frame)
    this.#shown = undefined
    this.#timer = setTimeout(() => {
      frame.style.display = 'none'
    }, GIVE_UP_AFTER)
    frame.onload = () => frame.contentWindow?.postMessage({ mainstay: 'hello' }, guide)
    addEventListener('message', this)
  }

  disconnectedCallback(): void {
    clearTimeout(this.#timer)
    removeEventListener('message', this)
  }

  /** Only what comes from the guide, and from this element's own frame. */
  handleEvent(event: MessageEvent): void {
    if (event.origin !== guide || event.source !== this.#frame.contentWindow) return
    const message = frameMessage(event.data)
    if (!message) return
    if (message.mainstay === 'height') {
      const height = Math.min(HIGHEST, Math.max(0, Math.ceil(message.height)))
      this.#frame.style.height = `${height}px`
    } else this.#tell(message)
  }

  #address(): string {
    const own = new URLSearchParams({ shop: this.getAttribute('shop') ?? '' })
    const units = this.getAttribute('units')
    if (units) own.set('units', units)
    const answers = this.getAttribute('answers')
    return `${guide}/embed?${answers ? `${answers.replace(/^\?/, '')}&` : ''}${own}`
  }

  #tell(now: Shown): void {
    const before = this.#shown
    this.#shown = now
    const { shop, link, answers, page, route, confidence, sentence } = now
    if (!before) {
      clearTimeout(this.#timer)
      this.#slot.hidden = true
      this.#frame.style.display = 'block'
      this.#dispatch('ready', { shop, link, answers })
    } else {
      if (before.link !== link) this.#dispatch('answer', { shop, link, answers })
      // A new page begins at its top, which may be above the window now.
      if (before.page !== page && this.getBoundingClientRect().top < 0) this.scrollIntoView()
    }
    const isNews = before?.link !== link || before.route !== route
    if (route !== undefined && isNews) {
      this.#dispatch('call', { shop, link, route: route || null, confidence, sentence })
    }
  }

  #dispatch(name: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true }))
  }
}

if (!customElements.get('mainstay-guide')) customElements.define('mainstay-guide', MainstayGuide)
