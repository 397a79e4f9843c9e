/** Makes the call's link copy itself; without this script, or without leave, it is a plain link. */
const COPIES = 'a[data-copy-link]'

for (const link of document.querySelectorAll(COPIES)) {
  if (navigator.clipboard) link.textContent = 'Copy the link'
}

document.addEventListener('click', (event) => {
  const link = event.target instanceof Element ? event.target.closest(COPIES) : null
  const plain = !(event.ctrlKey || event.metaKey || event.shiftKey || event.altKey)
  if (!(link instanceof HTMLAnchorElement) || !plain || !navigator.clipboard) return
  event.preventDefault()
  navigator.clipboard.writeText(link.href).then(
    () => say('The link is copied.'),
    () => (link.target === '_blank' ? open(link.href) : location.assign(link.href)),
  )
})

function say(words: string): void {
  const place = document.querySelector('[data-copy-said]')
  if (place) place.textContent = words
}
