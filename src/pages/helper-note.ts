import { fact } from '../../shared/fact-keys.ts'
import type { ConversationView, Helper } from './conversation-view.ts'
import { each, type Html, html, NOTHING } from './html.ts'

/** Who set answers before the person came, which ones while none is the person's own, and the note. */
export function helperNote({
  helper,
  exchanges,
}: Pick<ConversationView, 'helper' | 'exchanges'>): Html {
  if (!helper) return NOTHING
  const set = exchanges.filter(({ origin }) => origin === 'helper')
  return html`<section class="notice plain helper-note" aria-labelledby="helper-note">
<h2 id="helper-note">${title(helper, set.length)}</h2>
${helper.note === '' ? NOTHING : html`<blockquote class="said">${helper.note}</blockquote>`}
${set.length === 0 ? NOTHING : html`<ul class="chips">${each(set, ({ fact: key, answer, changeHref }) => html`<li><a class="chip is-said" href="${changeHref}" data-guide><span class="unseen">Change </span><span>${fact(key).short}</span> <span class="figure-text">${answer}</span></a></li>`)}</ul>`}
<p class="hint">${hint(helper, set.length)}</p>
</section>`
}

function title({ kind, who }: Helper, count: number): string {
  if (kind === 'shop') return `Set by ${who}`
  if (count === 0) return 'A note from your helper'
  return count === 1 ? 'Your helper set one answer' : `Your helper set ${count} answers`
}

function hint({ kind, note }: Helper, count: number): string {
  const words =
    note === '' ? '' : 'The note is in the helper’s own words; the guide does not read it. '
  if (count === 0) return words.trim()
  const change = 'Press one to change it; what is left open, the guide asks you.'
  return kind === 'shop' ? change : `${words}${change}`
}
