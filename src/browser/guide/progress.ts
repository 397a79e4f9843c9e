/** What is said and shown while an answer is on its way, and when it does not arrive. */

const NOTICE_ID = 'failure-notice'
/** Below this an answer feels immediate, and a flash of progress would only disturb. */
const SHOW_WAITING_AFTER = 250

const live = document.createElement('p')
live.className = 'unseen'
live.setAttribute('role', 'status')
const line = document.createElement('div')
line.className = 'waiting-line'
line.setAttribute('aria-hidden', 'true')
document.body.append(live, line)

let timer: ReturnType<typeof setTimeout> | undefined

/** Speak one message politely; never together with a move of the focus. */
export function announce(message: string): void {
  live.textContent = ''
  // Two steps, so that the same words are spoken again.
  requestAnimationFrame(() => {
    live.textContent = message
  })
}

/** Show that an answer is awaited, after a short while only; take it away at once. */
export function setWaiting(isWaiting: boolean): void {
  clearTimeout(timer)
  const set = () => {
    document.body.classList.toggle('waiting', isWaiting)
    document.querySelector('main')?.setAttribute('aria-busy', String(isWaiting))
  }
  if (isWaiting) timer = setTimeout(set, SHOW_WAITING_AFTER)
  else set()
}

/** Say that nothing came back, keep all that was typed, and offer to try again. */
export function failureNotice(isOnline: boolean, retry: () => void): void {
  const words = isOnline
    ? 'The guide did not answer. Nothing is lost: your answers are in this page’s link, and what you typed is still here.'
    : 'There is no connection. Nothing is lost: your answers are in this page’s link, and what you typed is still here.'
  const notice = document.createElement('div')
  notice.id = NOTICE_ID
  notice.className = 'notice caution failure'
  const text = document.createElement('p')
  text.textContent = words
  const button = document.createElement('button')
  button.type = 'button'
  button.textContent = 'Try again'
  button.addEventListener('click', retry)
  notice.append(text, button)
  // Beside the form that failed, so that the keyboard reaches it next; it floats, and moves nothing.
  const form = document.activeElement?.closest('form')
  if (form) form.after(notice)
  else document.querySelector('main')?.append(notice)
  announce(words)
}

/** Take away the notice of a failure, if there is one. */
export function removeNotice(): void {
  document.getElementById(NOTICE_ID)?.remove()
}
