import type { Comparison, ConversationView } from './conversation-view.ts'
import { each, type Html, html, NOTHING } from './html.ts'
import { pageHref } from './page-href.ts'

const NOT_YET: Readonly<Record<NonNullable<Comparison['notYet']>, string>> = {
  both: 'Neither side is a call yet.',
  present: 'As it stands there is no call yet.',
  other: 'With the change there is no call yet.',
}

/** A what-if beside the present call. Nothing of it counts until the person keeps it. */
export function whatIfBeside({ compare, link, units }: ConversationView): Html {
  if (!compare) return NOTHING
  const { notYet } = compare
  return html`<section class="what-if" aria-labelledby="what-if">
<p class="kicker">What if — nothing is changed yet</p>
<h2 id="what-if" tabindex="-1">${compare.title}</h2>
<div class="beside">
<div><h3 class="tag">As it stands${assumed(notYet, 'present')}</h3><p>${compare.present}</p></div>
<div class="then"><h3 class="tag">With the change${assumed(notYet, 'other')}</h3><p>${compare.other}</p></div>
</div>
${notYet === undefined ? NOTHING : html`<p class="hint">${NOT_YET[notYet]} Answers that a call rests on are still open, and usual figures stand in for them. The comparison shows what the change does.</p>`}
<div class="table-scroll" tabindex="0" role="region" aria-label="The two side by side"><table class="compact">
<thead><tr><th scope="col">Figure</th><th scope="col" class="number">As it stands</th><th scope="col" class="number">With the change</th></tr></thead>
<tbody>
${each(
  compare.rows,
  ({
    label,
    now,
    other,
  }) => html`<tr><th scope="row">${label}</th><td class="number">${now}</td><td class="number">${other}</td></tr>
`,
)}
</tbody></table></div>
<div class="actions"><a class="button primary" href="${pageHref('/', compare.keepLink, units)}" data-guide>Keep the change</a>
<a class="button" href="${pageHref('/', link, units)}" data-guide>Leave it as it stands</a></div>
</section>`
}

function assumed(notYet: Comparison['notYet'], side: 'present' | 'other'): Html {
  const isNot = notYet === 'both' || notYet === side
  return isNot ? html`,<br>if the assumptions hold` : NOTHING
}
