import { type Html, html } from './html.ts'

/** A longer text scrolls. */
const MOST_ROWS = 14

/** A text to take along: a field to read and select, and a button where the browser can copy. */
export function textToCopy(view: { id: string; label: string; text: string }): Html {
  const { id, label, text } = view
  const rows = Math.min(MOST_ROWS, text.split('\n').length + 1)
  return html`<div class="field text-to-copy">
<label for="${id}">${label}</label>
<textarea id="${id}" rows="${rows}" readonly spellcheck="false">${text}</textarea>
<button type="button" data-copy-from="${id}" hidden>Copy<span class="unseen">: ${label}</span></button>
</div>`
}

/** Where the copying is confirmed, once on a page. */
export function copySaid(): Html {
  return html`<p class="hint" role="status" data-copy-said></p>`
}
