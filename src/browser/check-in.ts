import { draftOf, forget, type Kept, keep } from './check-in/draft.ts'
import { moveByKey, pasteBlock } from './check-in/grid.ts'

/** The check-in with script: judged while one types, cells by keyboard and paste, nothing lost. */
const PAUSE = 600

for (const button of document.querySelectorAll<HTMLButtonElement>('[data-print]')) {
  button.hidden = false
  button.addEventListener('click', () => window.print())
}

const form = document.querySelector<HTMLFormElement>('form[data-measured]')
if (form) start(form)

/** Wire the form: judge a little after the last key, on Ctrl and Enter, and on sending. */
function start(form: HTMLFormElement): void {
  let waiting: ReturnType<typeof setTimeout> | undefined
  const judge = judgeOf(form)
  form.addEventListener('input', () => {
    keep(form)
    showUnit(form)
    clearTimeout(waiting)
    waiting = setTimeout(judge, PAUSE)
  })
  form.addEventListener('keydown', (event) => moveByKey(event, form))
  form.addEventListener('paste', (event) => pasteBlock(event, form))
  form.addEventListener('submit', (event) => {
    // What stands in the box for tables is put into cells by the server, so the page is loaded anew.
    const box = form.querySelector<HTMLTextAreaElement>('#paste')
    if (box && box.value.trim() !== '') {
      forget(form)
      return
    }
    event.preventDefault()
    clearTimeout(waiting)
    void judge().then(() => document.querySelector<HTMLElement>('#verdict')?.scrollIntoView())
  })
  document.addEventListener('click', (event) => {
    if (event.target instanceof Element && event.target.closest('[data-instead]')) forget(form)
  })
  clearing(form)
  bringBack(form)
}

/** Asks the server for the verdict; a later question takes the place of one still out. */
function judgeOf(form: HTMLFormElement): () => Promise<void> {
  let running: AbortController | undefined
  return async () => {
    running?.abort()
    const own = new AbortController()
    running = own
    say(form, 'Judging …')
    try {
      const body = new URLSearchParams([...new FormData(form)].map(([k, v]) => [k, String(v)]))
      const response = await fetch(form.action, { method: 'POST', body, signal: own.signal })
      if (!response.ok) throw new Error(String(response.status))
      const fresh = new DOMParser().parseFromString(await response.text(), 'text/html')
      take(fresh, form, response.url)
      keep(form)
      say(form, document.querySelector('#verdict')?.textContent ?? '')
    } catch (error) {
      if (own.signal.aborted) return
      const cause = error instanceof TypeError ? 'The guide cannot be reached' : 'That did not work'
      say(form, `${cause}. Your readings are kept in this browser.`)
    }
  }
}

/** Results, links, the case and the address out of the answer; the form's own cells stay. */
function take(fresh: Document, form: HTMLFormElement, url: string): void {
  for (const part of document.querySelectorAll<HTMLElement>('[data-results]')) {
    const other = fresh.querySelector(`[data-results="${part.dataset.results}"]`)
    if (other) swapKeepingOpen(part, other)
  }
  for (const selector of ['a[data-csv]', 'nav.units a', '.actions a']) {
    const others = fresh.querySelectorAll<HTMLAnchorElement>(selector)
    document.querySelectorAll<HTMLAnchorElement>(selector).forEach((link, place) => {
      const href = others[place]?.getAttribute('href')
      if (href && !link.closest('[data-results]')) link.setAttribute('href', href)
    })
  }
  const state = fresh.querySelector<HTMLInputElement>('form[data-measured] [name="state"]')
  const own = form.querySelector<HTMLInputElement>('[name="state"]')
  if (state && own) own.value = state.value
  history.replaceState(null, '', url)
}

/** What a person has unfolded stays so. */
function swapKeepingOpen(part: HTMLElement, other: Element): void {
  const summaries = part.querySelectorAll('details[open] > summary')
  const open = new Set([...summaries].map((one) => one.textContent))
  part.replaceChildren(...document.importNode(other, true).childNodes)
  for (const summary of part.querySelectorAll('details > summary')) {
    if (open.has(summary.textContent)) summary.parentElement?.setAttribute('open', '')
  }
}

/** Readings that this browser kept: put back where nothing stands, offered where others do. */
function bringBack(form: HTMLFormElement): void {
  const kept = draftOf(form)
  const place = form.querySelector<HTMLElement>('[data-kept]')
  if (!kept || !place) return
  const isEmpty = [...new FormData(form)].every(([name, value]) => {
    return name === 'm-unit' || !Object.hasOwn(kept.fields, name) || value === ''
  })
  if (isEmpty || kept.at === location.search) {
    fill(form, kept)
    if (isEmpty) tell(place, 'Your readings are back, as this browser kept them.')
    return
  }
  const button = document.createElement('button')
  button.type = 'button'
  button.textContent = 'Bring them back'
  button.addEventListener('click', () => {
    fill(form, kept)
    place.hidden = true
  })
  tell(place, 'This browser keeps other readings of this case. ', button)
}

function tell(place: HTMLElement, ...parts: (string | Node)[]): void {
  place.replaceChildren(...parts)
  place.hidden = false
}

function fill(form: HTMLFormElement, { fields }: Kept): void {
  for (const [name, value] of Object.entries(fields)) {
    const found = form.elements.namedItem(name)
    if (found instanceof RadioNodeList || found instanceof HTMLInputElement) found.value = value
    if (found instanceof HTMLSelectElement) found.value = value
  }
  form.dispatchEvent(new Event('input'))
}

function clearing(form: HTMLFormElement): void {
  const button = form.querySelector<HTMLButtonElement>('[data-clear]')
  if (!button) return
  button.hidden = false
  button.addEventListener('click', () => {
    if (!window.confirm('Clear every reading of this case, here and in this browser?')) return
    for (const cell of form.querySelectorAll<HTMLInputElement>('input[inputmode]')) cell.value = ''
    for (const select of form.querySelectorAll('select')) select.selectedIndex = 0
    forget(form)
    form.dispatchEvent(new Event('input'))
    forget(form)
  })
}

function showUnit(form: HTMLFormElement): void {
  const unit = new FormData(form).get('m-unit')
  for (const place of form.querySelectorAll('[data-unit]')) place.textContent = String(unit ?? '')
}

function say(form: HTMLFormElement, words: string): void {
  const place = form.querySelector('[data-status]')
  if (place) place.textContent = words
}
