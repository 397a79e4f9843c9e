import { visibleWords } from '../../shared/visible.ts'
import type { ConversationView, Heard } from './conversation-view.ts'
import { each, type Html, html, NOTHING, raw } from './html.ts'
import { pageHref } from './page-href.ts'

/** After a message in free text: what was taken from it, what was not, and the guide's reply. */
export function heardBack({ heard, compare, link, units }: ConversationView): Html {
  if (!heard) return NOTHING
  return html`<section class="heard" aria-labelledby="heard">
<h2 id="heard" tabindex="-1">${title(heard, compare)}</h2>
${heard.reply === undefined ? NOTHING : html`<div class="prose reply">${raw(heard.reply)}</div>`}
${heard.accepted.length > 0 ? accepted(heard, (key) => pageHref('/', link, units, { ask: key })) : NOTHING}
${heard.unclear.length > 0 ? unclear(heard) : NOTHING}
${heard.canUse === undefined ? NOTHING : html`<p class="hint">${heard.canUse}</p>`}
</section>`
}

function title({ accepted, reply }: Heard, compare: ConversationView['compare']): string {
  if (accepted.length > 0) return 'Here is what I took from that'
  if (reply !== undefined) return 'The guide’s answer'
  return compare ? 'Not all of that was clear' : 'I could take nothing from that'
}

function accepted(heard: Heard, changeHref: (key: string) => string): Html {
  return html`<p class="hint">Wrong? Press one to change it.</p>
<ul class="chips">
${each(
  heard.accepted,
  ({
    key,
    short,
    text,
    words,
  }) => html`<li><a class="chip is-said" href="${changeHref(key)}" data-guide><span class="unseen">Change </span><span>${short}</span> <span class="figure-text">${text}</span> <span class="tag">from “${visibleWords(words)}”</span></a></li>
`,
)}
</ul>`
}

function unclear(heard: Heard): Html {
  return html`<div class="notice caution"><h3>Not taken</h3>
<ul>${each(heard.unclear, ({ text, why }) => html`<li><span class="said">“${visibleWords(text)}”</span> — ${why}</li>`)}</ul></div>`
}
