/** Exchanging the parts of the page that the server wrote anew, and where the focus goes then. */

const PARTS = ['header.plate', 'main', 'footer.foot']
/** In the order in which a person expects to be led to them. */
const AFTER_REFUSAL = ['#error-summary', '#question']
const AFTER_ANSWER = ['#heard', '#what-if', '#question', 'main h1']

/** Put the parts of another page in place of this one's; false when it is no page of ours. */
export function swap(text: string): boolean {
  const next = new DOMParser().parseFromString(text, 'text/html')
  const pairs = PARTS.map((part) => [document.querySelector(part), next.querySelector(part)])
  if (pairs.some((pair) => pair.includes(null))) return false
  for (const [old, fresh] of pairs) old?.replaceWith(fresh as Element)
  document.title = next.title
  return true
}

/** Lead the focus to what is new, which a screen reader then reads; false when there is nothing. */
export function focusAfter(isAccepted: boolean): boolean {
  const places = isAccepted ? AFTER_ANSWER : AFTER_REFUSAL
  const place = places.map((one) => document.querySelector<HTMLElement>(one)).find(Boolean)
  if (!place) return false
  if (!place.hasAttribute('tabindex')) place.setAttribute('tabindex', '-1')
  place.focus({ preventScroll: true })
  place.scrollIntoView({ block: isOnScreen(place) ? 'nearest' : 'start' })
  return true
}

/** On screen and with room below for what belongs to it. */
function isOnScreen(place: HTMLElement): boolean {
  const { top, bottom } = place.getBoundingClientRect()
  return top >= 0 && bottom <= innerHeight * 0.6
}

/** What stands in the free text box while another form is sent. */
export function keptDraft(sent: HTMLFormElement): string {
  const box = document.querySelector<HTMLTextAreaElement>('#text')
  return box && box.form !== sent ? box.value : ''
}

/** Put a draft back into the free text box, unless something stands there. */
export function restoreDraft(draft: string): void {
  const box = document.querySelector<HTMLTextAreaElement>('#text')
  if (box && draft !== '' && box.value === '') box.value = draft
}
