import type { ConversationView, KnownFact } from './conversation-view.ts'
import { each, type Html, html, NOTHING } from './html.ts'

type State = KnownFact['state']

interface Group {
  readonly state: State
  readonly title: string
  readonly why: string
  /** Folded away until wanted: a list so long that on a phone it would bury the rest. */
  readonly folded?: true
}

const GROUPS: readonly Group[] = [
  { state: 'said', title: 'You said', why: '' },
  { state: 'derived', title: 'Worked out from it', why: 'How they follow' },
  { state: 'parked', title: 'Set aside', why: 'Why they do not count now' },
  { state: 'assumed', title: 'Assumed for now', why: 'Why these are taken', folded: true },
]

/** What is known, in groups: the outline and the heading say how each came to be known. */
export function knownChips({ known }: ConversationView): Html {
  if (known.length === 0) return NOTHING
  return html`<section class="known" aria-labelledby="known">
<h2 id="known">What the guide works with</h2>
<p class="hint">Press any of them to change it.</p>
${setBefore(known)}
${each(GROUPS, (one) =>
  group(
    one,
    known.filter(({ state, setBy }) => state === one.state && setBy === undefined),
  ),
)}
</section>`
}

/** Answers that came with the link: nobody has said them here. */
function setBefore(known: readonly KnownFact[]): Html {
  const set = known.filter(({ setBy }) => setBy !== undefined)
  const [first] = set
  if (!first) return NOTHING
  return html`<div class="known-group"><h3 class="tag" id="known-set">Set by ${first.setBy ?? ''} <span class="count">${set.length}</span></h3>
${chips(set, 'known-set')}
</div>`
}

function group({ state, title, why, folded }: Group, facts: readonly KnownFact[]): Html {
  if (facts.length === 0) return NOTHING
  const id = `known-${state}`
  const heading = html`<h3 class="tag" id="${id}">${title} <span class="count">${facts.length}</span></h3>`
  const rest = html`${chips(facts, id)}
${why === '' ? NOTHING : becauses(facts, why)}`
  return folded
    ? html`<details class="known-group"><summary>${heading}</summary>
${rest}
</details>`
    : html`<div class="known-group">${heading}
${rest}
</div>`
}

function chips(facts: readonly KnownFact[], labelledBy: string): Html {
  return html`<ul class="chips" aria-labelledby="${labelledBy}">
${each(
  facts,
  (known) => html`<li>${chip(known)}</li>
`,
)}
</ul>`
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
