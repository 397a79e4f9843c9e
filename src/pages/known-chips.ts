import type { ConversationView, KnownFact } from './conversation-view.ts'
import { each, type Html, html, NOTHING } from './html.ts'

type State = KnownFact['state']

const GROUPS: readonly { state: State; title: string; why: string }[] = [
  { state: 'said', title: 'You said', why: '' },
  { state: 'derived', title: 'Worked out from it', why: 'How they follow' },
  { state: 'assumed', title: 'Assumed for now', why: 'Why these are taken' },
  { state: 'parked', title: 'Set aside', why: 'Why they do not count now' },
]

/** What is known, in groups: the outline and the heading say how each came to be known. */
export function knownChips({ known }: ConversationView): Html {
  if (known.length === 0) return NOTHING
  return html`<section class="known" aria-labelledby="known">
<h2 id="known">What the guide works with</h2>
<p class="hint">Press any of them to change it.</p>
${each(GROUPS, ({ state, title, why }) =>
  group(
    known.filter((one) => one.state === state),
    title,
    why,
  ),
)}
</section>`
}

function group(facts: readonly KnownFact[], title: string, why: string): Html {
  const [first] = facts
  if (!first) return NOTHING
  return html`<div class="known-group">
<h3 class="tag" id="known-${first.state}">${title} <span class="count">${facts.length}</span></h3>
<ul class="chips" aria-labelledby="known-${first.state}">
${each(
  facts,
  (known) => html`<li>${chip(known)}</li>
`,
)}
</ul>
${why === '' ? NOTHING : becauses(facts, why)}
</div>`
}

/** One fact as a link to its question. */
export function chip({ short, text, state, changeHref }: KnownFact): Html {
  return html`<a class="chip is-${state}" href="${changeHref}" data-guide><span class="unseen">Change </span><span>${short}</span> <span class="figure-text">${text}</span></a>`
}

function becauses(facts: readonly KnownFact[], title: string): Html {
  const explained = facts.filter(({ because }) => because !== undefined)
  if (explained.length === 0) return NOTHING
  return html`<details><summary>${title}</summary>
<dl class="reasons">
${each(
  explained,
  ({ short, because }) => html`<dt>${short}</dt><dd>${because ?? ''}</dd>
`,
)}
</dl>
</details>`
}
