/** Lets a button copy the text beside it; without this script the text is selected and copied by hand. */
for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-copy-from]')) {
  button.hidden = !navigator.clipboard
}

document.addEventListener('click', (event) => {
  const button = event.target instanceof Element ? event.target.closest('[data-copy-from]') : null
  if (!(button instanceof HTMLButtonElement)) return
  const field = document.getElementById(button.dataset.copyFrom ?? '')
  if (!(field instanceof HTMLTextAreaElement)) return
  navigator.clipboard.writeText(field.value).then(
    () => say('Copied.'),
    () => field.select(),
  )
})

function say(words: string): void {
  const place = document.querySelector('[data-copy-said]')
  if (place) place.textContent = words
}
